import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const HAND = readFileSync(join(ROOT, 'fixtures/demo-hand.json'));

/** Where the command runs and has its passing files, its own: other tests leave theirs in the system's meanwhile. */
const folder = mkdtempSync(join(tmpdir(), 'knucklewright-streams-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The built command with something piped into it. */
function piped(input: string | Buffer, ...words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'dist/knucklewright.js'), ...words], {
    input,
    cwd: folder,
    env: { ...process.env, TMPDIR: folder, TEMP: folder, TMP: folder },
  });
  return { exit: status, out: stdout, err: String(stderr) };
}

it('a hand piped in is drawn, its drawing piped on is read back and drawn again, and nothing is left behind', () => {
  const svg = piped(HAND, 'draw', '-', '--formats', 'svg', '--out', '-');
  expect(svg.exit, svg.err).toBe(0);
  expect(svg.out.subarray(0, 5).toString()).toBe('<?xml');
  const found = piped(svg.out, 'inspect', '-', '--json');
  expect(JSON.parse(String(found.out))).toMatchObject({ schema: 'knucklewright/inspections@1', files: [{ file: '-', format: 'svg' }] });
  const again = piped(svg.out, 'redraw', '-', '--formats', 'svg', '--out', '-');
  expect(again.out.equals(svg.out)).toBe(true);
  const tried = piped(
    svg.out.toString().replace('"kind":"strip"', '"paperTrial":true,"kind":"strip"'),
    'redraw',
    '-',
    '--formats',
    'svg',
    '--out',
    '-',
  );
  expect([tried.out.toString().match(/<\?xml/g)?.length, tried.err]).toEqual([
    1,
    expect.stringContaining('which is a drawing of its own and was not written'),
  ]);
  const plan = piped(HAND, 'plan', '-');
  expect(String(plan.out)).toContain('knucklewright draw -');
  expect(readdirSync(folder)).toEqual([]);
});

it('a table piped in is made; what is wrong in it is told under the name -', () => {
  const [head = '', row = ''] = readFileSync(join(ROOT, 'fixtures/demo-clinic.csv'), 'utf8').split('\n');
  const made = piped(`${head}\n${row}\n${row.replace('CLINIC-01,right', 'CLINIC-99,upwards')}\n`, 'sizes', '-', '--count', '1', '--json');
  expect([made.exit, made.err]).toEqual([1, expect.stringContaining('left out: -: line 3, column 2 (side)')]);
  expect(JSON.parse(String(made.out))).toMatchObject({ hands: 1, pieces: [1] });
  const cut = piped('length,width,quantity\n180,20,4\n', 'sheets', '-', '--json');
  expect(JSON.parse(String(cut.out))).toMatchObject({ pieces: 4, newSheets: 1 });
});

it('a pipe named as a file is refused with the way to do it, and a wrong flag is told as JSON', () => {
  const pipe = piped(HAND, 'plan', '/dev/stdin');
  expect([pipe.exit, pipe.err]).toEqual([1, expect.stringContaining('write - in place of its name')]);
  const usage = piped('', 'plan', '--bogus', '--json');
  expect([usage.exit, JSON.parse(String(usage.out))]).toEqual([
    2,
    { schema: 'knucklewright/errors@1', errors: [expect.objectContaining({ code: 'USAGE' })], exit: 2 },
  ]);
});
