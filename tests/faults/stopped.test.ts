import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { PROGRESS_NAME as PROGRESS } from '../../src/cli/batch-progress.ts';
import { times } from '../by-night.ts';
import { COMMAND, callsOf, ended, LONG, ROOT, run, scratchFolder, start, startWithFault, visibleFiles } from './commands.ts';

const scratch = scratchFolder('stopped');
afterAll(() => rmSync(scratch, { recursive: true }));

const hidden = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('.'));

/** How a program ended, as a shell shows it: 128 and the number of the signal. */
async function endOf(child: ReturnType<typeof start>): Promise<number> {
  const closed = new Promise<NodeJS.Signals | null>((done) => child.on('close', (_, signal) => done(signal)));
  const { status } = await ended(child);
  return status ?? { SIGINT: 130, SIGTERM: 143 }[String(await closed)] ?? -1;
}

/** Hands with codes of their own, none of them wrong: a wrong row ends a batch with 1, whether it was stopped or not. */
function tableOf(name: string, hands: number): string {
  const [head = '', first = ''] = readFileSync(join(ROOT, 'fixtures', 'demo-clinic.csv'), 'utf8').split('\n');
  const path = join(scratch, name);
  writeFileSync(path, [head, ...Array.from({ length: hands }, (_, k) => first.replace('CLINIC-01', `STOP-${k + 1}`))].join('\n'));
  return path;
}

/** By day fewer. */
const HANDS = times(6, 12);

describe('a batch that is stopped in the middle', () => {
  const table = tableOf('hands.csv', HANDS);
  const batch = (folder: string) => ['batch', table, '--files', 'each', '--formats', 'svg', '--content', 'cut', '--out', folder];
  const calls = callsOf(COMMAND, batch(join(scratch, 'whole')));

  // The signal comes from inside, at a call of the disk, so that it finds the batch at the same work on a fast and on a slow computer.
  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
  ] as const)('by %s ends with %i, leaves nothing hidden and goes on where it was', { timeout: LONG }, async (signal, code) => {
    const folder = join(scratch, signal);
    expect(await endOf(startWithFault(COMMAND, batch(folder), Math.floor(calls.length / 2), signal))).toBe(code);
    expect(hidden(folder)).toEqual([]);
    const made = readdirSync(folder).filter((name) => name.endsWith('.svg')).length;
    expect(made).toBeGreaterThan(times(1, 2));
    expect(made).toBeLessThan(HANDS);
    expect(readdirSync(folder)).toContain(PROGRESS);
    expect(readdirSync(folder)).not.toContain('cut-list.csv');
    const again = run([...batch(folder), '--json']);
    expect(again.stderr).toBe('');
    expect(again.status).toBe(0);
    const { made: anew, reused } = JSON.parse(again.stdout);
    expect(anew + reused).toBe(HANDS);
    // One row may have been drawn and not yet written down.
    expect(reused).toBeGreaterThanOrEqual(made - 1);
    expect(hidden(folder)).toEqual([]);
    expect(visibleFiles(folder)).toEqual({ ...visibleFiles(join(scratch, 'whole')), [PROGRESS]: expect.any(String) });
  });
});

it('a case add that is stopped while it waits leaves the lock of the other and nothing of its own', { timeout: LONG }, async () => {
  const folder = join(scratch, 'waiting');
  mkdirSync(folder);
  const file = join(folder, 'case.json');
  expect(run(['case', 'new', file, '--code', 'TEST-1', '--side', 'left', '--digit', 'ring']).status).toBe(0);
  const lock = join(folder, '.case.json.lock');
  writeFileSync(lock, JSON.stringify({ pid: 1, host: 'another-computer', token: 'abcdef012345' }));
  const child = start(['case', 'add', file, '--date', '2026-03-02', '--pip-active', '25/85']);
  const over = endOf(child);
  await new Promise<void>((said) => child.stderr?.on('data', (text: string) => String(text).includes('waiting: ') && said()));
  child.kill('SIGINT');
  expect(await over).toBe(130);
  expect(readdirSync(folder).sort()).toEqual(['.case.json.lock', 'case.json']);
  expect(JSON.parse(readFileSync(file, 'utf8')).visits).toEqual([]);
});
