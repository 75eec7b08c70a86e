import { writeFileSync } from 'node:fs';
import { chmod, link, mkdtemp, readdir, readFile, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleCase, sampleFile, sampleVisit } from '../../tests/sample-case.ts';
import { CASE_VERSION } from '../record/case-schema.ts';
import { readVisit } from '../record/read-visit.ts';
import { success } from '../units/result.ts';
import { addVisit, createCase, loadCase } from './case-store.ts';
import { type LockWaiting, lockPath, withFileLock } from './file-lock.ts';
import { newTag } from './process-tag.ts';

let folder = '';
let path = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'case-'));
  path = join(folder, 'a case.json');
});
afterEach(() => rm(folder, { recursive: true }));

const { file: empty } = sampleCase([]);
const visit = (deficit: number, week = 0) => {
  const read = readVisit(sampleVisit({ pip: [deficit, 90] }, week));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.file;
};
const add = (deficit: number, week = 0, waiting: LockWaiting = { patience: 200 }) =>
  addVisit(path, () => success(visit(deficit, week)), waiting);
const codes = (result: Awaited<ReturnType<typeof loadCase>>) => (result.ok ? [] : result.problems.map((p) => p.code));
const deficits = async () => {
  const read = await loadCase(path);
  return read.ok ? read.value.visits.map((v) => v.goniometry.pip.active.extensionDeficit) : null;
};
/** A number that no process has: Linux counts to 2^22 at most (proc(5), `pid_max`). */
const NOBODY = 2 ** 30;
const DEAD = { pid: NOBODY, host: hostname(), token: 'abcdef012345' };
/** The tag of this process, with parts of it changed. */
const tagWith = (parts: Readonly<Partial<Record<'computer' | 'boot' | 'namespace' | 'pid' | 'start', string>>>) => {
  const names = ['computer', 'boot', 'namespace', 'pid', 'start'] as const;
  return newTag()
    .split('-')
    .map((part, k) => parts[names[k] as 'pid'] ?? part)
    .join('-');
};
const lockOf = (tag: string) => JSON.stringify({ pid: Number(tag.split('-')[3]), host: hostname(), token: tag });

