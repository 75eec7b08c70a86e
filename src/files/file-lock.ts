import { createHash } from 'node:crypto';
import { readFileSync, unlinkSync } from 'node:fs';
import { link, readdir, readFile, stat, unlink, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { besidePath, NO_LINKS } from './draft.ts';
import { errorCode } from './error-code.ts';
import { type Fate, fateOf, isGone, newTag, pidOfTag } from './process-tag.ts';
import { undoWhenStopped } from './stop-cleanly.ts';

/** Who holds a lock. `token` is different for every taking, so that no two locks are ever mistaken for each other. */
interface Owner {
  readonly pid: number;
  readonly host: string;
  /** The tag of the process; 12 hex digits in locks of version 0.1. */
  readonly token: string;
}

/** How long a held lock is waited for, ms. A save takes a few; a disk on a network may take seconds. */
export const LOCK_PATIENCE = 20_000;
/** An owner that lives shows it this often, ms, by touching its lock. */
const HEARTBEAT = 1_000;
/** A lock that nobody touched for so long while we looked has no living owner, where that cannot be told otherwise; ms. */
const STILL_FOR = 10_000;
/** After so long somebody at the keyboard wonders, ms. */
const SAID_AFTER = 1_000;
/** Longest pause between two tries, ms; random below it, so that waiting processes do not step in time. */
const LONGEST_PAUSE = 25;
/** A lock that a dead process left while it broke a dead lock, and so on: each level takes one more kill in a moment of under a ms. */
const DEEPEST = 8;

export interface LockWaiting {
  /** ms */
  readonly patience?: number;
  /** How long a lock whose owner cannot be looked up must lie untouched before it is broken, ms. */
  readonly stillFor?: number;
  /** Called once, when the lock has been waited for a second. */
  readonly onWait?: (owner: string) => void;
}

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
 * file beside the file. One that a dead process of this computer left is broken: on Linux its process is looked up (number, start, start of
 * the system, namespace), elsewhere, or when the lock says nothing, it must lie untouched for 10 s. One of another computer is never broken,
 * since nobody here can know. Throws `LockHeldError` when patience ends, and whatever the file system or `work` throws.
 */
export async function withFileLock<T>(file: string, work: () => Promise<T>, waiting: LockWaiting = {}): Promise<T> {
  const path = lockPath(file);
  const owner = await acquire(path, new Wait(waiting), 0);
  const text = JSON.stringify(owner);
  const release = undoWhenStopped(() => {
    if (readFileSync(path, 'utf8') === text) unlinkSync(path);
  });
  const heart = setInterval(() => touch(path), HEARTBEAT).unref();
  try {
    await removeLeftovers(path);
    return await work();
  } finally {
    clearInterval(heart);
    await giveBack(path, text);
    release();
  }
}

/** How long one waits, and what was seen meanwhile; by a clock that nobody sets. */
class Wait {
  private readonly begun = performance.now();
  private readonly patience: number;
  private readonly stillFor: number;
  private readonly onWait: ((owner: string) => void) | null;
  private said = false;
  private readonly seen = new Map<string, { readonly state: string; readonly since: number }>();

  constructor({ patience = LOCK_PATIENCE, stillFor = STILL_FOR, onWait }: LockWaiting) {
    this.patience = patience;
    this.stillFor = stillFor;
    this.onWait = onWait ?? null;
  }

  get isOver(): boolean {
    return performance.now() - this.begun > this.patience;
  }

  sayTo(owner: string): void {
    if (this.said || performance.now() - this.begun < SAID_AFTER) return;
    this.said = true;
    this.onWait?.(owner);
  }

  /** Whether the lock has lain so for long enough. */
  isStill(path: string, state: string): boolean {
    const before = this.seen.get(path);
    if (before?.state !== state) this.seen.set(path, { state, since: performance.now() });
    return before?.state === state && performance.now() - before.since > this.stillFor;
  }
}

async function acquire(path: string, waiting: Wait, depth: number): Promise<Owner> {
  for (;;) {
    const taken = await takeFree(path);
    if (taken !== null) return taken;
    const lock = await readLock(path);
    if (lock === null) continue;
    const fate = fateOfLock(lock.text);
    const dead = fate === 'dead' || (fate === 'unknown' && waiting.isStill(path, lock.state));
    if (dead && depth < DEEPEST) await breakLock(path, lock, waiting, depth);
    else if (waiting.isOver) throw new LockHeldError(path, describe(ownerOf(lock.text)));
    else {
      waiting.sayTo(describe(ownerOf(lock.text)));
      await wait(1 + Math.random() * LONGEST_PAUSE);
    }
  }
}

/** The owner when the lock was free. The lock appears whole: a process that dies in between leaves no lock without an owner. */
async function takeFree(path: string): Promise<Owner | null> {
  const owner: Owner = { pid: process.pid, host: hostname(), token: newTag() };
  const text = JSON.stringify(owner);
  const draft = besidePath(path, 'draft');
  const release = undoWhenStopped(() => unlinkSync(draft));
  try {
    await writeFile(draft, text, { flag: 'wx' });
    await link(draft, path);
    return owner;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return null;
    if (!NO_LINKS.has(errorCode(error))) throw error;
    return (await takeWithoutLinks(path, text)) ? owner : null;
  } finally {
    await unlink(draft).catch(() => {});
    release();
  }
}

/** Where there are no hard links the lock is made and then filled; dying between the two leaves an empty one, broken when it lies still. */
async function takeWithoutLinks(path: string, text: string): Promise<boolean> {
  try {
    await writeFile(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}

interface Lock {
  readonly text: string;
  /** Changes when the lock is touched, or is another with the same text. */
  readonly state: string;
}

/**
 * Removes the lock of a dead owner. Only one process may do so at a time, which a lock named after the dead lock sees to; and while
 * it is held nobody else removes that lock, so that what is removed is surely the dead one and not a successor's.
 */
async function breakLock(path: string, lock: Lock, waiting: Wait, depth: number): Promise<void> {
  const name = ownerOf(lock.text)?.token ?? createHash('sha256').update(lock.state).digest('hex').slice(0, 12);
  const breaking = `${path}.${name}`;
  const mine = await acquire(breaking, waiting, depth + 1);
  try {
    if ((await readLock(path))?.state === lock.state) await unlink(path);
  } finally {
    await giveBack(breaking, JSON.stringify(mine));
  }
}

/**
 * Gives back a lock that is still ours; one that somebody removed by hand may be another's by now. Never fails: what was done under the lock
 * is done, and one that cannot be removed is broken by the next when this process has ended.
 */
async function giveBack(path: string, text: string): Promise<void> {
  const lock = await readLock(path).catch(() => null);
  if (lock?.text === text) await unlink(path).catch(() => {});
}

function touch(path: string): void {
  const now = new Date();
  utimes(path, now, now).catch(() => {});
}

async function readLock(path: string): Promise<Lock | null> {
  try {
    const text = await readFile(path, 'utf8');
    const { ino, mtimeMs } = await stat(path);
    return { text, state: `${text}\n${ino} ${mtimeMs}` };
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

function ownerOf(text: string): Owner | null {
  try {
    const { pid, host, token } = JSON.parse(text) as Partial<Owner>;
    const whole =
      typeof pid === 'number' &&
      pid > 0 &&
      typeof host === 'string' &&
      typeof token === 'string' &&
      (/^[0-9a-f]{12}$/.test(token) || pidOfTag(token) === pid);
    return whole ? { pid, host, token } : null;
  } catch {
    return null;
  }
}

function fateOfLock(text: string): Fate {
  const owner = ownerOf(text);
  if (owner === null) return 'unknown';
  if (pidOfTag(owner.token) !== null) return fateOf(owner.token);
  if (owner.host !== hostname()) return 'elsewhere';
  return isGone(owner.pid) ? 'dead' : 'unknown';
}

function describe(owner: Owner | null): string {
  return owner === null ? 'a process that did not say who it is' : `process ${owner.pid} on ${owner.host}`;
}

/** Locks for breaking a dead lock that is gone. Called with the lock in hand: no lock with an earlier token ever comes back. */
async function removeLeftovers(path: string): Promise<void> {
  const [folder, start] = [dirname(path), `${basename(path)}.`];
  for (const name of await readdir(folder)) {
    if (!name.startsWith(start) || name.endsWith('.draft')) continue;
    const left = await readLock(join(folder, name));
    if (left !== null && fateOfLock(left.text) === 'dead') await unlink(join(folder, name)).catch(() => {});
  }
}
