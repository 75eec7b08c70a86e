import { randomBytes } from 'node:crypto';
import { link, readdir, readFile, unlink, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** Who holds a lock. `token` is different for every taking, so that no two locks are ever mistaken for each other. */
interface Owner {
  readonly pid: number;
  readonly host: string;
  readonly token: string;
}

/** How long a held lock is waited for, ms. A save takes a few; a disk on a network may take seconds. */
export const LOCK_PATIENCE = 20_000;
/** Longest pause between two tries, ms; random below it, so that waiting processes do not step in time. */
const LONGEST_PAUSE = 25;
/** A lock that a dead process left while it broke a dead lock, and so on: each level takes one more kill in a moment of under a ms. */
const DEEPEST = 8;
/** What a file system answers that has no hard links, or that forbids them. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV']);

/** Thrown when the lock stayed in another's hands; `path` is the lock file, `owner` says whose it is. */
export class LockHeldError extends Error {
  readonly path: string;
  readonly owner: string;
  constructor(path: string, owner: string) {
    super(`${path} is held by ${owner}`);
    this.path = path;
    this.owner = owner;
  }
}

/** The lock file beside a file. */
export function lockPath(file: string): string {
  return join(dirname(file), `.${basename(file)}.lock`);
}

/**
 * Runs `work` while no other process on this or another computer runs work on the same file, and returns what it returns. The lock is a
 * file beside the file. One that a dead process of this computer left is broken; one of another computer never is, since nobody here can
 * know. Throws `LockHeldError` after `patience` ms, and whatever the file system or `work` throws.
 */
export async function withFileLock<T>(file: string, work: () => Promise<T>, patience: number = LOCK_PATIENCE): Promise<T> {
  const path = lockPath(file);
  const token = await acquire(path, Date.now() + patience, 0);
  try {
    await removeLeftovers(path);
    return await work();
  } finally {
    await release(path, token);
  }
}

async function acquire(path: string, deadline: number, depth: number): Promise<string> {
  for (;;) {
    const token = await take(path);
    if (token !== null) return token;
    const text = await readLock(path);
    if (text === null) continue;
    const owner = ownerOf(text);
    if (owner !== null && isDead(owner) && depth < DEEPEST) await breakLock(path, text, owner, deadline, depth);
    else if (Date.now() > deadline) throw new LockHeldError(path, describe(owner));
    else await wait(1 + Math.random() * LONGEST_PAUSE);
  }
}

/** The token when the lock was free. The lock appears whole: a process that dies in between leaves no lock without an owner. */
async function take(path: string): Promise<string | null> {
  const owner: Owner = { pid: process.pid, host: hostname(), token: randomBytes(6).toString('hex') };
  const draft = `${path}.${owner.pid}.${owner.token}.new`;
  await writeFile(draft, JSON.stringify(owner), { flag: 'wx' });
  try {
    await link(draft, path);
    return owner.token;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return null;
    if (!NO_LINKS.has(codeOf(error))) throw error;
    return await takeWithoutLinks(path, owner);
  } finally {
    await unlink(draft).catch(() => {});
  }
}

/** Where there are no hard links the lock is made and then filled; dying between the two leaves one that a person has to remove. */
async function takeWithoutLinks(path: string, owner: Owner): Promise<string | null> {
  try {
    await writeFile(path, JSON.stringify(owner), { flag: 'wx' });
    return owner.token;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return null;
    throw error;
  }
}

/**
 * Removes the lock of a dead owner. Only one process may do so at a time, which a lock named after the dead lock's token sees to; and while
 * it is held nobody else removes a lock with that token, so that what is removed is surely the dead one and not a successor's.
 */
async function breakLock(path: string, text: string, owner: Owner, deadline: number, depth: number): Promise<void> {
  const breaking = `${path}.${owner.token}`;
  const token = await acquire(breaking, deadline, depth + 1);
  try {
    if ((await readLock(path)) === text) await unlink(path);
  } finally {
    await release(breaking, token);
  }
}

/** Gives back a lock that is still ours; one that somebody removed by hand may be another's by now. */
async function release(path: string, token: string): Promise<void> {
  const text = await readLock(path);
  if (text !== null && ownerOf(text)?.token === token) await unlink(path).catch(() => {});
}

async function readLock(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

function ownerOf(text: string): Owner | null {
  try {
    const { pid, host, token } = JSON.parse(text) as Partial<Owner>;
    const whole =
      typeof pid === 'number' && pid > 0 && typeof host === 'string' && typeof token === 'string' && /^[0-9a-f]{12}$/.test(token);
    return whole ? { pid, host, token } : null;
  } catch {
    return null;
  }
}

/** Whether the owner surely lives no more. A number that another process has by now counts as alive: then nothing is broken. */
function isDead(owner: Owner): boolean {
  if (owner.host !== hostname()) return false;
  try {
    process.kill(owner.pid, 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}

function describe(owner: Owner | null): string {
  return owner === null ? 'a process that did not say who it is' : `process ${owner.pid} on ${owner.host}`;
}

/**
 * What dead processes left beside the lock: drafts that never became a lock, and locks for breaking a dead lock that is gone. Called with the
 * lock in hand, when nothing can depend on either: no lock with an earlier token ever comes back.
 */
async function removeLeftovers(path: string): Promise<void> {
  const [folder, start] = [dirname(path), `${basename(path)}.`];
  for (const name of await readdir(folder)) {
    if (!name.startsWith(start)) continue;
    const left = join(folder, name);
    const pid = /(\d+)\.[0-9a-f]{12}\.new$/.exec(name.slice(start.length))?.[1];
    const owner = pid === undefined ? ownerOf((await readLock(left)) ?? '') : { pid: Number(pid), host: hostname(), token: '' };
    if (owner !== null && isDead(owner)) await unlink(left).catch(() => {});
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
