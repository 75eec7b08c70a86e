import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createCase, loadCase } from '../src/files/case-store.ts';
import { buildCaseWriter } from './built-command.ts';
import { sampleCase } from './sample-case.ts';

/** Kills at random moments while others add, 200 by night (`npm run nightly`); tests/faults/case-at-call.test.ts kills at each single call. */
const RANDOM_KILLS = Number(process.env.KNUCKLEWRIGHT_KILLS ?? 12);
const LONG = 4800 * RANDOM_KILLS;

let folder = '';
let writer = '';
let files = 0;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'case-killed-'));
  writer = join(folder, 'writer.mjs');
  await buildCaseWriter(writer);
});
afterAll(() => rm(folder, { recursive: true }));

interface Writer {
  readonly child: ChildProcess;
  /** Visits that it said were kept. */
  readonly added: string[];
  readonly ready: Promise<void>;
  readonly end: Promise<{
    readonly code: number | null;
    readonly signal: NodeJS.Signals | null;
    readonly output: string;
    readonly errors: string;
  }>;
}

function start(path: string, name: string, count: string): Writer {
  const child = spawn(process.execPath, [writer, 'add', path, name, count], { stdio: ['ignore', 'pipe', 'pipe'] });
  const added: string[] = [];
  let output = '';
  let errors = '';
  let begun = () => {};
  const ready = new Promise<void>((resolve) => {
    begun = resolve;
  });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    errors += text;
  });
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    output += text;
    if (output.includes('ready\n')) begun();
  });
  const end: Writer['end'] = new Promise((resolve) => {
    child.on('close', (code, signal) => {
      begun();
      added.push(...[...output.matchAll(/^added (.+)\n/gm)].map(([, name = '']) => name));
      resolve({ code, signal, output, errors });
    });
  });
  return { child, added, ready, end };
}

async function newCase(): Promise<string> {
  const path = join(folder, 'cases', `${++files}`, 'case.json');
  await mkdir(join(path, '..'), { recursive: true });
  const made = await createCase(path, sampleCase([]).file);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return path;
}

/** The comments of the visits in the file, which must be whole and sound. */
async function kept(path: string): Promise<readonly (string | null)[]> {
  const read = await loadCase(path);
  if (!read.ok) throw new Error(`${read.problems.map((p) => p.message).join('\n')}\n${await readFile(path, 'utf8')}`);
  return read.value.visits.map(({ noted }) => noted.comment);
}

describe('case add by processes of their own', () => {
  it('killed at random moments while another adds, keeps every visit that was said to be kept', { timeout: LONG }, async () => {
    let killed = 0;
    let visits = 0;
    while (killed < RANDOM_KILLS) {
      const path = await newCase();
      const victims = ['a', 'b', 'c', 'd'].map((name) => start(path, name, '90'));
      const steady = start(path, 'steady', '3');
      await Promise.all([...victims, steady].map(({ ready }) => ready));
      for (const victim of victims) {
        await new Promise((done) => setTimeout(done, Math.random() * 40));
        victim.child.kill('SIGKILL');
      }
      const ends = await Promise.all(victims.map(({ end }) => end));
      killed += ends.filter(({ signal }) => signal === 'SIGKILL').length;
      expect(await steady.end).toMatchObject({ code: 0, errors: '' });
      const said = [...victims, steady].flatMap(({ added }) => added);
      const found = await kept(path);
      expect(found).toEqual(expect.arrayContaining(said));
      expect(new Set(found).size).toBe(found.length);
      // Each killed process may have kept one visit more than it could say.
      expect(found.length - said.length).toBeLessThanOrEqual(victims.length);
      visits += found.length;
    }
    expect(killed).toBeGreaterThanOrEqual(RANDOM_KILLS);
    expect(visits).toBeGreaterThan(3 * (RANDOM_KILLS / 4));
  });

  it('at the same time, loses no visit of any', { timeout: LONG }, async () => {
    const path = await newCase();
    const writers = ['a', 'b', 'c', 'd'].map((name) => start(path, name, '15'));
    for (const { end } of writers) expect(await end).toMatchObject({ code: 0, errors: '' });
    const expected = ['a', 'b', 'c', 'd'].flatMap((name) => Array.from({ length: 15 }, (_, k) => `${name}-${k}`));
    expect((await kept(path)).toSorted()).toEqual(expected.toSorted());
    expect(await readdir(join(path, '..'))).toEqual(['case.json']);
  });
});
