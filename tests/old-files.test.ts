import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { inspectFile } from '../src/inspect/inspect-file.ts';
import { tried } from './by-night.ts';
import { asTyped, runCommand } from './run-command.ts';

/** Files as earlier versions of this program wrote them, byte for byte (packed), and of a list the first piece. */
const OLD = 'fixtures/old';
const scratch = mkdtempSync(join(tmpdir(), 'old-files-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** An old drawing, unpacked. */
function unpacked(name: string): string {
  const path = join(scratch, name);
  writeFileSync(path, gunzipSync(readFileSync(join(OLD, `${name}.gz`))));
  return path;
}

/** The parts of a drawing, mm to 3 decimals. */
const cutsOf = (path: string) => {
  const rounded = (value: number) => Number(value.toFixed(3));
  return inspectFile(readFileSync(path)).parts.map(({ width, height, cutLength }) => [width, height, cutLength].map(rounded));
};

describe('a drawing of the first geometry', () => {
  it.each(tried(['strip-1.svg', 'strip-1.dxf', 'strip-1.pdf'], (name) => name === 'strip-1.svg'))(
    '%s is drawn again with the cuts that it had, and says so',
    async (name) => {
      const old = unpacked(name);
      const out = join(scratch, `again-${name}`);
      const { exit, err } = await runCommand('redraw', old, ...asTyped({ out, formats: 'svg' }));
      expect([exit, err.match(/^(error|warning) \w+/gm)]).toEqual([0, ['warning GEOMETRY_EARLIER']]);
      const cuts = [[177.392, 20, 393.982]];
      // A PDF has no layer that says what is cut.
      if (!name.endsWith('.pdf')) expect(cutsOf(old)).toEqual(cuts);
      expect(cutsOf(join(out, readdirSync(out)[0] ?? ''))).toEqual(cuts);
    },
  );

  it('of a plate is drawn with the present one, and says that the outline may differ', async () => {
    const out = join(scratch, 'plate');
    const { exit, err } = await runCommand('redraw', unpacked('plate-1.pdf'), ...asTyped({ out, formats: 'svg' }));
    expect(exit).toBe(0);
    expect(err).toContain('warning GEOMETRY_CHANGED');
    expect(err).toContain('compare the new pattern with the old one before cutting');
  });

  it('is what a visit can be said to have made, in a case of the first version', async () => {
    const file = join(scratch, 'case.json');
    cpSync(join(OLD, 'case-1.json'), file);
    const before = JSON.parse(readFileSync(file, 'utf8'));
    const strip = unpacked('strip-1.svg');
    // The strip is of another code: it says so, and the case keeps its bytes.
    const refused = await runCommand(
      'case',
      'add',
      file,
      '--date',
      '2026-12-01',
      '--pip-active',
      '10/95',
      '--pattern',
      strip,
      '--no-input',
    );
    expect(refused).toMatchObject({ exit: 1, err: expect.stringContaining('HAND_OF_ANOTHER') });
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(before);
    writeFileSync(file, JSON.stringify({ ...before, code: 'DEMO-01', hand: { ...before.hand, code: 'DEMO-01' } }));
    const added = await runCommand('case', 'add', file, '--date', '2026-12-01', '--pip-active', '10/95', '--pattern', strip, '--no-input');
    expect(added).toMatchObject({ exit: 0, err: '' });
    const after = JSON.parse(readFileSync(file, 'utf8'));
    expect(after.schema).toBe('knucklewright/case@2');
    expect(after.visits).toHaveLength(before.visits.length + 1);
    expect(after.visits.at(-1).made).toMatchObject({ kind: 'strip', geometryVersion: '1' });
  });
});

it('options of the first geometry are read, what is retired among them too', async () => {
  const { exit, out } = await runCommand('draw', 'fixtures/demo-hand.json', '--options', join(OLD, 'strip-options-1.json'), '--json');
  expect(exit).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ schema: 'knucklewright/draw-report@1' });
});

it('a cut list of the first geometry is not laid out as if it were of this one', async () => {
  const out = join(scratch, 'sheets');
  const list = join(OLD, 'cut-list-1.json');
  expect(await runCommand('sheets', list, '--out', out)).toMatchObject({ exit: 1, err: expect.stringMatching(/CUT_LIST_OLD: .*again/) });
  expect(readdirSync(scratch)).not.toContain('sheets');
});

it('a cut list whose geometry is no version is refused in the same words', async () => {
  const list = join(scratch, 'list.json');
  const old = JSON.parse(readFileSync(join(OLD, 'cut-list-1.json'), 'utf8'));
  // An object that JavaScript can make no text of.
  writeFileSync(list, JSON.stringify({ ...old, settings: { ...old.settings, geometryVersion: { toString: 1, valueOf: 1 } } }));
  const { exit, err } = await runCommand('sheets', list, '--out', join(scratch, 'sheets'));
  expect([exit, err]).toEqual([1, expect.stringMatching(/CUT_LIST_OLD: .*geometry an object, this is geometry "2"/)]);
});
