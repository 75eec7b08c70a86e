import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { times } from './by-night.ts';
import { runCommand } from './run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'nested-'));

afterAll(() => rmSync(scratch, { recursive: true }));

/** Half of them women; by day fewer. */
const HANDS = times(30, 200);

const folder = (name: string) => join(scratch, name);
const text = (...path: string[]) => readFileSync(join(scratch, ...path), 'utf8');

describe('plates on sheets and sizes of drawn hands', () => {
  it('plates are nested by their outlines where that saves a sheet, and the sheet says how it is cut', async () => {
    const lines = readFileSync('fixtures/demo-clinic.csv', 'utf8').split('\n').slice(0, 4);
    const withBothDeficits = lines.map((line, i) => (i === 0 ? line : line.split(',').toSpliced(19, 2, '30', '30').join(',')));
    const path = join(scratch, 'plates.csv');
    writeFileSync(path, withBothDeficits.join('\n'));
    const args = ['--plate', 'mp-immobilisation-palmar', '--files', 'sheets', '--formats', 'svg', '--sheet', '215x140', '--json'];
    const ran = await runCommand('batch', path, ...args, '--out', folder('nested'));
    expect([ran.exit, ran.err]).toEqual([0, '']);
    const { sheets, newSheets } = JSON.parse(ran.out).sheets as { newSheets: number; sheets: { byOutline: boolean; parts: number }[] };
    // By their boxes no two of them lie on one such sheet.
    expect([newSheets, sheets.some((sheet) => sheet.byOutline && sheet.parts === 2)]).toEqual([2, true]);
    const nested = sheets.findIndex((sheet) => sheet.byOutline) + 1;
    expect(text('nested', `sheet-0${nested}_mm.svg`)).toContain('<title>edge of the sheet');
    const layout = JSON.parse(text('nested', 'layout.json')) as { sheets: { byOutline: boolean; parts: { half: boolean }[] }[] };
    const halves = layout.sheets.filter((sheet) => sheet.byOutline).map((sheet) => sheet.parts.map((part) => part.half));
    expect(halves[0]?.toSorted()).toEqual([false, true]);
  });

  it('sizes of drawn hands leave none out for its relief, and say how many hold nothing at a steep differential, of which group', async () => {
    const args = [
      'sizes',
      '--norms',
      'mixed',
      '--hands',
      String(HANDS),
      '--block',
      'ring-lowered-in-four',
      '--count',
      '2',
      '--out',
      folder('norms'),
    ];
    expect(JSON.parse((await runCommand(...args, '--json', '--force')).out)).toMatchObject({ hands: HANDS, leftOut: [] });
    const steep = [...args, '--differential', '45', '--width', '20', '--force'];
    const { exit, out, err } = await runCommand(...steep, '--json');
    const { hands, leftOut, bias } = JSON.parse(out) as { hands: number; leftOut: { code: string; hands: number }[]; bias: string };
    expect([exit, err]).toEqual([0, '']);
    expect(leftOut).toEqual([{ code: 'HOLDS_NOTHING', hands: HANDS - hands }]);
    const [women = 0, men = 0] = [new RegExp(`female (\\d+) of ${HANDS / 2}`), new RegExp(`[^e]male (\\d+) of ${HANDS / 2}`)].map((part) =>
      Number(part.exec(bias)?.[1]),
    );
    expect(HANDS - hands).toBeGreaterThan(HANDS / 20);
    expect(women + men).toBe(HANDS - hands);
    expect(bias).toContain('a smaller --differential leaves out fewer');
    expect((await runCommand(...steep)).out).toContain(`${HANDS - hands} of ${HANDS} hands`);
  });
});
