import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BY_NIGHT } from './by-night.ts';
import { cutApart, type Rectangle } from './cut-apart.ts';
import { type CommandRun, runCommand } from './run-command.ts';

// The walk of docs/clinic.md: each of its figures, and each of them computed again here from the tables alone.
const TABLE = 'fixtures/clinic-week.csv';
const PAGE = readFileSync('docs/clinic.md', 'utf8');
const SHEET = { x: 0, y: 0, w: 610, h: 457 };

const scratch = mkdtempSync(join(tmpdir(), 'clinic-walk-'));
afterAll(() => rmSync(scratch, { recursive: true }));
const week = join(scratch, 'week');
const rowsOf = (name: string): Record<string, string>[] => parse(readFileSync(join(week, name), 'utf8'), { columns: true });

let sized: CommandRun;
let cut: CommandRun;
beforeAll(async () => {
  sized = await runCommand('sizes', TABLE, '--count', '6', '--formats', 'svg,pdf', '--out', week);
  cut = await runCommand('sheets', join(week, 'stock-sizes.csv'), '--shears', '--formats', 'svg', '--out', week, '--json');
}, 240_000);

/** Lines that the page says a command prints. */
function printed(command: string): readonly string[] {
  const block = PAGE.split('```').find((text) => text.trim().startsWith(`knucklewright ${command} `)) ?? '';
  return block.trimEnd().split('\n').slice(2);
}

/** Which blocks take in the little finger, from their files. */
const LITTLE = new Map(
  readdirSync('templates/blocks').map((name) => {
    const block = JSON.parse(readFileSync(join('templates/blocks', name), 'utf8'));
    return [block.id, block.places.little !== undefined];
  }),
);

describe('60 hands from a spreadsheet with decimal commas to bagged strips', () => {
  // Choosing the arrangement of each hand twice takes too long for every day; `sizes` reads the same rows.
  if (BY_NIGHT)
    it('every row is right', { timeout: 240_000 }, async () => {
      const made = await runCommand('batch', TABLE, '--width', '20', '--files', 'none', '--out', join(scratch, 'hands'));
      expect([made.exit, made.out.split('\n')[0]]).toEqual([0, printed('batch')[0]]);
    });

  it('the sizes are printed as the page says', () => {
    expect([sized.exit, sized.err]).toEqual([0, '']);
    expect(printed('sizes')).toHaveLength(7);
    for (const line of printed('sizes')) expect(sized.out).toContain(line);
  });

  it('each hand takes the shortest size of its width that serves it, and the means are those of the page', () => {
    const hands = rowsOf('size-assignment.csv');
    const blanks = rowsOf('stock-sizes.csv');
    expect(hands).toHaveLength(60);
    const sizes = blanks.filter(({ id }) => id?.startsWith('SIZE-'));
    const lengths = (little: boolean) => sizes.filter(({ width }) => (width === '36') === little).map(({ length }) => Number(length));
    let off = 0;
    let [wasted, used] = [0, 0];
    for (const hand of hands) {
      const little = LITTLE.get(hand.block) === true;
      const needed = Number(hand['length mm']);
      const able = lengths(little).filter((length) => length >= needed);
      if (able.length === 0) expect(hand.size).toBe('singly');
      else {
        const best = Math.min(...able);
        expect(Number(hand['size length mm'])).toBe(best);
        expect(Number(hand['cut off mm'])).toBeCloseTo(best - needed, 3);
        off += best - needed;
        wasted += (best - needed) * (little ? 36 : 28);
        used += best * (little ? 36 : 28);
      }
    }
    const served = hands.filter(({ size }) => size !== 'singly');
    expect([served.length, (off / served.length).toFixed(2), ((100 * wasted) / used).toFixed(1)]).toEqual([57, '7.73', '3.7']);
    expect(PAGE).toContain('cut 7.73 mm off each on average, 3.7 % of the plastic');
    for (const { id, quantity } of sizes) expect(served.filter(({ size }) => size === id)).toHaveLength(Number(quantity));
    // Each hand is served once: by a size, or by a blank of its own.
    expect(blanks.reduce((sum, blank) => sum + Number(blank.quantity), 0)).toBe(60);
    expect(blanks.filter(({ id }) => id?.startsWith('SINGLY-')).map(({ code }) => code)).toEqual(['WEEK-26', 'WEEK-28', 'WEEK-52']);
  });

  it('no size can be moved a mm or more without cutting off more or serving fewer', () => {
    const hands = rowsOf('size-assignment.csv').filter(({ size }) => size !== 'singly');
    const sizes = rowsOf('stock-sizes.csv').filter(({ id }) => id?.startsWith('SIZE-'));
    const area = (lengths: readonly { readonly length: number; readonly width: number }[]) =>
      hands.reduce((sum, hand) => {
        const width = LITTLE.get(hand.block) ? 36 : 28;
        const able = lengths.filter((size) => size.width === width && size.length >= Number(hand['length mm'])).map(({ length }) => length);
        return sum + (Math.min(...able) - Number(hand['length mm'])) * width;
      }, 0);
    const now = sizes.map((size) => ({ length: Number(size.length), width: Number(size.width) }));
    for (const [k, size] of now.entries())
      for (const by of [-12, -6, -3, -2, -1, 1, 2, 3, 6, 12])
        expect(area(now.with(k, { ...size, length: size.length + by }))).toBeGreaterThanOrEqual(area(now));
  });

  it('the list is printed with a label for each bag: six sizes and sixty hands', () => {
    const pages = readdirSync(week).filter((name) => /^size-list-\d\d_mm\.svg$/.test(name));
    const labels = pages.reduce(
      (sum, name) => sum + (readFileSync(join(week, name), 'utf8').match(/edge of a bag label/g)?.length ?? 0),
      0,
    );
    // One page of sizes, then 21 labels a page: they are as high as the longest words of the three languages need.
    expect([pages.length, labels]).toEqual([5, 66]);
  });

  it('two sheets are cut in 74 straight cuts, after which every blank lies free, and fewer sheets have not the area', () => {
    expect([cut.exit, cut.err]).toEqual([0, '']);
    const report = JSON.parse(cut.out);
    const [pieces, count] = printed('sheets');
    expect(pieces).toBe(`60 pieces: ${report.verdict}`);
    expect(count).toBe(`${report.cutCount} straight cuts with shears in all`);
    const free = report.sheets.flatMap(({ cuts }: { cuts: readonly string[] }) => cutApart(SHEET, cuts)) as Rectangle[];
    expect(free).toHaveLength(2 + report.cutCount);
    const wanted = rowsOf('stock-sizes.csv').flatMap((blank) => Array.from({ length: Number(blank.quantity) }, () => blank));
    const sizeText = (w: number, h: number) => `${w.toFixed(0)} x ${h.toFixed(0)}`;
    for (const size of new Set(wanted.map(({ length, width }) => sizeText(Number(length), Number(width))))) {
      const needed = wanted.filter(({ length, width }) => sizeText(Number(length), Number(width)) === size).length;
      expect(free.filter(({ w, h }) => sizeText(w, h) === size).length, size).toBeGreaterThanOrEqual(needed);
    }
    const area = wanted.reduce((sum, { length, width }) => sum + Number(length) * Number(width), 0);
    expect((area / (SHEET.w * SHEET.h)).toFixed(2)).toBe('1.52');
    expect(PAGE).toContain('the blanks have 1.52 times the area of one sheet');
  });
});
