import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { batchScratch, DEMO, outlines } from './batch-scratch.ts';
import { run } from './built-command.ts';
import { BY_NIGHT, times } from './by-night.ts';
import { runCommand } from './run-command.ts';

const { folder, rows, scratch, table, text } = batchScratch();

/** By day every third hand of the demo table, and its wrong rows; by night all. */
const LINES = readFileSync(DEMO, 'utf8').trimEnd().split('\n');
const WRONG = [18, 35, 50] as const;
const CHOSEN = LINES.filter((_, k) => BY_NIGHT || k === 0 || k % 3 === 1 || WRONG.some((line) => line === k + 1));
const HANDS = CHOSEN.length - 1 - WRONG.length;
/** Where a line of the demo table stands among those. */
const lineOf = (line: number) => String(CHOSEN.indexOf(LINES[line - 1] ?? '') + 1);
const CLINIC = join(scratch, 'clinic.csv');
writeFileSync(CLINIC, CHOSEN.join('\n'));

describe('the walk from the demo table to sheets', () => {
  it('1. batch: each hand, and three rows that name line, column and fault', async () => {
    // As wide as strips from stock are.
    const ran = await runCommand('batch', CLINIC, '--block', 'auto', '--width', '20', '--files', 'none', '--out', folder('walk'));
    expect([ran.exit, ran.out.split('\n')[0]]).toEqual([1, `${HANDS} hands in the cut list; 3 rows wrong`]);
    expect(rows('walk', 'row-errors.csv').map((e) => [e.line, e.column, e.name, e.code])).toEqual([
      [lineOf(WRONG[0]), '11', 'ring.width', 'FIELD_UNREADABLE'],
      [lineOf(WRONG[1]), '7', 'long.width', 'SECTION_IMPOSSIBLE'],
      [lineOf(WRONG[2]), '1', 'code', 'CASE_CODE'],
    ]);
    const list = rows('walk', 'cut-list.csv');
    const json = JSON.parse(text('walk', 'cut-list.json'));
    expect(list).toHaveLength(HANDS);
    expect(json.pieces.map((p: { id: string; length: number }) => `${p.id} ${p.length.toFixed(2)}`)).toEqual(
      list.map((p) => `${p.id} ${Number(p.length).toFixed(2)}`),
    );
    expect(list.every((p) => p.invented === 'yes')).toBe(true);
  });

  it('2. sizes: six of them in two widths and what is cut singly, each hand served once', async () => {
    const ran = await runCommand('sizes', CLINIC, '--count', '6', '--out', folder('walk'), '--json');
    expect(ran.exit).toBe(1);
    const report = JSON.parse(ran.out);
    const blanks = rows('walk', 'stock-sizes.csv');
    expect(blanks.filter((p) => p.id?.startsWith('SIZE-'))).toHaveLength(6);
    expect(blanks.filter((p) => p.id?.startsWith('SINGLY-')).map((p) => p.code)).toEqual(report.singly);
    expect(blanks.reduce((sum, p) => sum + Number(p.quantity), 0)).toBe(HANDS);
    expect(report.pieces.reduce((a: number, b: number) => a + b) + report.singly.length).toBe(HANDS);
    // Each hand's blank is as long and as wide as its strip in the cut list of batch, whoever made that.
    const strips = new Map(rows('walk', 'cut-list.csv').map((p) => [p.code, p]));
    const sizes = new Map(report.sizes.map((size: { id: string }) => [size.id, size])) as Map<string, { length: number; width: number }>;
    expect(report.assignment).toHaveLength(HANDS);
    for (const { code, size, cutOff } of report.assignment) {
      const [strip, blank] = [strips.get(code), sizes.get(size)];
      if (size === null) expect(report.singly).toContain(code);
      else expect((blank?.length ?? 0) - cutOff).toBeCloseTo(Number(strip?.length), 2);
      if (blank) expect(Number(strip?.width)).toBeLessThanOrEqual(blank.width);
    }
    expect(report.chosen.cover).toBeGreaterThanOrEqual(0.95);
  });

  it('3. sheets: every blank once, as a reader of the DXF files finds them, and the bound in words', async () => {
    const ran = await runCommand('sheets', join(folder('walk'), 'stock-sizes.csv'), '--out', folder('walk'));
    expect([ran.exit, ran.out.split('\n')[0]]).toEqual([
      0,
      expect.stringMatching(new RegExp(`^${HANDS} pieces: ${BY_NIGHT ? '[23] new sheets' : '1 new sheet'}`)),
    ]);
    const drawn = readdirSync(folder('walk'))
      .filter((file) => /^sheet-\d+_mm\.dxf$/.test(file))
      .flatMap((file) => outlines(text('walk', file)));
    const wanted = rows('walk', 'stock-sizes.csv').flatMap((s) =>
      Array.from({ length: Number(s.quantity) }, () => `${Number(s.length).toFixed(3)} x ${Number(s.width).toFixed(3)}`),
    );
    expect(drawn.toSorted()).toEqual(wanted.toSorted());
    expect(readdirSync(folder('walk'))).toEqual(
      expect.arrayContaining(['cut-list-01_mm.svg', 'remnants.csv', 'layout.json', 'stock-sizes_mm.svg']),
    );
  });

  it('or all strips themselves on sheets, with the outlines of the cut list', async () => {
    const count = times(8, 20);
    const hands = table('strips.csv', (t) => t, count);
    const ran = await runCommand('batch', hands, '--files', 'sheets', '--formats', 'dxf', '--out', folder('strips'), '--json');
    // The eighteenth row is wrong.
    expect(ran.exit).toBe(count < 18 ? 0 : 1);
    const { sheets } = JSON.parse(ran.out);
    const drawn = sheets.sheets.flatMap((_: unknown, i: number) => outlines(text('strips', `sheet-0${i + 1}_mm.dxf`)));
    const lengths = drawn.map((d: string) => Number(d.split(' x ')[0])).toSorted((a: number, b: number) => a - b);
    const listed = rows('strips', 'cut-list.csv')
      .map((p) => Number(p.length))
      .toSorted((a, b) => a - b);
    expect(lengths).toHaveLength(count < 18 ? count : count - 1);
    // The list has two decimals.
    for (const [i, length] of listed.entries()) expect(Math.abs(lengths[i] - length)).toBeLessThan(0.006);
    expect(sheets.atLeast).toBeLessThanOrEqual(sheets.newSheets);
  });

  it('is the same, byte for byte, when it is done again', async () => {
    const args = ['sheets', '--sizes', '168x20:18, 176x20:20, 150x16:9', '--grain', 'free', '--seed', '7', '--out'];
    expect((await runCommand(...args, folder('one'))).exit).toBe(0);
    expect((await runCommand(...args, folder('two'))).exit).toBe(0);
    expect(readdirSync(folder('one')).length).toBeGreaterThan(3);
    for (const file of readdirSync(folder('one'))) expect(text('one', file)).toBe(text('two', file));
  });
});

