import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROGRESS_NAME as PROGRESS } from '../../src/cli/batch-progress.ts';
import { setIdIn } from '../../src/files/drawing-set.ts';
import { runCommand } from '../run-command.ts';
import { arm, disarm, type FaultKind } from './at-call.mjs';
import { COMMAND, callsOf, callsTried, DEMO, ROOT, run, runWithFault, scratchFolder, tellKills, visibleFiles } from './commands.ts';

/** By night every writer, every kind of fault and every call (`npm run nightly`); by day `draw`, which writes as all others do, at the telling calls. */
const BY_NIGHT = process.env.KNUCKLEWRIGHT_KILLS !== undefined;
const LONG = BY_NIGHT || process.env.KNUCKLEWRIGHT_TELL !== undefined ? 1_800_000 : 300_000;
const KINDS: readonly FaultKind[] = BY_NIGHT ? ['kill', 'torn', 'lost-data', 'lost-names'] : ['kill'];

const scratch = scratchFolder('killed');
afterAll(() => rmSync(scratch, { recursive: true }));

/** Three rows of the invented clinic: what a batch does with one it does with all. */
const TABLE = join(scratch, 'hands.csv');
writeFileSync(
  TABLE,
  readFileSync(join(ROOT, 'fixtures', 'demo-clinic.csv'), 'utf8')
    .split('\n')
    .slice(0, 4)
    .join('\n'),
);

const either = (version: 0 | 1, first: string, second: string) => (version === 0 ? first : second);

/** What writes files, as arguments for a folder; `version` 0 and 1 give files of the same names and other contents. */
const WRITERS: Readonly<Record<string, (folder: string, version: 0 | 1) => readonly string[]>> = {
  draw: (folder, version) => [
    ...['draw', DEMO, '--block', 'ring-lowered-in-three'],
    ...['--out', folder, '--trim', either(version, '10', '20')],
  ],
  sheets: (folder, version) => ['sheets', '--sizes', either(version, '168x20:90', '168x20:60'), '--out', folder],
  'print-check': (folder, version) => ['print-check', DEMO, '--across', either(version, '97', '98'), '--along', '99', '--out', folder],
  'case report': (folder, version) => [
    ...['case', 'report', join(ROOT, 'fixtures', 'case-gains.json'), '--out', join(folder, 'report.pdf')],
    ...['--paper', either(version, 'a4', 'letter')],
  ],
  sizes: (folder, version) => ['sizes', TABLE, '--block', 'auto', '--count', either(version, '2', '3'), '--out', folder],
  batch: (folder, version) => ['batch', TABLE, '--files', 'each', '--trim', either(version, '10', '20'), '--out', folder],
};
const chosen = Object.entries(WRITERS).filter(([name]) => BY_NIGHT || name === 'draw');

/** Whether the files of the folder that carry a set's id and belong together by their names carry the same one. */
function isMixed(files: Readonly<Record<string, string>>, folder: string): boolean {
  const ids = new Map<string, Set<string>>();
  for (const name of Object.keys(files)) {
    const id = setIdIn(readFileSync(join(folder, name)));
    const group = name.replace(/(^sheet-)?(\d+)?_mm\..*$/, '$1');
    if (id !== null) ids.set(group, (ids.get(group) ?? new Set()).add(id));
  }
  return [...ids.values()].some((set) => set.size > 1);
}

async function findsMixed(folder: string, names: readonly string[]): Promise<boolean> {
  for (const name of names.filter((each) => /\.(svg|dxf|pdf)$/.test(each))) {
    const { out } = await runCommand('inspect', join(folder, name), '--json');
    if (JSON.parse(out).findings.some(({ code }: { code: number }) => code === 505)) return true;
  }
  return false;
}

