import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './built-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'nested-'));

afterAll(() => rmSync(scratch, { recursive: true }));

const folder = (name: string) => join(scratch, name);
const text = (...path: string[]) => readFileSync(join(scratch, ...path), 'utf8');

describe('plates on sheets and sizes of drawn hands', () => {
  it('plates are nested by their outlines where that saves a sheet, and the sheet says how it is cut', () => {
    const lines = readFileSync('fixtures/demo-clinic.csv', 'utf8').split('\n').slice(0, 4);
    const withBothDeficits = lines.map((line, i) => (i === 0 ? line : line.split(',').toSpliced(19, 2, '30', '30').join(',')));
    const path = join(scratch, 'plates.csv');
    writeFileSync(path, withBothDeficits.join('\n'));
    const args = ['--plate', 'mp-immobilisation-palmar', '--files', 'sheets', '--formats', 'svg', '--sheet', '215x140', '--json'];
    const ran = run('batch', path, ...args, '--out', folder('nested'));
    expect([ran.code, ran.err]).toEqual([0, '']);
    const { sheets, newSheets } = JSON.parse(ran.out).sheets as { newSheets: number; sheets: { byOutline: boolean; parts: number }[] };
    // By their boxes no two of them lie on one such sheet.
    expect([newSheets, sheets.some((sheet) => sheet.byOutline && sheet.parts === 2)]).toEqual([2, true]);
    const nested = sheets.findIndex((sheet) => sheet.byOutline) + 1;
    expect(text('nested', `sheet-0${nested}_mm.svg`)).toContain('<title>edge of the sheet');
    const layout = JSON.parse(text('nested', 'layout.json')) as { sheets: { byOutline: boolean; parts: { half: boolean }[] }[] };
    const halves = layout.sheets.filter((sheet) => sheet.byOutline).map((sheet) => sheet.parts.map((part) => part.half));
    expect(halves[0]?.toSorted()).toEqual([false, true]);
  });

  it('sizes of drawn hands leave none out for its relief, and say how many hold nothing at a steep differential, of which group', () => {
    const args = [
      'sizes',
      '--norms',
      'mixed',
      '--hands',
      '200',
      '--block',
      'ring-lowered-in-four',
      '--count',
      '2',
      '--out',
      folder('norms'),
    ];
    expect(JSON.parse(run(...args, '--json', '--force').out)).toMatchObject({ hands: 200, leftOut: [] });
    const steep = [...args, '--differential', '45', '--width', '20', '--force'];
    const { code, out, err } = run(...steep, '--json');
    const { hands, leftOut, bias } = JSON.parse(out) as { hands: number; leftOut: { code: string; hands: number }[]; bias: string };
    expect([code, err]).toEqual([0, '']);
    expect(leftOut).toEqual([{ code: 'HOLDS_NOTHING', hands: 200 - hands }]);
    const [women = 0, men = 0] = [/female (\d+) of 100/, /[^e]male (\d+) of 100/].map((part) => Number(part.exec(bias)?.[1]));
    expect(200 - hands).toBeGreaterThan(10);
    expect(women + men).toBe(200 - hands);
    expect(bias).toContain('a smaller --differential leaves out fewer');
    expect(run(...steep).out).toContain(`${200 - hands} of 200 hands`);
  });
});
