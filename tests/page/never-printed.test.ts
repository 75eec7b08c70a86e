import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { readPdfWords } from '../pdf-words.ts';
import { needsReader } from '../readers.ts';
import { choose, field, inBrowser, noStopSign, openDemo, openPanel, outlineOf, saved } from './browser.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'knucklewright-never-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const width = 'digits.ring.width';

describe('what must never leave the page', () => {
  inBrowser('a print of the page that looks true: it is struck through, says so, and names the button that prints', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await page.emulateMedia({ media: 'print' });
    const printed = page.locator('.printout');
    expect(await printed.textContent()).toContain('NOT TO SCALE');
    expect(await printed.textContent()).toContain('Print the pattern');
    expect(await page.locator('.printout .strike').isVisible()).toBe(true);
    for (const part of ['header', 'main', 'footer']) expect(await page.locator(part).first().isVisible()).toBe(false);
  });

  inBrowser('stop signs unanswered that leave the page unsaid: counted, and on the print until they are answered', async (open, test) => {
    needsReader(test, 'poppler');
    const { page } = await open();
    await openDemo(page);
    await page.locator('.look-box').getByText('Stop signs not asked yet').waitFor();
    const words = async () => {
      const path = join(folder, 'stop.pdf');
      writeFileSync(path, (await saved(page, '#print')).content);
      return readPdfWords(path);
    };
    expect(await words()).toContain('STOP SIGNS WERE NOT ASKED');
    await noStopSign(page);
    expect(await page.locator('.look-box').getByText('Stop signs not asked yet').count()).toBe(0);
    expect(await words()).not.toContain('STOP SIGNS WERE NOT ASKED');
  });

  inBrowser('a print in spite of a stop sign: nothing is suggested, nothing saved, and whom to ask is said', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await openPanel(page, 'stop');
    await page.getByLabel('A pale, blue or cold finger').check();
    await page.getByText('Take off what is worn and ask the surgeon or an emergency department the same day.').first().waitFor();
    let downloads = 0;
    page.on('download', () => downloads++);
    await page.locator('#print').click();
    await page.locator('#panel-look').getByText('Stop: nothing is suggested and nothing is printed.').first().waitFor();
    await page.waitForTimeout(500);
    expect(downloads).toBe(0);
    expect(await page.locator('input[name="block"]').count()).toBe(0);
    expect(await page.locator('#print.main').count()).toBe(0);
    // The result that still stands there says so itself, and nothing is said to be wanting for a print.
    expect(await page.locator('.banner').textContent()).toContain('Take off what is worn');
    expect(await page.locator('#print-line').textContent()).toContain('Stop: nothing is suggested and nothing is printed.');
    expect(await page.locator('#print-line').textContent()).not.toContain('needed');
    expect(await page.getByRole('status').textContent()).not.toContain('Ring finger');
    // On a phone the bar says it in every turn.
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('.bottom-bar.stop').getByText('Take off what is worn').waitFor();
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  inBrowser("an example on a print unmarked, or its figures in a patient's", async (open, test) => {
    needsReader(test, 'poppler');
    const { page } = await open();
    await page.locator('#example').click();
    await page.locator('.banner').getByText('This is an example with an invented hand.').waitFor();
    const words = async () => {
      const path = join(folder, 'example.pdf');
      writeFileSync(path, (await saved(page, '#print')).content);
      return readPdfWords(path);
    };
    expect(await words()).toMatch(/invented/i);
    // Typed over, it is an example still: the other figures are.
    await field(page, width).fill('17');
    await openPanel(page, 'files');
    await field(page, 'code').fill('K7-2');
    expect(await page.locator('#field-invented').count()).toBe(0);
    expect(await words()).toMatch(/invented/i);
    await page.locator('#new-patient').click();
    await expect.poll(() => field(page, width).inputValue()).toBe('');
    expect(await page.locator('.banner').count()).toBe(0);
  });

  inBrowser('an average hand on a print: what is not measured is asked for first', async (open) => {
    const { page } = await open();
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('25');
    await page.locator('.banner').getByText('An average hand, not yours').waitFor();
    let downloads = 0;
    page.on('download', () => downloads++);
    await page.locator('#print').click();
    await page.waitForFunction(() => document.activeElement?.id === 'field-digits-long-width');
    expect(downloads).toBe(0);
  });

  inBrowser('an estimated width on a print: ring sizes alone show a pattern, say so, and the width is asked for first', async (open) => {
    const { page } = await open();
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('25');
    await noStopSign(page);
    await page.locator('#round-in').selectOption('EU');
    const sizes = { long: '57', ring: '53', little: '47' };
    for (const [digit, size] of Object.entries(sizes)) await field(page, `digits.${digit}.circumference`).fill(size);
    await page.locator('.banner').getByText('The width is estimated').waitFor();
    const estimated = await outlineOf(page);
    expect(estimated).not.toBeNull();
    let downloads = 0;
    page.on('download', () => downloads++);
    await page.locator('#print').click();
    await page.waitForFunction(() => document.activeElement?.id === 'field-digits-long-width');
    // One width of three is no hand either.
    await field(page, 'digits.long.width').fill('17.5');
    await field(page, 'digits.ring.width').fill('16.5');
    await page.locator('#print').click();
    await page.waitForFunction(() => document.activeElement?.id === 'field-digits-little-width');
    expect(downloads).toBe(0);
    await field(page, 'digits.little.width').fill('14.5');
    expect((await saved(page, '#print')).name).toMatch(/\.pdf$/);
    expect(await page.locator('.banner').count()).toBe(0);
    expect(await outlineOf(page)).not.toBe(estimated);
  });

  inBrowser('a status that contradicts a title, or a print of what the fields no longer say', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    await field(page, width).fill('160');
    await page.keyboard.press('Tab');
    await page.locator('.banner.kept').waitFor();
    let downloads = 0;
    page.on('download', () => downloads++);
    await page.locator('#print').click();
    await page.locator('#panel-look').waitFor();
    expect(await page.getByRole('status').textContent()).not.toMatch(/^Drawn/);
    expect(downloads).toBe(0);
  });

  inBrowser('two patterns of one name: what differs is told apart', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    const names = [(await saved(page, '#save-svg')).name];
    await page.keyboard.press('Escape');
    await openPanel(page, 'options');
    await field(page, 'differential').fill('25');
    await page.keyboard.press('Escape');
    await openPanel(page, 'files');
    names.push((await saved(page, '#save-svg')).name);
    expect(new Set(names).size).toBe(2);
    expect(names[1]).toContain('25deg');
  });
});
