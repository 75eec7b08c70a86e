import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { cutApart } from '../../../tests/cut-apart.ts';
import { runCommand } from '../../../tests/run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'sheets-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const sheets = (...words: readonly string[]) => runCommand('sheets', ...words);

describe('sheets --shears', () => {
  it('cuts every part to its box with the straight cuts it tells, and counts them', async () => {
    const out = join(scratch, 'shears');
    const {
      out: printed,
      err,
      exit,
    } = await sheets('--sizes', '100x20:4,80x20:3', '--shears', '--sheet', '210x100', '--out', out, '--json');
    expect([exit, err]).toEqual([0, '']);
    const report = JSON.parse(printed);
    // Counted by hand: the upper rest, the right rest, three between four rows, and in the rows 1, 1, 2 and 1.
    expect(report.cutCount).toBe(10);
    const pieces = cutApart({ x: 0, y: 0, w: 210, h: 100 }, report.sheets[0].cuts);
    expect(pieces).toHaveLength(11);
    expect(pieces.filter(({ w, h }) => w === 100 && h === 20)).toHaveLength(4);
    expect(pieces.filter(({ w, h }) => w === 80 && h === 20)).toHaveLength(3);
    const { sheets: laid, gap, margin } = { ...JSON.parse(readFileSync(join(out, 'layout.json'), 'utf8')), gap: 0, margin: 0 };
    for (const { x, y } of laid[0].parts) expect(pieces.some((piece) => piece.x === x && piece.y === y)).toBe(true);
    expect([gap, margin]).toEqual([0, 0]);
  });

  it.each([
    [['--gap', '0'], '--gap'],
    [['--margin', '5'], '--margin'],
    [['--cutter', 'knife'], '--cutter'],
    [['--kerf', '0.2'], '--kerf'],
  ])('with %s is wrong usage', async (more, named) => {
    const { exit, err } = await sheets('--sizes', '100x20:4', '--shears', ...more);
    expect([exit, err]).toEqual([2, expect.stringContaining(`${named}: means nothing for shears`)]);
  });

  it("sets the clinic's cutter aside, which nobody typed", async () => {
    const clinic = join(scratch, 'clinic.json');
    writeFileSync(clinic, JSON.stringify({ schema: 'knucklewright/clinic@1', cutter: 'knife' }));
    const out = join(scratch, 'aside');
    const { exit, err } = await sheets('--sizes', '100x20:2', '--shears', '--clinic', clinic, '--formats', 'svg', '--out', out);
    expect([exit, err]).toEqual([0, '']);
    // Nothing was made ready for a machine: words and plan are in the drawing.
    expect(readFileSync(join(out, 'sheet-01_mm.svg'), 'utf8')).not.toContain('"cutter"');
  });
});

describe('sheets and the gap', () => {
  const report = async (...words: readonly string[]) => JSON.parse((await sheets(...words, '--json')).out);

  it('says under which gap and margin fewer is impossible, and which narrower gap would save a sheet', async () => {
    // Two of 149 lie in 300 with a gap of 2 and four rows of 20 in 100; without any gap five rows do.
    const told = await report('--sizes', '149x20:10', '--sheet', '310x110');
    expect(told.verdict).toBe('2 new sheets, and fewer is impossible with a gap of 2 and a margin of 5 mm');
    expect(told.narrower).toEqual({ gap: 0, newSheets: 1 });
    // With 102 across, half a mm between the rows does: 5 x 20 + 4 x 0.5.
    expect((await report('--sizes', '149x20:10', '--sheet', '310x112')).narrower).toEqual({ gap: 0.5, newSheets: 1 });
    expect((await report('--sizes', '149x20:10', '--sheet', '310x120')).narrower).toBeNull();
  });

  it('a gap of nothing never doubles a cut without a word', async () => {
    const { warnings } = await report('--sizes', '100x20:4', '--gap', '0');
    expect(warnings).toMatchObject([{ code: 'EDGES_TOUCH', value: 3 }]);
    expect((await report('--sizes', '100x20:1', '--gap', '0')).warnings).toEqual([]);
  });
});
