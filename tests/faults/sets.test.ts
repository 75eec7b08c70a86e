import { copyFileSync, cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setIdIn } from '../../src/files/drawing-set.ts';
import { runCommand } from '../run-command.ts';
import { DEMO, INNARDS, LONG, scratchFolder } from './commands.ts';

const scratch = scratchFolder('sets');
afterAll(() => rmSync(scratch, { recursive: true }));

const STEM = 'DEMO-01-ring-lowered-in-three_mm';
// The pages of the making and the letters take longest and are of no matter here.
const ALL = ['--formats', 'svg,dxf,pdf', '--reports', '--pages', 'pattern', '--content', 'cut'];
const run = async (args: readonly string[]) => {
  const { exit, out, err } = await runCommand(...args);
  return { status: exit, stdout: out, stderr: err };
};
const draw = (folder: string, ...rest: string[]) => run(['draw', DEMO, '--out', folder, ...rest]);
const idOf = (folder: string, ending: string) => setIdIn(readFileSync(join(folder, `${STEM}.${ending}`)));
const ENDINGS = ['svg', 'dxf', 'pdf', 'report.txt'];

describe('the set id', () => {
  const folders = Object.fromEntries(['one', 'trim', 'kerf', 'paper', 'r12'].map((name) => [name, join(scratch, name)])) as Record<
    'one' | 'trim' | 'kerf' | 'paper' | 'r12',
    string
  >;
  beforeAll(async () => {
    expect((await draw(folders.one, ...ALL)).status).toBe(0);
    expect((await draw(folders.trim, ...ALL, '--trim', '20')).status).toBe(0);
    expect((await draw(folders.kerf, ...ALL, '--kerf', '0.4')).status).toBe(0);
    expect((await draw(folders.paper, ...ALL, '--paper', 'letter')).status).toBe(0);
    expect((await draw(folders.r12, ...ALL, '--dxf', 'r12')).status).toBe(0);
  }, LONG);

  it('is the same in every format, with another machine, paper or form of DXF, and another for another pattern', async () => {
    const id = idOf(folders.one, 'svg');
    expect(id).toMatch(/^[0-9a-f]{16}$/);
    for (const folder of [folders.one, folders.kerf, folders.paper, folders.r12])
      for (const ending of ENDINGS) expect([folder, ending, idOf(folder, ending)]).toEqual([folder, ending, id]);
    for (const ending of ENDINGS) expect(idOf(folders.trim, ending)).not.toBe(id);
  });

  it('survives in a DXF whose comments a program dropped', async () => {
    const dxf = readFileSync(join(folders.one, `${STEM}.dxf`), 'utf8').replace(/^999\n.*\n/gm, '');
    expect(dxf).not.toContain('inputs');
    expect(setIdIn(Buffer.from(dxf))).toBe(idOf(folders.one, 'svg'));
  });

  it('of a file of an earlier version, which states none, is that of its inputs', async () => {
    const svg = readFileSync(join(folders.one, `${STEM}.svg`), 'utf8').replace(/,"set":"[0-9a-f]{16}"/, '');
    expect(svg).not.toContain('"set"');
    expect(setIdIn(Buffer.from(svg))).toBe(idOf(folders.one, 'svg'));
    expect(setIdIn(Buffer.from('<svg/>'))).toBeNull();
  });

  it.each(['svg', 'dxf', 'pdf', 'report.txt'])(
    'of one %s that is of another pattern makes redraw and print-check refuse, and inspect warn',
    async (ending) => {
      const folder = join(scratch, `mixed-${ending}`);
      cpSync(folders.one, folder, { recursive: true });
      copyFileSync(join(folders.trim, `${STEM}.${ending}`), join(folder, `${STEM}.${ending}`));
      const file = join(folder, `${STEM}.${ending === 'svg' ? 'pdf' : 'svg'}`);
      for (const args of [
        ['redraw', file, '--out', join(scratch, 'never')],
        ['print-check', '--across', '97', '--along', '99', '--out', join(scratch, 'never'), file],
      ]) {
        const { status, stderr } = await run(args);
        expect(status).toBe(1);
        expect(stderr).toContain('error SET_MIXED');
        expect(stderr).toContain(`${STEM}.${ending}`);
      }
      const inspected = await run(['inspect', file]);
      expect(inspected.status).toBe(3);
      expect(inspected.stdout).toContain('stop  505');
      // The way out that the message names.
      expect((await draw(folder, ...ALL, '--force')).status).toBe(0);
      expect((await run(['redraw', file, '--out', join(scratch, `again-${ending}`)])).status).toBe(0);
    },
  );

  it('keeps one format from being drawn again beside older ones, and the way out that is named works', async () => {
    const folder = join(scratch, 'alone');
    expect((await draw(folder)).status).toBe(0);
    const before = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
    const { status, stderr } = await draw(folder, '--formats', 'pdf', '--trim', '20');
    expect(status).toBe(1);
    expect(stderr).toContain('error SET_MIXED');
    expect(stderr).toContain('--formats svg,dxf,pdf --force');
    expect(stderr).not.toMatch(INNARDS);
    expect(readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'))).toEqual(before);
    expect((await draw(folder, '--formats', 'svg,dxf,pdf', '--force', '--trim', '20')).status).toBe(0);
  });

  it('knows the words beside a drawing for a machine, and both ways out that are named work', async () => {
    const [folder, other] = [join(scratch, 'words'), join(scratch, 'other-words')];
    const machine = ['--formats', 'svg,dxf', '--content', 'cut'];
    expect((await draw(folder, ...machine)).status).toBe(0);
    expect((await draw(other, ...machine, '--trim', '20')).status).toBe(0);
    expect(idOf(folder, 'txt')).toBe(idOf(folder, 'svg'));

    // Without its words' place, so that those of the other pattern would stay.
    const { status, stderr } = await draw(folder, '--formats', 'svg,dxf', '--trim', '20', '--force');
    expect(status).toBe(1);
    expect(stderr).toContain('error SET_MIXED');
    expect(stderr).toContain(`Take ${STEM}.txt away`);
    expect((await draw(folder, ...machine, '--trim', '20', '--force')).status).toBe(0);
    rmSync(join(folder, `${STEM}.txt`));
    expect((await draw(folder, '--formats', 'svg,dxf', '--trim', '30', '--force')).status).toBe(0);

    copyFileSync(join(other, `${STEM}.txt`), join(folder, `${STEM}.txt`));
    const inspected = await run(['inspect', join(folder, `${STEM}.svg`)]);
    expect(inspected.status).toBe(3);
    expect(inspected.stdout).toContain(`${STEM}.txt`);
  });

  it('says nothing of files that are not ours', async () => {
    const folder = join(scratch, 'foreign');
    expect((await draw(folder, '--formats', 'svg')).status).toBe(0);
    writeFileSync(join(folder, `${STEM}.dxf`), '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n');
    writeFileSync(join(folder, `${STEM}.pdf`), 'a note');
    expect((await run(['inspect', join(folder, `${STEM}.svg`)])).stdout).toContain('nothing found wrong');
  });
});

describe('sheets', () => {
  const laid = (folder: string, many: number, ...rest: string[]) => run(['sheets', '--sizes', `168x20:${many}`, '--out', folder, ...rest]);

  it('of one layout are one set; with --force an older layout leaves none of its sheets, and nothing else goes', async () => {
    const folder = join(scratch, 'sheets');
    expect((await laid(folder, 200)).status).toBe(0);
    const many = readdirSync(folder).filter((name) => name.startsWith('sheet-'));
    expect(many.length).toBeGreaterThan(4);
    expect(new Set(many.map((name) => setIdIn(readFileSync(join(folder, name))))).size).toBe(1);
    writeFileSync(join(folder, 'sheet-77_mm.svg'), 'a note of my own');
    const fewer = await laid(folder, 20, '--force');
    expect(fewer.status).toBe(0);
    expect(fewer.stderr).toContain('OLD_SHEETS_REMOVED');
    expect(readdirSync(folder).filter((name) => name.startsWith('sheet-'))).toEqual([
      'sheet-01_mm.dxf',
      'sheet-01_mm.svg',
      'sheet-77_mm.svg',
    ]);
    expect(readFileSync(join(folder, 'sheet-77_mm.svg'), 'utf8')).toBe('a note of my own');
  });

  it('of two layouts in one folder are found by inspect, whatever their numbers', async () => {
    const [folder, other] = [join(scratch, 'layout'), join(scratch, 'other-layout')];
    expect((await laid(folder, 100)).status).toBe(0);
    expect((await laid(other, 100, '--gap', '5')).status).toBe(0);
    expect((await run(['inspect', join(folder, 'sheet-01_mm.svg')])).stdout).not.toContain('stop  505');
    copyFileSync(join(other, 'sheet-02_mm.dxf'), join(folder, 'sheet-02_mm.dxf'));
    expect((await run(['inspect', join(folder, 'sheet-01_mm.svg')])).stdout).toContain('stop  505');
  });
});
