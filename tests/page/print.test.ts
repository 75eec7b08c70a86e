import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { PENS } from '../../src/writers/pdf/pdf.ts';
import { tried } from '../by-night.ts';
import { readPdfWords } from '../pdf-words.ts';
import { type TracedPath, tracePaths } from '../read-pdf.ts';
import { needsReader } from '../readers.ts';
import { runCommand } from '../run-command.ts';
import { DEMO_FILE, field, inBrowser, noStopSign, openDemo, openPanel, PLATE_DEMO_FILE, saved } from './browser.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'knucklewright-print-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function command(...args: readonly string[]): Promise<Readonly<Record<string, Buffer>>> {
  const out = mkdtempSync(join(folder, 'out-'));
  expect(await runCommand(...args, '--out', out)).toMatchObject({ exit: 0 });
  return Object.fromEntries(readdirSync(out).map((name) => [name, readFileSync(join(out, name))]));
}

describe('the PDF saved from the page', () => {
  inBrowser('has the same bytes as from the command, on each paper, and so has the handout', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    for (const paper of tried(['a4', 'letter'], (name) => name === 'letter')) {
      await page.locator('#paper').selectOption(paper);
      const pdf = await saved(page, '#print');
      const files = await command('draw', DEMO_FILE, '--formats', 'pdf', '--paper', paper);
      expect(Object.keys(files)).toEqual([pdf.name]);
      expect(pdf.content.equals(files[pdf.name] ?? Buffer.of())).toBe(true);
    }
    const handout = await saved(page, '#save-handout');
    const [own] = Object.values(await command('draw', DEMO_FILE, '--formats', 'pdf', '--paper', 'letter', '--pages', 'handout'));
    expect(handout.name).toBe('DEMO-01-ring-lowered-in-three-handout_mm.pdf');
    expect(handout.content.equals(own ?? Buffer.of())).toBe(true);
  });

  inBrowser('of the paper trial has its strip and words alone, and says what was not asked', async (open, test) => {
    needsReader(test, 'poppler');
    const { page } = await open();
    await openDemo(page);
    const read = async () => {
      const { name, content } = await saved(page, '#print-trial');
      expect(name).toBe('DEMO-01-ring-lowered-in-three-paper_mm.pdf');
      const path = join(folder, name);
      writeFileSync(path, content);
      const words = readPdfWords(path);
      const [, pages] = /page 1 of (\d)/i.exec(words) ?? [];
      await page.locator('#saved').getByText(`(${pages} page`).waitFor();
      return words;
    };
    const unasked = await read();
    for (const part of ['PAPER STRIP', 'Measure the two bars', 'Reading:', 'STOP SIGNS WERE NOT ASKED']) expect(unasked).toContain(part);
    expect(unasked).not.toContain('Heat');
    await noStopSign(page);
    expect(await read()).not.toContain('STOP SIGNS');
    // A plate is not woven.
    await openDemo(page, PLATE_DEMO_FILE);
    await page.locator('#sentence').getByText('plate').waitFor();
    expect(await page.locator('#print-trial').count()).toBe(0);
  });

  inBrowser('has the true page size for another reader', async (open, test) => {
    needsReader(test, 'poppler');
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    const path = join(folder, 'page.pdf');
    writeFileSync(path, (await saved(page, '#save-pdf')).content);
    const info = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
    const [, ...sides] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
    // ISO 216: A4 is 210 x 297 mm; 1 mm is 72 / 25.4 points (ISO 32000). pdfinfo prints six figures.
    const millimetres = sides.map((points) => (Number(points) * 25.4) / 72).toSorted((a, b) => a - b);
    expect(millimetres[0]).toBeCloseTo(210, 2);
    expect(millimetres[1]).toBeCloseTo(297, 2);
  });

  inBrowser(
    'has both bars at 100 mm on every page with something at true size that another reader finds, and the ID-1 card at its size',
    async (open, test) => {
      needsReader(test, 'mupdf-tools');
      const { page } = await open();
      await openDemo(page);
      await noStopSign(page);
      await openPanel(page, 'files');
      const path = join(folder, 'bars.pdf');
      writeFileSync(path, (await saved(page, '#save-pdf')).content);
      // Pages 2 and 3 are the storyboard, which is only read.
      for (const number of [1, 4]) {
        const strokes = tracePaths(path, number).filter((traced) => traced.kind === 'stroke');
        const steps = (traced: TracedPath) => traced.subpaths.flatMap((s) => s.map((step) => step.to));
        const bars = strokes.filter((traced) => Math.abs(traced.width - PENS.bar.width) < 0.001).map(steps);
        const sides = bars.map(([a = { x: 0, y: 0 }, b = a]) => [Math.abs(b.x - a.x), Math.abs(b.y - a.y)]);
        expect(sides).toHaveLength(2);
        for (const [k, [across = 0, along = 0]] of sides.entries()) {
          expect(k === 0 ? across : along).toBeCloseTo(100, 3);
          expect(k === 0 ? along : across).toBeCloseTo(0, 3);
        }
        // ISO/IEC 7810: 85.60 x 53.98 mm.
        const boxes = strokes.map(steps).map((points) => {
          const side = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
          return [side(points.map((p) => p.x)), side(points.map((p) => p.y))].toSorted((a, b) => b - a);
        });
        expect(boxes.filter(([long = 0, short = 0]) => Math.abs(long - 85.6) < 0.001 && Math.abs(short - 53.98) < 0.001)).toHaveLength(1);
      }
    },
  );

  inBrowser('is drawn against a printer that errs, as the command does it; a print that is right or far off is not', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    const type = async (across: string, along: string) => {
      await field(page, 'print.across').fill(across);
      await field(page, 'print.along').fill(along);
    };
    await type('97,1', '98.5');
    await page.getByText('Off by -2.9 % across and -1.5 % along.').waitFor();
    const pdf = await saved(page, '#save-pdf');
    const files = await command('print-check', DEMO_FILE, '--across', '97.1', '--along', '98.5');
    expect(Object.keys(files)).toEqual([pdf.name]);
    expect(pdf.content.equals(files[pdf.name] ?? Buffer.of())).toBe(true);
    await type('100', '99.8');
    await page.getByText('Both bars are right: cut.').waitFor();
    expect((await saved(page, '#save-pdf')).name).toBe('DEMO-01-ring-lowered-in-three_mm.pdf');
    await type('80', '80');
    await page.getByText('Off by more than 10 %').waitFor();
    expect((await saved(page, '#save-pdf')).name).toBe('DEMO-01-ring-lowered-in-three_mm.pdf');
  });
});
