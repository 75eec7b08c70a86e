import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../tests/run-command.ts';
import { cutterById } from '../sheet/cutter/cutter-profile.ts';
import { readClinic } from './clinic-file.ts';

const scratch = mkdtempSync(join(tmpdir(), 'clinic-'));
afterAll(() => rmSync(scratch, { recursive: true }));
mkdirSync(join(scratch, 'clinic'));

const SCHEMA = { schema: 'knucklewright/clinic@1' };
function write(name: string, content: object): string {
  const path = join(scratch, 'clinic', name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}
const draw = async (...words: readonly string[]) => {
  const run = await runCommand('draw', 'fixtures/demo-hand.json', '--json', ...words);
  return { ...run, report: JSON.parse(run.out) };
};

describe("a clinic's own file", () => {
  const clinic = write('clinic.json', {
    ...SCHEMA,
    paper: 'letter',
    thickness: 1.6,
    skinClearance: '1 mm',
    cutter: 'knife',
    sheet: '18inx24in',
  });

  it('stands before defaults, after flags and the options file, and the report says where each value came from', async () => {
    const options = write('options.json', { thickness: 3.2 });
    const plain = await draw('--clinic', clinic);
    expect(plain.exit, plain.err).toBe(0);
    expect(plain.report.valuesFrom).toEqual({
      file: clinic,
      values: {
        paper: { from: 'clinic', value: 'letter' },
        language: { from: 'default' },
        cutter: { from: 'clinic', value: 'knife' },
        shelf: { from: 'default' },
        thickness: { from: 'clinic', value: 1.6 },
        skinClearance: { from: 'clinic', value: '1 mm' },
      },
    });
    const same = await draw('--thickness', '1.6', '--skin-clearance', '1', '--cutter', 'knife');
    expect(plain.report.flatLength).toBe(same.report.flatLength);
    const inOptions = await draw('--clinic', clinic, '--options', options);
    expect(inOptions.report.valuesFrom.values.thickness).toEqual({ from: 'options', value: 3.2 });
    expect(inOptions.report.flatLength).toBe((await draw('--thickness', '3.2', '--skin-clearance', '1')).report.flatLength);
    // A flag wins, also where it says what the default would.
    const flags = await draw('--clinic', clinic, '--options', options, '--thickness', '2.4', '--paper', 'a4');
    expect(flags.report.valuesFrom.values).toMatchObject({ thickness: { from: 'flag' }, paper: { from: 'flag', value: 'a4' } });
    expect(flags.report.flatLength).toBe((await draw('--thickness', '2.4', '--skin-clearance', '1')).report.flatLength);
  });

  it('is named by the environment where no flag names it; none turns it off, a missing one is exit 1', async () => {
    process.env.KNUCKLEWRIGHT_CLINIC = clinic;
    try {
      expect((await draw()).report.valuesFrom.file).toBe(clinic);
      const without = await draw('--clinic', 'none');
      expect(without.report.valuesFrom).toMatchObject({ file: null, values: { paper: { from: 'default', value: 'a4' } } });
    } finally {
      delete process.env.KNUCKLEWRIGHT_CLINIC;
    }
    const missing = await draw('--clinic', join(scratch, 'no-such.json'));
    expect([missing.exit, missing.report.errors[0].code]).toEqual([1, 'FILE_NOT_READ']);
  });

  it('takes paths from its own folder', async () => {
    write('knife.json', { ...cutterById('knife'), id: 'own-knife', kerf: 0.4 });
    writeFileSync(join(scratch, 'clinic', 'shelf.csv'), 'length,width,count\n400,60,3\n');
    const path = write('paths.json', { ...SCHEMA, cutter: './knife.json', shelf: 'shelf.csv' });
    const read = readClinic({ ...SCHEMA, cutter: './knife.json', shelf: 'shelf.csv' }, path);
    expect(read.ok && read.value.flags).toEqual({
      cutter: join(scratch, 'clinic', 'knife.json'),
      shelf: join(scratch, 'clinic', 'shelf.csv'),
    });
    const out = join(scratch, 'out');
    expect(JSON.stringify((await draw('--clinic', path, '--out', out)).report)).toContain('KERF_IN_OUTLINES');
  });

  it('a cutter that a drawing was made for stays when it is drawn again', async () => {
    const out = join(scratch, 'kept');
    const drawn = await draw('--cutter', 'pen-and-scissors', '--formats', 'svg', '--out', out);
    const again = await runCommand(
      'redraw',
      drawn.report.files[0].path,
      '--clinic',
      clinic,
      '--formats',
      'svg',
      '--out',
      join(scratch, 'again'),
      '--json',
    );
    expect(again.exit, again.err).toBe(0);
    expect(Object.keys(JSON.parse(again.out).valuesFrom.values)).toEqual(['paper']);
  });

  it.each([
    ['a laser permission', { materialAllowsLaser: true }, 'CLINIC_LASER'],
    ['another key', { papper: 'a4' }, 'did you mean "paper"'],
    ['a paper that is none', { paper: 'a9' }, '"a9" is not a paper'],
    ['a sheet that is none', { sheet: 'big' }, 'sheet: "big" is no size'],
    ['a thickness out of range', { thickness: 40 }, '0.8 to 4.8 mm is allowed'],
    ['a letterhead of two lines in one', { letterhead: ['a\nb'] }, 'one line of plain text'],
    ['a later version', { schema: 'knucklewright/clinic@2' }, 'a newer knucklewright wrote it'],
  ])('%s is refused, with the name of the file', (_, more, message) => {
    const read = readClinic({ ...SCHEMA, ...more }, 'own.json');
    const said = read.ok ? '' : read.problems.map((p) => `${p.code} ${p.message}`).join('\n');
    expect(said.toLowerCase()).toContain(message.toLowerCase());
    expect(said).toContain('own.json: ');
  });
});
