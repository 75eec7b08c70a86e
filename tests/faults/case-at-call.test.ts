import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addVisit, createCase, loadCase } from '../../src/files/case-store.ts';
import { success } from '../../src/units/result.ts';
import { buildCaseWriter } from '../built-command.ts';
import { BY_NIGHT, tried } from '../by-night.ts';
import { sampleCase } from '../sample-case.ts';
import { arm, disarm, type FaultKind } from './at-call.mjs';
import { callsOf, callsTried as callsOfDay, runWithFault, scratchFolder, tellKills } from './commands.ts';

/** By day those calls at which the kind of fault leaves something else than a mere kill: half of a write, data or a name that was not flushed; and the last. */
function callsTried(calls: readonly string[], kind: FaultKind = 'kill'): readonly number[] {
  const telling = {
    torn: /^(writeFile|appendFile|unlink)$/,
    'lost-data': /^(sync|link|rename|unlink)$/,
    'lost-names': /^(link|rename|sync folder|unlink)$/,
  }[kind as string];
  const tried = callsOfDay(calls);
  return BY_NIGHT || !telling ? tried : tried.filter((at) => telling.test(calls[at - 1] ?? ''));
}

/** Long enough for a machine that does much else. */
const LONG = process.env.KNUCKLEWRIGHT_TELL === undefined ? 300_000 : 1_800_000;

const scratch = scratchFolder('case-at-call');
const writer = join(scratch, 'writer.mjs');
beforeAll(() => buildCaseWriter(writer));
afterAll(() => rmSync(scratch, { recursive: true }));

let folders = 0;
/** A folder with a case of one visit, or with what another folder holds. */
async function newFolder(like: string | null = null): Promise<string> {
  const folder = join(scratch, `case-${++folders}`);
  if (like !== null) {
    cpSync(like, folder, { recursive: true });
    return folder;
  }
  mkdirSync(folder);
  const made = await createCase(fileIn(folder), sampleCase([]).file);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  await add(folder, 'before-0');
  return folder;
}
const fileIn = (folder: string) => join(folder, 'case.json');

/** Adds a visit from this process; the problem's code where it cannot. */
async function add(folder: string, comment: string, patience = 20_000): Promise<string | null> {
  const active = { extensionDeficit: 20, flexion: 90 };
  const visit = { date: '2026-03-02', goniometry: { pip: { active } }, comment };
  const added = await addVisit(fileIn(folder), () => success(visit), { patience });
  return added.ok ? null : (added.problems[0]?.code ?? '');
}

/** The comments of the visits in the file, which must be whole and sound. */
async function kept(folder: string): Promise<readonly (string | null)[]> {
  const read = await loadCase(fileIn(folder));
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.value.visits.map(({ noted }) => noted.comment);
}

const adding = (folder: string, name = 'killed') => ['add', fileIn(folder), name, '1'];
const killed = (folder: string, at: number, kind: FaultKind, name = 'killed') => {
  const { stdout, stderr, status } = runWithFault(writer, adding(folder, name), at, kind);
  expect([status, stderr]).toEqual([null, '']);
  return stdout.includes(`added ${name}-0`);
};

describe.each(['kill', 'torn', 'lost-data', 'lost-names'] as const)('case add, %s at calls of the disk', (kind) => {
  it('keeps every visit that was there or was said to be kept, exactly once, and the next clears up', { timeout: LONG }, async () => {
    const calls = callsOf(writer, adding(await newFolder()));
    expect(calls).toContain('rename');
    const tried = callsTried(calls, kind);
    let survived = 0;
    for (const at of tried) {
      const folder = await newFolder();
      const said = killed(folder, at, kind);
      const after = await kept(folder);
      const where = `${kind} at call ${at}, ${calls[at - 1]}`;
      expect([['before-0'], ['before-0', 'killed-0']], where).toContainEqual(after);
      if (said) expect(after, where).toContain('killed-0');
      survived += after.length - 1;
      expect(await add(folder, 'next-0'), where).toBeNull();
      expect(await kept(folder), where).toEqual([...after, 'next-0']);
      expect(readdirSync(folder), where).toEqual(['case.json']);
    }
    tellKills(kind, tried.length, 'case add');
    // Some calls come before the visit is in its place and some after: both sorts were met.
    expect(survived).toBeGreaterThan(0);
    expect(survived).toBeLessThan(tried.length);
  });
});

