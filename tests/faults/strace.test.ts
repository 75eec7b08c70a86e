import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, type TestContext } from 'vitest';
import { loadCase } from '../../src/files/case-store.ts';
import { BY_NIGHT } from '../by-night.ts';
import { COMMAND, DEMO, ROOT, run, scratchFolder, tellKills, visibleFiles } from './commands.ts';

/**
 * A second way to kill at each call, which knows nothing of Node: the kernel's own calls, one after the other, made fatal by strace. With one
 * thread for files their order is always the same. By day the moves of files into their places alone.
 */
const CALLS = BY_NIGHT ? ['rename', 'link', 'unlink', 'fsync', 'openat', 'ftruncate'] : ['rename'];
const LONG = 1_200_000;
/** The first calls of a program open its own files; those that matter come last. */
const LAST = BY_NIGHT ? 12 : 1;
const traces = spawnSync('strace', ['-qq', '-o', '/dev/null', 'true']).status === 0;
function mayTrace(context: TestContext): void {
  if (!traces) context.skip('strace is not here, or may not trace');
}

const scratch = scratchFolder('strace');
afterAll(() => rmSync(scratch, { recursive: true }));

const environment = { ...process.env, UV_THREADPOOL_SIZE: '1' };

/** How often the program makes the kernel's call. */
function countOf(call: string, args: readonly string[]): number {
  const log = join(scratch, 'log');
  const words = ['-f', '-qq', '-o', log, '-e', `trace=${call}`, process.execPath, COMMAND, ...args];
  spawnSync('strace', words, { env: environment });
  return readFileSync(log, 'utf8')
    .split('\n')
    .filter((line) => line.includes(`${call}(`)).length;
}

/** Whether the program was killed at that call. */
function killedAt(call: string, at: number, args: readonly string[]): boolean {
  const inject = ['-e', `trace=${call}`, '-e', `inject=${call}:signal=KILL:when=${at}`];
  const { status, signal } = spawnSync('strace', ['-f', '-qq', '-o', '/dev/null', ...inject, process.execPath, COMMAND, ...args], {
    env: environment,
  });
  return signal === 'SIGKILL' || status === 137 || status === null;
}

describe('killed at the calls of the kernel', () => {
  // By day killed.test.ts kills draw.
  if (BY_NIGHT)
    it('draw --force: each file old or new, the next run is whole', { timeout: LONG }, (context) => {
      mayTrace(context);
      const draw = (folder: string, trim: string) => [
        ...['draw', DEMO, '--block', 'ring-lowered-in-three', '--content', 'cut-and-marks'],
        ...['--out', folder, '--trim', trim, '--force'],
      ];
      const [older, newer] = ['10', '20'].map((trim) => {
        const folder = join(scratch, `draw-${trim}`);
        expect(run(draw(folder, trim)).status).toBe(0);
        return { folder, files: visibleFiles(folder) };
      }) as [{ folder: string; files: Record<string, string> }, { folder: string; files: Record<string, string> }];
      let killed = 0;
      for (const call of CALLS) {
        const probe = join(scratch, 'probe');
        cpSync(older.folder, probe, { recursive: true });
        const count = countOf(call, draw(probe, '20'));
        rmSync(probe, { recursive: true });
        for (let at = Math.max(1, count - LAST); at <= count; at++) {
          const folder = join(scratch, 'over');
          cpSync(older.folder, folder, { recursive: true });
          if (killedAt(call, at, draw(folder, '20'))) killed++;
          const where = `${call} ${at} of ${count}`;
          for (const [file, content] of Object.entries(visibleFiles(folder)))
            expect([older.files[file], newer.files[file]], `${file}, ${where}`).toContain(content);
          expect(run(draw(folder, '20')).status, where).toBe(0);
          expect(visibleFiles(folder), where).toEqual(newer.files);
          expect(
            readdirSync(folder).filter((name) => name.startsWith('.')),
            where,
          ).toEqual([]);
          rmSync(folder, { recursive: true });
        }
      }
      tellKills('kill by the kernel', killed, 'draw');
      expect(killed).toBeGreaterThan(BY_NIGHT ? 5 : 0);
    });

  it('case add: a visit is in the file once or not at all, and the next one is added', { timeout: LONG }, async (context) => {
    mayTrace(context);
    const source = join(ROOT, 'fixtures', 'case-gains.json');
    const visits = async (file: string) => {
      const read = await loadCase(file);
      if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
      return read.value.visits.map(({ noted }) => noted.comment);
    };
    const before = await visits(source);
    const add = (file: string, comment: string) => [
      'case',
      'add',
      file,
      '--date',
      '2027-01-04',
      '--pip-active',
      '20/95',
      '--all-well',
      '--comment',
      comment,
    ];
    const fresh = (name: string) => {
      const folder = join(scratch, name);
      rmSync(folder, { recursive: true, force: true });
      cpSync(source, join(folder, 'case.json'));
      return join(folder, 'case.json');
    };
    expect(run(add(fresh('works'), 'one'))).toMatchObject({ status: 0 });
    let killed = 0;
    for (const call of CALLS) {
      const count = countOf(call, add(fresh('probe'), 'one'));
      for (let at = Math.max(1, count - LAST); at <= count; at++) {
        const file = fresh('killed');
        const where = `${call} ${at} of ${count}`;
        if (killedAt(call, at, add(file, 'one'))) killed++;
        expect([before, [...before, 'one']], where).toContainEqual(await visits(file));
        const between = await visits(file);
        expect(run(add(file, 'two')), where).toMatchObject({ status: 0 });
        expect(await visits(file), where).toEqual([...between, 'two']);
      }
    }
    tellKills('kill by the kernel', killed, 'case add');
    expect(killed).toBeGreaterThan(BY_NIGHT ? 5 : 0);
  });
});
