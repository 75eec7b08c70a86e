import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it, type TestContext } from 'vitest';
import { DEMO, INNARDS, isRoot, LONG, run, scratchFolder, visibleFiles } from './commands.ts';

const scratch = scratchFolder('disk');
const mounted: string[] = [];
afterAll(() => {
  for (const folder of mounted) spawnSync('umount', [folder]);
  rmSync(scratch, { recursive: true });
});

/** A file system of its own at a new folder; skips the test where that is not allowed. */
function mount(context: TestContext, name: string, options: string): string {
  const folder = join(scratch, name);
  mkdirSync(folder);
  const done = isRoot ? spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0 : false;
  if (!done) context.skip('needs the right to mount a small file system (root)');
  mounted.push(folder);
  return folder;
}

it('a full disk: says so, leaves the older file whole and no piece of a new one', (context) => {
  const folder = mount(context, 'small', 'size=48k');
  writeFileSync(join(folder, 'mine.txt'), 'mine');
  const first = run(['draw', DEMO, '--out', folder, '--formats', 'svg']);
  expect(first.status).toBe(1);
  expect(first.stderr).toContain('the disk is full');
  expect(first.stderr).not.toMatch(INNARDS);
  expect(readdirSync(folder)).toEqual(['mine.txt']);
});

it('a disk that fills while an older drawing is replaced keeps the older drawing', { timeout: LONG }, (context) => {
  const probe = join(scratch, 'probe');
  const drawn = ['draw', DEMO, '--content', 'cut-and-marks', '--out'];
  expect(run([...drawn, probe]).status).toBe(0);
  const older = visibleFiles(probe);
  const bytes = Object.values(older).reduce((sum, text) => sum + text.length, 0);
  // Room for one set and half of another.
  const folder = mount(context, 'half', `size=${Math.ceil((1.5 * bytes) / 4096) * 4}k`);
  expect(run([...drawn, folder]).status).toBe(0);
  const second = run([...drawn, folder, '--force', '--trim', '30']);
  expect(second.status).toBe(1);
  expect(second.stderr).toContain('the disk is full');
  expect(visibleFiles(folder)).toEqual(older);
  expect(readdirSync(folder)).toEqual(Object.keys(older));
});

it('a read-only folder: says so before anything is computed', (context) => {
  const folder = isRoot ? mount(context, 'fixed', 'ro') : join(scratch, 'fixed');
  if (!isRoot) {
    mkdirSync(folder);
    chmodSync(folder, 0o555);
  }
  for (const out of [folder, join(folder, 'below', 'that')]) {
    const { status, stderr } = run(['draw', DEMO, '--out', out]);
    expect(status).toBe(1);
    expect(stderr).toMatch(/cannot write into the folder .* choose a folder that you may write to/);
    expect(stderr).not.toMatch(INNARDS);
  }
  expect(readdirSync(folder)).toEqual([]);
});

it('a report that does not fit on its disk: says so, ends with 1, and the drawings are there', (context) => {
  const out = join(scratch, 'beside');
  const line = `"${process.execPath}" dist/knucklewright.js draw fixtures/demo-hand.json --out "${out}" > /dev/full`;
  if (spawnSync('test', ['-c', '/dev/full']).status !== 0) context.skip('needs /dev/full');
  const { status, stderr } = spawnSync('sh', ['-c', line], { encoding: 'utf8' });
  expect(status).toBe(1);
  expect(stderr).toContain('the report cannot be printed: the disk is full');
  expect(stderr).not.toMatch(INNARDS);
  expect(Object.keys(visibleFiles(out))).toHaveLength(2);
});
