import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { kerfFromTest } from '../src/sheet/cutter/kerf-test.ts';
import { runCommand } from './run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'machine-files-'));
afterAll(() => rmSync(scratch, { recursive: true }));
const DEMO = 'fixtures/demo-hand.json';
const LASER = ['--cutter', 'laser-if-allowed', '--material', 'polycaprolactone', '--material-allows-laser'];

let runs = 0;
async function written(...words: readonly string[]) {
  const folder = join(scratch, String(++runs));
  const run = await runCommand(...words, '--out', folder);
  const names = existsSync(folder) ? readdirSync(folder).sort() : [];
  return { run, folder, names, file: (ending: string) => join(folder, names.find((name) => name.endsWith(ending)) ?? '') };
}

describe('files for a machine', () => {
  it.each([
    ['a strip for a knife', ['draw', DEMO, '--cutter', 'knife', '--bed', '305x305']],
    ['a strip for a laser', ['draw', DEMO, ...LASER, '--bed', '610x457', '--lead-in', '2', '--kerf', '0.2']],
    ['a strip for a pen, turned for its bed', ['draw', DEMO, '--cutter', 'pen-and-scissors', '--bed', '60x200']],
    ['a plate for a knife', ['draw', 'fixtures/demo-hand-plate.json', '--plate', 'dorsal', '--cutter', 'knife', '--bed', '305x305']],
    ['a sheet for a laser', ['sheets', '--sizes', '168x20:8,176x20:10', '--sheet', '610x457', ...LASER, '--bed', '610x457']],
  ])('%s hold cuts and marks alone, on the bed; the words stand beside them', async (_name, words) => {
    const { run, folder, names, file } = await written(...words);
    expect(run.exit, run.err).toBe(0);
    const drawings = names.filter((name) => /(svg|dxf)$/.test(name) && !/list|chart/.test(name));
    expect(drawings.length).toBe(2);
    expect(file('_mm.txt')).not.toBe(folder);
    const bed = words[words.indexOf('--bed') + 1] ?? '';
    for (const name of drawings) {
      const checked = await runCommand('inspect', join(folder, name), '--bed', bed, '--fail-on', 'look', '--json');
      const found = JSON.parse(checked.out);
      expect(found.findings, JSON.stringify(found.findings)).toEqual([]);
      expect(
        found.layers.every(({ role, curves }: { readonly role: string; readonly curves: number }) => role !== 'info' || curves === 0),
      ).toBe(true);
      expect(found.texts).toBe(0);
      expect(checked.exit).toBe(0);
    }
    const text = readFileSync(file('_mm.txt'), 'utf8');
    expect(text).toContain('lower left corner is 0,0');
    expect(text).toContain('order of the tools:');
    expect(text).toMatch(/burns/);
  });

  it('have each tool as a layer that drawing programs list, marks first', async () => {
    const { file } = await written('draw', DEMO, ...LASER);
    const svg = readFileSync(file('.svg'), 'utf8');
    const layers = [...svg.matchAll(/<g id="([^"]+)" inkscape:groupmode="layer" inkscape:label="([^"]+)"/g)].map(([, id, label]) => [
      id,
      label,
    ]);
    expect(layers).toEqual([
      ['SCORE', 'SCORE'],
      ['CUT', 'CUT'],
    ]);
  });

  it('with --content cut have the outline alone, with all everything', async () => {
    const bare = await written('draw', DEMO, '--content', 'cut', '--formats', 'svg');
    const found = JSON.parse((await runCommand('inspect', bare.file('.svg'), '--json')).out);
    expect(found.markLength).toBe(0);
    const whole = await written('draw', DEMO, '--cutter', 'knife', '--content', 'all', '--formats', 'svg');
    expect(whole.names).toHaveLength(1);
    expect(readFileSync(whole.file('.svg'), 'utf8')).toContain('reference-square');
  });

  it('hold the test square only on request, off the parts', async () => {
    const without = await written('draw', DEMO, '--cutter', 'knife');
    expect(readFileSync(without.file('.svg'), 'utf8')).not.toContain('reference-square');
    const asked = await written('draw', DEMO, '--cutter', 'knife', '--test-square');
    expect(readFileSync(asked.file('.svg'), 'utf8')).toContain('reference-square');
    const nowhere = await written('draw', DEMO, '--test-square');
    expect(nowhere.run.err).toContain('--test-square');
    expect(nowhere.names).toEqual([]);
  });

  it('that do not fit the bed are refused with exit 3, and nothing is written', async () => {
    const { run, names } = await written('draw', DEMO, '--cutter', 'knife', '--bed', '100x60');
    expect(run.exit).toBe(3);
    expect(run.err).toContain('BED_TOO_SMALL');
    expect(names).toEqual([]);
  });

  it('are about SVG and DXF', async () => {
    const { run, names } = await written('draw', DEMO, '--content', 'cut', '--formats', 'pdf');
    expect(run.err).toContain('--content');
    expect(run.exit).not.toBe(0);
    expect(names).toEqual([]);
  });
});

describe('redraw', () => {
  it('keeps cutter, kerf, content and bed; flags win; none turns the machine off', async () => {
    const first = await written('draw', DEMO, '--cutter', 'knife', '--kerf', '0.3', '--bed', '305x305');
    const again = await written('redraw', first.file('.svg'));
    expect(readFileSync(again.file('.svg'), 'utf8')).toBe(readFileSync(first.file('.svg'), 'utf8'));
    expect(readFileSync(again.file('.dxf'), 'utf8')).toBe(readFileSync(first.file('.dxf'), 'utf8'));
    const other = await written('redraw', first.file('.dxf'), '--kerf', '0.1');
    expect(readFileSync(other.file('.txt'), 'utf8')).toContain('kerf 0.1 mm');
    const plain = await written('redraw', first.file('.dxf'), '--cutter', 'none', '--content', 'all', '--kerf', '0');
    expect(readFileSync(plain.file('.svg'), 'utf8')).toContain('reference-square');
  });

  it('asks for the material of a laser anew', async () => {
    const first = await written('draw', DEMO, ...LASER);
    const refused = await written('redraw', first.file('.svg'));
    expect(refused.run.exit).toBe(3);
    expect(refused.run.err).toContain('--material');
    const allowed = await written('redraw', first.file('.svg'), ...LASER.slice(2));
    expect(allowed.run.exit).toBe(0);
    expect(readFileSync(allowed.file('.svg'), 'utf8')).toBe(readFileSync(first.file('.svg'), 'utf8'));
  });
});

describe('kerf-test', () => {
  it('shows the kerf as what five pieces lack together', async () => {
    expect(kerfFromTest(99)).toBeCloseTo(0.2, 12);
    expect(kerfFromTest(100.4)).toBe(0);
    const { run, file, names } = await written('kerf-test', '--cutter', 'knife', '--material', 'Sheet A 2.4');
    expect(run.exit).toBe(0);
    expect(names).toEqual(['kerf-test-sheet-a-2-4_mm.dxf', 'kerf-test-sheet-a-2-4_mm.svg', 'kerf-test-sheet-a-2-4_mm.txt']);
    const found = JSON.parse((await runCommand('inspect', file('.svg'), '--json', '--fail-on', 'look')).out);
    expect(found.parts.map(({ width, height }: { readonly width: number; readonly height: number }) => [width, height])).toEqual(
      Array.from({ length: 5 }, () => [20, 15]),
    );
    expect((await written('kerf-test', '--kerf', '0.2')).run.err).toContain('--kerf');
  });
});
