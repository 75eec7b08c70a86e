import { mkdirSync, readdirSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { PROGRESS_NAME as PROGRESS } from '../../src/cli/batch-progress.ts';
import { ended, ROOT, run, scratchFolder, start } from './commands.ts';

const scratch = scratchFolder('stopped');
afterAll(() => rmSync(scratch, { recursive: true }));

const hidden = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('.'));

/** How a program ended, as a shell shows it: 128 and the number of the signal. */
async function endOf(child: ReturnType<typeof start>): Promise<number> {
  const closed = new Promise<NodeJS.Signals | null>((done) => child.on('close', (_, signal) => done(signal)));
  const { status } = await ended(child);
  return status ?? { SIGINT: 130, SIGTERM: 143 }[String(await closed)] ?? -1;
}

it.each([
  ['SIGINT', 130],
  ['SIGTERM', 143],
] as const)(
  'a batch that gets %s ends with %i, leaves nothing hidden and goes on where it was',
  { timeout: 120_000 },
  async (signal, code) => {
    const folder = join(scratch, signal);
    mkdirSync(folder);
    const table = join(scratch, `${signal}.csv`);
    const [head = '', ...rows] = readFileSync(join(ROOT, 'fixtures', 'demo-clinic.csv'), 'utf8')
      .trim()
      .split('\n');
    writeFileSync(table, [head, ...rows, ...rows].join('\n'));
    const batch = ['batch', table, '--files', 'each', '--formats', 'svg', '--out', folder];
    const child = start(batch);
    const over = endOf(child);
    let drawn = 0;
    const watcher = watch(folder, (_, name) => {
      if (name?.endsWith('_mm.svg') && !name.startsWith('.') && ++drawn === 5) child.kill(signal);
    });
    expect(await over).toBe(code);
    watcher.close();
    expect(hidden(folder)).toEqual([]);
    const made = readdirSync(folder).filter((name) => name.endsWith('.svg')).length;
    expect(made).toBeGreaterThan(0);
    expect(readdirSync(folder)).toContain(PROGRESS);
    expect(readdirSync(folder)).not.toContain('cut-list.csv');
    const again = run([...batch, '--json']);
    expect(again.status).toBe(0);
    // One row may have been drawn and not yet written down.
    expect(JSON.parse(again.stdout).reused).toBeGreaterThanOrEqual(made - 1);
    expect(hidden(folder)).toEqual([]);
  },
);

it('a case add that is stopped while it waits leaves the lock of the other and nothing of its own', { timeout: 60_000 }, async () => {
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