describe.each(chosen)('%s', (name, argsFor) => {
  const made = (version: 0 | 1) => {
    const folder = join(scratch, `${name}-${version}`);
    expect(run(argsFor(folder, version))).toMatchObject({ status: 0 });
    return { folder, files: visibleFiles(folder) };
  };
  type Made = ReturnType<typeof made>;
  let older: Made;
  let newer: Made;
  let wanted: Made['files'];
  // Not where the tests are collected: a writer that is tried alone (-t) need not wait for the others.
  beforeAll(() => {
    [older, newer] = [made(0), made(1)];
    wanted = outputs(newer.folder);
  }, LONG);
  const outputs = (folder: string) => Object.fromEntries(Object.entries(visibleFiles(folder)).filter(([file]) => file !== PROGRESS));
  let count = 0;
  const copyOfOlder = () => {
    const folder = join(scratch, `${name}-over-${++count}`);
    cpSync(older.folder, folder, { recursive: true });
    return folder;
  };
  const over = (folder: string) => [...argsFor(folder, 1), '--force'];

  it.each(KINDS)(
    'over older files, %s at calls of the disk: each file old or new, a mixed set is found, the next run is whole',
    {
      timeout: LONG,
    },
    async (kind) => {
      expect(older.files).not.toEqual(newer.files);
      const calls = callsOf(COMMAND, over(copyOfOlder()));
      const tried = callsTried(calls);
      let mixed = 0;
      for (const at of tried) {
        const folder = copyOfOlder();
        const where = `${kind} at call ${at} of ${calls.length}, ${calls[at - 1]}`;
        expect(runWithFault(COMMAND, over(folder), at, kind).status, where).toBeNull();
        const files = outputs(folder);
        for (const [file, content] of Object.entries(files))
          expect([older.files[file], newer.files[file]], `${file}, ${where}`).toContain(content);
        const isNow = isMixed(files, folder);
        mixed += isNow ? 1 : 0;
        if (name === 'draw' || (isNow && name === 'sheets')) expect(await findsMixed(folder, Object.keys(files)), where).toBe(isNow);
        expect(await runCommand(...over(folder)), where).toMatchObject({ exit: 0 });
        expect(outputs(folder), where).toEqual(wanted);
        expect(
          readdirSync(folder).filter((file) => file.startsWith('.')),
          where,
        ).toEqual([]);
        rmSync(folder, { recursive: true });
      }
      // Names that are lost are lost together, and so never half a set.
      if (name === 'draw') expect(mixed > 0).toBe(kind !== 'lost-names');
      tellKills(kind, tried.length, name);
    },
  );

  it('into an empty folder, killed at calls of the disk: whole files or none, and the next run is whole', {
    timeout: LONG,
  }, async () => {
    const empty = () => join(scratch, `${name}-empty-${++count}`);
    const calls = callsOf(COMMAND, argsFor(empty(), 1));
    // By day those that leave a piece of a file, a name or both.
    const tried = callsTried(calls).filter((at) => BY_NIGHT || /append|link|rm/.test(calls[at - 1] ?? ''));
    for (const at of tried) {
      const folder = empty();
      mkdirSync(folder);
      const where = `killed at call ${at}, ${calls[at - 1]}`;
      expect(runWithFault(COMMAND, argsFor(folder, 1), at, 'kill').status, where).toBeNull();
      for (const [file, content] of Object.entries(outputs(folder))) expect(content, `${file}, ${where}`).toBe(wanted[file]);
      expect(await runCommand(...over(folder)), where).toMatchObject({ exit: 0 });
      expect(outputs(folder), where).toEqual(wanted);
      expect(
        readdirSync(folder).filter((file) => file.startsWith('.')),
        where,
      ).toEqual([]);
      rmSync(folder, { recursive: true });
    }
    tellKills('kill', tried.length, `${name}, empty folder`);
  });

  it.each(['EIO', 'ENOSPC'] as const)(
    'over older files, %s at calls of the disk: all of the new set, or said to be none of it and so',
    {
      timeout: LONG,
    },
    async (kind) => {
      arm(0, kind);
      await runCommand(...over(copyOfOlder()));
      const calls = disarm();
      const tried = callsTried(calls);
      const exits = new Set<number>();
      for (const at of tried) {
        const folder = copyOfOlder();
        arm(at, kind);
        const { exit, err } = await runCommand(...over(folder)).finally(disarm);
        const where = `${kind} at call ${at}, ${calls[at - 1]}: exit ${exit}, ${err.split('\n').at(-2)}`;
        exits.add(exit);
        // A batch is many sets, and says which row it came to.
        if (name !== 'batch') expect(outputs(folder), where).toEqual(exit === 0 ? wanted : Object.fromEntries(Object.entries(older.files)));
        if (exit !== 0) expect(err, where).toMatch(/error OUTPUT_(FAILED|NOT_WRITABLE): .*(EIO|disk is full)/);
        rmSync(folder, { recursive: true });
      }
      expect(exits).toContain(1);
      tellKills(kind, tried.length, name);
    },
  );
});

// By night at every call, above; the disk may fail under the progress and the lists, which grow line by line.
it('a batch says that the disk failed, and goes on from there when it is run again', { timeout: LONG }, async () => {
  const batch = (folder: string) => ['batch', TABLE, '--files', 'none', '--out', folder];
  arm(0, 'EIO');
  await runCommand(...batch(join(scratch, 'batch-counted')));
  const calls = disarm();
  const wanted = visibleFiles(join(scratch, 'batch-counted'));
  for (const [k, at] of [calls.lastIndexOf('mkdir') + 1, calls.indexOf('appendFile') + 1, calls.lastIndexOf('appendFile') + 1].entries()) {
    const folder = join(scratch, `batch-failed-${k}`);
    arm(at, 'EIO');
    const { exit, err } = await runCommand(...batch(folder)).finally(disarm);
    expect([exit, err], calls[at - 1]).toEqual([1, expect.stringMatching(/error OUTPUT_FAILED: .*EIO.*run the same command again/)]);
    expect(readdirSync(folder).filter((file) => file.startsWith('.'))).toEqual([]);
    expect((await runCommand(...batch(folder))).exit).toBe(0);
    expect(Object.keys(visibleFiles(folder))).toEqual(Object.keys(wanted));
    expect(visibleFiles(folder)['cut-list.csv']).toBe(wanted['cut-list.csv']);
  }
});