describe('files for a machine', () => {
  const laser = ['--cutter', 'laser-if-allowed', '--kerf', '0.3', '--material', 'PCL sheet', '--material-allows-laser', '--formats', 'dxf'];

  it.each([
    ['batch, a file each', ['batch', 'HANDS', '--files', 'each']],
    ['batch, on sheets', ['batch', 'HANDS', '--files', 'sheets']],
    ['sheets', ['sheets', '--sizes', '168x20:3']],
  ])('%s: the caution of the laser and the kerf in the outlines are said once', async (name, args) => {
    const path = table('machine.csv', (t) => t, 3);
    const ran = await runCommand(...args.map((arg) => (arg === 'HANDS' ? path : arg)), ...laser, '--out', folder(`machine ${name}`));
    expect(ran.exit).toBe(0);
    for (const code of ['LASER_CAUTION', 'KERF_IN_OUTLINES']) expect(ran.err.match(new RegExp(code, 'g'))).toHaveLength(1);
  });
});

describe('sizes and sheets by themselves', () => {
  it('sizes --norms says which figures are of memory grade, and --lengths needs no hands', async () => {
    const norms = await runCommand(
      'sizes',
      '--norms',
      'mixed',
      '--block',
      'ring-lowered-in-three',
      '--count',
      '5',
      '--hands',
      '60',
      '--json',
    );
    const told = JSON.parse(norms.out);
    expect(told.sources.join(' ')).toMatch(/ANSUR II.*MEMORY GRADE/s);
    expect(told.chosen.sizes).toHaveLength(5);
    const file = join(scratch, 'lengths.txt');
    writeFileSync(file, '150\n160,5\n17 cm\n');
    const measured = JSON.parse((await runCommand('sizes', '--lengths', file, '--count', '2', '--cover', '100', '--json')).out);
    expect(measured.all.map((s: { sizes: number[] }) => s.sizes)).toEqual([[170], [150, 170], [150, 161, 170]]);
  });

  it('sheets takes sizes typed, remnants, and proves with HiGHS when asked', () => {
    writeFileSync(join(scratch, 'stock.csv'), 'id,along,across\nLEFT-1,400,60\n');
    // As it is shipped, with the solver's file beside it.
    const ran = run('sheets', '--sizes', '168x20:8, 176x20:10', '--stock', join(scratch, 'stock.csv'), '--prove', '--json');
    const told = JSON.parse(ran.out);
    expect(told).toMatchObject({
      pieces: 18,
      newSheets: 1,
      atLeast: 1,
      verdict: '1 new sheet, and fewer is impossible with a gap of 2 and a margin of 5 mm',
    });
    expect(told.sheets.map((s: { stock: string }) => s.stock)).toEqual(['LEFT-1', 'new']);
  });

  it.each([
    [['sheets'], 'give a cut list or --sizes'],
    [['sheets', '--sizes', '168x20', '--sheet', '457'], '--sheet'],
    [['sheets', '--sizes', '168:20'], '--sizes'],
    [['sheets', '--sizes', '900x20'], 'PART_TOO_LARGE'],
    [['sizes', '--count', '3'], 'one of the three'],
    [['sizes', '--norms', 'male', '--count', '3'], '--block'],
    [['sizes', '--norms', 'male', '--count', '3', '--block', 'auto'], 'auto needs deficits'],
    [['sizes', DEMO, '--count', '3', '--block', 'auto', '--cover', '0'], '--cover'],
    [['batch', 'nowhere.csv'], 'does not exist'],
  ])('%j is refused with a message about %s', async (args, message) => {
    const ran = await runCommand(...args, '--json');
    expect(ran.exit).toBeGreaterThan(0);
    expect(ran.err).toContain(message);
  });
});