it('case add, killed at calls of the disk and the next one at its calls as well, loses nothing', {
  timeout: LONG,
}, async () => {
  const calls = callsOf(writer, adding(await newFolder()));
  let doubles = 0;
  for (const first of callsTried(calls)) {
    // By day one before the visit is in its place and one after.
    if (!BY_NIGHT && !/^(appendFile|sync folder)$/.test(calls[first - 1] ?? '')) continue;
    const once = await newFolder();
    killed(once, first, 'kill', 'first');
    // What the first left makes the second clear up, which takes further calls.
    const more = callsOf(writer, adding(await newFolder(once), 'second'));
    const before = await kept(once);
    for (const second of callsTried(more)) {
      // By day after each of the two every other call.
      if (!BY_NIGHT && (first + second) % 2 !== 0) continue;
      doubles++;
      const folder = await newFolder(once);
      killed(folder, second, 'kill', 'second');
      const where = `killed at calls ${first} and ${second}`;
      const after = await kept(folder);
      expect([before, [...before, 'second-0']], where).toContainEqual(after);
      expect(await add(folder, 'next-0'), where).toBeNull();
      expect(await kept(folder), where).toEqual([...after, 'next-0']);
      expect(readdirSync(folder), where).toEqual(['case.json']);
      rmSync(folder, { recursive: true });
    }
  }
  tellKills('double kill', doubles, 'case add');
});

it.each(tried(['kill', 'torn', 'lost-data', 'lost-names'] as const, (kind) => kind === 'kill' || kind === 'lost-names'))(
  'case new, %s at calls of the disk, leaves no case or a whole one, which the next add keeps whole',
  { timeout: LONG },
  async (kind) => {
    const empty = () => {
      const folder = join(scratch, `new-${++folders}`);
      mkdirSync(folder);
      return folder;
    };
    const calls = callsOf(writer, ['new', fileIn(empty())]);
    const chosen = callsTried(calls, kind);
    let made = 0;
    for (const at of chosen) {
      const folder = empty();
      const { status, stdout } = runWithFault(writer, ['new', fileIn(folder)], at, kind);
      const where = `${kind} at call ${at}, ${calls[at - 1]}`;
      expect(status, where).toBeNull();
      const there = readdirSync(folder).includes('case.json');
      if (stdout.includes('made')) expect(there, where).toBe(true);
      made += there ? 1 : 0;
      if (!there) expect((await createCase(fileIn(folder), sampleCase([]).file)).ok, where).toBe(true);
      // Twice: what was left of the first file must be in nobody's way.
      for (const comment of ['one-0', 'two-0']) expect(await add(folder, comment), where).toBeNull();
      expect(await kept(folder), where).toEqual(['one-0', 'two-0']);
      expect(readdirSync(folder), where).toEqual(['case.json']);
    }
    expect(made).toBeGreaterThan(0);
    expect(made).toBeLessThan(chosen.length);
  },
);

it.each(['EIO', 'ENOSPC'] as const)(
  'case add, %s at calls of the disk, says what became of the visit, and that is so',
  { timeout: LONG },
  async (kind) => {
    const counted = await newFolder();
    arm(0, kind);
    await add(counted, 'counted-0');
    const calls = disarm();
    const said: (string | null)[] = [];
    for (const at of callsTried(calls)) {
      const folder = await newFolder();
      arm(at, kind);
      const problem = await add(folder, 'tried-0', 300);
      const call = disarm()[at - 1];
      said.push(problem);
      const where = `${kind} at call ${at}, ${call}: ${problem ?? 'added'}`;
      expect([null, 'OUTPUT_FAILED'], where).toContain(problem);
      expect(await kept(folder), where).toEqual(problem === null ? ['before-0', 'tried-0'] : ['before-0']);
      // A lock that could not be removed is this process's, which lives on; a command has ended by now, and its lock is broken.
      rmSync(join(folder, '.case.json.lock'), { force: true });
      expect(await add(folder, 'next-0'), where).toBeNull();
    }
    expect(said).toContain(null);
    expect(said).toContain('OUTPUT_FAILED');
  },
);
