import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect } from 'vitest';
import { blockOnPaper } from '../../src/papers/block-on-paper.ts';
import { courseAdvice } from '../../src/record/course/course-advice.ts';
import { readCase } from '../../src/record/read-case.ts';
import { LANGUAGE_IDS } from '../../src/words/language.ts';
import { RECORD_WORDS } from '../../src/words/record/record-words.ts';
import { runCommand } from '../run-command.ts';
import { CASE_FILE, DEMO_FILE, field, inBrowser, openDemo, openFile, saved } from './browser.ts';

const SWELLS = fileURLToPath(new URL('../../fixtures/case-swells.json', import.meta.url));

describe('a case', () => {
  inBrowser('is started from the hand, grows by visits, and is read by the command as the page saved it', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await page.locator('#mode-visits').click();
    await page.locator('#start-case').click();
    await page.waitForFunction(() => document.activeElement?.id === 'case-heading');
    const visit = async (date: string, active: string) => {
      await field(page, 'visit.date').fill(date);
      const [lacks = '', bends = ''] = active.split('/');
      await field(page, 'visit.lacks').fill(lacks);
      await field(page, 'visit.bends').fill(bends);
      await page.locator('#add-visit').click();
      await page.getByRole('rowheader', { name: date }).waitFor();
    };
    await visit('2026-03-02', '25/95');
    await visit('2026-03-16', '10/95');
    await page.locator('svg.drawing').waitFor();
    const file = await saved(page, '#save-case');
    expect(file.name).toBe('DEMO-01_case.json');
    const folder = mkdtempSync(join(tmpdir(), 'knucklewright-case-'));
    try {
      const path = join(folder, file.name);
      writeFileSync(path, file.content);
      const next = JSON.parse((await runCommand('case', 'next', path, '--json')).out);
      // 25 to 10 degrees in two readings: a gain is read from three on, so the advice is to wait for the next.
      expect(next.steps.map((step: { action: string }) => step.action)).toEqual(['wait']);
    } finally {
      rmSync(folder, { recursive: true });
    }
    const { visits } = JSON.parse(file.content.toString());
    const plan = JSON.parse((await runCommand('plan', DEMO_FILE, '--json')).out);
    expect(visits[0].made).toMatchObject({ kind: 'strip', block: { id: 'ring-lowered-in-three' } });
    expect(visits[0].made.flatLength).toBeCloseTo(plan.suggestions[0].flatLength, 2);
    expect(visits[1].made).toBeUndefined();
  });

  inBrowser('that was opened brings its hand, its course and what next; saved unchanged it has the same bytes', async (open) => {
    const { page } = await open();
    await openFile(page, CASE_FILE);
    await page.locator('svg.drawing').waitFor();
    // A case with visits opens in Visits.
    expect(await page.locator('#case-heading').textContent()).toContain('DEMO-11');
    await page.locator('#mode-design').click();
    await page.locator('#sentence').waitFor();
    await page.locator('#mode-visits').click();
    const file = await saved(page, '#save-case');
    expect(file.content.equals(readFileSync(CASE_FILE))).toBe(true);
  });

  inBrowser('has the advice of the command with its figures, in three languages, the gravest first', async (open) => {
    const { page } = await open({});
    await openFile(page, SWELLS);
    await page.locator('svg.drawing').waitFor();
    const read = readCase(JSON.parse(readFileSync(SWELLS, 'utf8')));
    if (!read.ok) throw new Error('no case');
    for (const language of LANGUAGE_IDS) {
      await page.locator('#language').selectOption(language);
      const { steps, reminders } = courseAdvice(read.value, language, { blockName: blockOnPaper(RECORD_WORDS[language]) });
      const shown = ((await page.locator('#course').textContent()) ?? '').replace(/\s+/g, ' ');
      const places = [...steps.map(({ message }) => message), ...reminders].map((said) => shown.indexOf(said));
      expect(steps.map(({ rule }) => rule)).toEqual(['PAUSE', 'FIT', 'IDLE']);
      expect(Math.min(...places), language).toBeGreaterThanOrEqual(0);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
    }
  });

  inBrowser('takes no visit that cannot be read, and says why', async (open) => {
    const { page } = await open();
    await openFile(page, CASE_FILE);
    await page.locator('svg.drawing').waitFor();
    const rows = await page.locator('table.visits tbody tr').count();
    await field(page, 'visit.date').fill('2026-07-01');
    await field(page, 'visit.lacks').fill('-10');
    await field(page, 'visit.bends').fill('85');
    await page.locator('#add-visit').click();
    await page.waitForFunction(() => document.activeElement?.id === 'file-problems');
    expect(await page.locator('#file-problems').textContent()).toContain('a sign is used for both');
    expect(await page.locator('table.visits tbody tr').count()).toBe(rows);
  });
});