describe('createCase(path, file)', () => {
  it('writes a new file and leaves nothing beside it', async () => {
    expect(await createCase(path, empty)).toMatchObject({ ok: true, value: { code: 'TEST-1', visits: [] } });
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it('never touches a file that is there', async () => {
    await writeFile(path, 'mine');
    expect(codes(await createCase(path, empty))).toEqual(['OUTPUT_EXISTS']);
    expect(await readFile(path, 'utf8')).toBe('mine');
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it('says when the folder is missing', async () => {
    const made = await createCase(join(folder, 'x', 'a.json'), empty);
    expect(made).toMatchObject({
      ok: false,
      problems: [{ code: 'OUTPUT_FAILED', message: expect.stringContaining('the folder does not exist') }],
    });
  });
});

describe('addVisit(path, visitFor)', () => {
  it('adds in the order of dates', async () => {
    await createCase(path, empty);
    for (const [deficit, week] of [
      [30, 2],
      [40, 0],
      [35, 1],
    ] as const)
      expect(codes(await add(deficit, week))).toEqual([]);
    expect(await deficits()).toEqual([40, 35, 30]);
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  const whole = `${JSON.stringify(sampleFile([{ pip: [20, 90] }]), null, 2)}\n`;
  it.each([
    ['empty', '', 'FILE_EMPTY', /empty; it was damaged/],
    ['truncated', whole.slice(0, whole.length / 2), 'JSON_SYNTAX', /not JSON at line/],
    ['zeros, as after a power cut', '\u0000'.repeat(whole.length), 'JSON_SYNTAX', /not JSON/],
    ['two writers mixed', whole + whole.slice(200), 'JSON_SYNTAX', /nothing more/],
    ['no text', Buffer.from([0x7b, 0xff, 0xfe, 0x80]), 'FILE_NOT_READ', /not text in UTF-8/],
    ['newer', whole.replace(`case@${CASE_VERSION}`, `case@${CASE_VERSION + 1}`), 'CASE_NEWER', /a newer knucklewright wrote it/],
    ['edited to an impossible value', whole.replace('"extensionDeficit": 20', '"extensionDeficit": 200'), 'FIELD_OUT_OF_RANGE', /0 to 120/],
    ['edited with a key of its own', whole.replace('"code"', '"name": "x", "code"'), 'FIELD_UNKNOWN', /name/],
    ['another file', '{"schema": "knucklewright/hand@1"}', 'CASE_SCHEMA', /not a case file/],
  ] as const)('leaves a file that is %s as it is, and says why', async (_, content, code, why) => {
    await writeFile(path, content);
    const before = await readFile(path);
    const added = await add(10);
    expect(added).toMatchObject({ ok: false, problems: [{ code, message: expect.stringMatching(why) }] });
    expect(added.ok ? '' : added.problems[0]?.message).toContain(path);
    expect(await readFile(path)).toEqual(before);
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it('says when there is no file', async () => {
    expect(await add(10)).toMatchObject({ ok: false, problems: [{ code: 'FILE_NOT_READ', message: expect.stringContaining('case new') }] });
    expect(await readdir(folder)).toEqual([]);
  });

  it('loses nothing when many add at once in one process', async () => {
    await createCase(path, empty);
    const all = Array.from({ length: 12 }, (_, k) => k);
    await Promise.all(all.map((k) => addVisit(path, () => success(visit(k)))));
    expect((await deficits())?.toSorted((a, b) => a - b)).toEqual(all);
  });

  it('reads again when something without a lock changed the file in between', async () => {
    await createCase(path, empty);
    let times = 0;
    const added = await addVisit(path, (now) => {
      times++;
      // Called between reading and writing: another program saves a visit of its own, once.
      if (now.visits.length === 0) writeSync(path, sampleFile([{ pip: [33, 90] }]));
      return success(visit(10, 1));
    });
    expect(codes(added)).toEqual([]);
    expect(times).toBe(2);
    expect(await deficits()).toEqual([33, 10]);
  });

  it('gives up on a file that never rests, and leaves it', async () => {
    await createCase(path, empty);
    let k = 0;
    const added = await addVisit(path, () => {
      writeSync(path, sampleFile([{ pip: [++k, 90] }]));
      return success(visit(50, 1));
    });
    expect(codes(added)).toEqual(['CASE_CHANGING']);
    expect(await deficits()).toEqual([k]);
  });

  it('writes through a link and keeps the permissions', async () => {
    await createCase(path, empty);
    await chmod(path, 0o600);
    const through = join(folder, 'link.json');
    await symlink(path, through);
    expect(codes(await addVisit(through, () => success(visit(10))))).toEqual([]);
    expect(await deficits()).toEqual([10]);
    expect((await stat(path)).mode & 0o777).toBe(0o600);
  });

  it('leaves a write-protected file as it is, whoever asks, and says so', async () => {
    await createCase(path, empty);
    await chmod(path, 0o444);
    const added = await add(10);
    expect(added).toMatchObject({
      ok: false,
      problems: [{ code: 'OUTPUT_PROTECTED', message: expect.stringContaining('write-protected') }],
    });
    expect(await deficits()).toEqual([]);
    await chmod(path, 0o644);
    expect(codes(await add(10))).toEqual([]);
  });

  it('clears the drafts of dead processes, and nothing else that lies there', async () => {
    await createCase(path, empty);
    const left = (tag: string, kind = 'draft') => `.${basename(path)}.${tag}.${kind}`;
    const dead = [left(tagWith({ pid: String(NOBODY) })), left(tagWith({ pid: String(NOBODY) }), 'earlier')];
    const mine = [left(newTag()), left(tagWith({ computer: '12345678', pid: String(NOBODY) })), `.${basename(path)}.draft`, '.hidden'];
    for (const name of [...dead, ...mine]) await writeFile(join(folder, name), 'half a fi');
    expect(codes(await add(10))).toEqual([]);
    expect((await readdir(folder)).sort()).toEqual([...mine, basename(path)].sort());
  });

  it('never writes through what lies under a name that a draft once had', async () => {
    // A draft with a fixed name, opened for writing, followed a link there and emptied what it leads to.
    const target = join(folder, 'other.txt');
    await writeFile(target, 'mine');
    await symlink(target, join(folder, `.${basename(path)}.draft`));
    expect(codes(await createCase(path, empty))).toEqual([]);
    expect(codes(await add(10))).toEqual([]);
    expect(await readFile(target, 'utf8')).toBe('mine');
  });

  it('keeps a case whose maker was killed before it removed its draft, however often that happens', async () => {
    await createCase(path, empty);
    for (const deficit of [40, 30]) {
      // The draft and the case are one file under two names then.
      await link(path, join(folder, `.${basename(path)}.${tagWith({ pid: String(NOBODY) })}.draft`));
      await link(path, join(folder, `.${basename(path)}.${tagWith({ computer: '12345678' })}.draft`));
      expect(codes(await add(deficit))).toEqual([]);
    }
    expect(await deficits()).toEqual([40, 30]);
  });
});

describe('withFileLock(file, work)', () => {
  it('breaks the lock of a dead process, and that of one that died breaking it', async () => {
    await createCase(path, empty);
    const lock = lockPath(path);
    await writeFile(lock, JSON.stringify(DEAD));
    await writeFile(`${lock}.${DEAD.token}`, JSON.stringify({ ...DEAD, token: '111111111111' }));
    await writeFile(`${lock}.999999.222222222222`, JSON.stringify({ ...DEAD, token: '222222222222' }));
    expect(codes(await add(10))).toEqual([]);
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it.each([
    ['a living process', { ...DEAD, pid: process.pid, token: newTag() }, `process ${process.pid} on ${hostname()}`],
    ['a living process of an earlier version', { ...DEAD, pid: process.pid }, `process ${process.pid} on ${hostname()}`],
    ['another computer', { ...DEAD, host: `not-${hostname()}` }, `process ${DEAD.pid} on not-${hostname()}`],
    ['nobody known', 'garbage', 'a process that did not say who it is'],
  ])('waits for %s, then says whose lock it is and changes nothing', async (_, owner, name) => {
    await createCase(path, empty);
    await writeFile(lockPath(path), typeof owner === 'string' ? owner : JSON.stringify(owner));
    const added = await add(10, 0, { patience: 120 });
    expect(added).toMatchObject({ ok: false, problems: [{ code: 'CASE_LOCKED', message: expect.stringContaining(name) }] });
    expect(added.ok ? '' : added.problems[0]?.message).toContain(`delete ${lockPath(path)}`);
    expect(await deficits()).toEqual([]);
  });

  it.runIf(process.platform === 'linux').each([
    ['ended', tagWith({ pid: String(NOBODY) })],
    ['has given its number to another process', tagWith({ start: '1' })],
    ['ran before the computer was started anew', tagWith({ boot: '12345678' })],
  ])('breaks the lock of a process that %s, at once', async (_, tag) => {
    await createCase(path, empty);
    await writeFile(lockPath(path), lockOf(tag));
    expect(codes(await add(10))).toEqual([]);
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it.each([
    ['is empty, as a process leaves it that dies between making and filling it', ''],
    ['is no lock of ours', 'garbage'],
    [
      'is of a process in another container, or one that cannot be looked up',
      lockOf(tagWith({ namespace: '12345678', pid: String(NOBODY) })),
    ],
    ['is of an earlier version, whose process number somebody has', JSON.stringify({ ...DEAD, pid: process.pid })],
  ])('breaks a lock that %s, when it lies untouched', async (_, text) => {
    await createCase(path, empty);
    await writeFile(lockPath(path), text);
    expect(codes(await add(10, 0, { patience: 5000, stillFor: 60 }))).toEqual([]);
    expect(await readdir(folder)).toEqual([basename(path)]);
  });

  it('never breaks the same lock while its owner shows that it lives, nor one of another computer', async () => {
    await createCase(path, empty);
    const lock = lockPath(path);
    await writeFile(lock, lockOf(tagWith({ namespace: '12345678' })));
    const beat = setInterval(() => utimes(lock, new Date(), Date.now() / 1000 + Math.random()), 5);
    expect(codes(await add(10, 0, { patience: 300, stillFor: 100 }))).toEqual(['CASE_LOCKED']);
    clearInterval(beat);
    await writeFile(lock, lockOf(tagWith({ computer: '12345678' })));
    expect(codes(await add(10, 0, { patience: 300, stillFor: 50 }))).toEqual(['CASE_LOCKED']);
    expect(await deficits()).toEqual([]);
  });

  it('says once whom it waits for, after a second', async () => {
    await writeFile(lockPath(path), lockOf(newTag()));
    const said: string[] = [];
    const waiting = withFileLock(path, async () => {}, { patience: 1300, onWait: (owner) => said.push(owner) });
    await expect(waiting).rejects.toThrow('is held by');
    expect(said).toEqual([`process ${process.pid} on ${hostname()}`]);
  });

  it('gives the lock back when the work fails, and leaves a lock that has become another’s', async () => {
    await expect(withFileLock(path, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await readdir(folder)).toEqual([]);
    await withFileLock(path, () => writeFile(lockPath(path), JSON.stringify({ ...DEAD, pid: process.pid })));
    expect(await readdir(folder)).toEqual([basename(lockPath(path))]);
  });

  it('lets only one in at a time', async () => {
    let inside = 0;
    let most = 0;
    const work = async () => {
      most = Math.max(most, ++inside);
      await new Promise((done) => setTimeout(done, 2));
      inside--;
    };
    await Promise.all(Array.from({ length: 10 }, () => withFileLock(path, work)));
    expect([most, inside]).toEqual([1, 0]);
  });
});

function writeSync(to: string, json: unknown): void {
  writeFileSync(to, JSON.stringify(json));
}

describe('a copy of a case file', () => {
  it('put back over a later one is the case of its day, and takes visits again', async () => {
    await createCase(path, empty);
    expect(await add(20, 1)).toMatchObject({ ok: true });
    const copy = join(folder, 'copy of a case.json');
    await writeFile(copy, await readFile(path));
    expect(await add(15, 2)).toMatchObject({ ok: true });
    expect(await deficits()).toEqual([20, 15]);
    await writeFile(path, await readFile(copy));
    expect(await deficits()).toEqual([20]);
    expect(await add(12, 3)).toMatchObject({ ok: true });
    expect(await deficits()).toEqual([20, 12]);
    expect((await readdir(folder)).sort()).toEqual([basename(path), basename(copy)].sort());
  });
});
