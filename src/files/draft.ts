import { unlinkSync } from 'node:fs';
import { copyFile, type FileHandle, link, lstat, open, readdir, rename, rm, rmdir, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { errorCode } from './error-code.ts';
import { fateOf, newTag, TAG_PATTERN } from './process-tag.ts';
import { undoWhenStopped } from './stop-cleanly.ts';

/** What lies beside a file while it is written: its content to be, the file that was replaced, or the trial whether a folder can be written. */
type BesideKind = 'draft' | 'earlier' | 'trial';

/** What a file system answers that has no hard links, or that forbids them. */
export const NO_LINKS: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV', 'EACCES']);
/** What Windows answers while a scanner or an indexer holds the file for a moment. */
const HELD_FOR_A_MOMENT = new Set(['EPERM', 'EACCES', 'EBUSY']);
/** Pauses between tries of a rename, ms; a scanner is done within a second or two (common practice, no source). */
const RENAME_PAUSES = [20, 50, 100, 200, 400, 800, 1600];
/** Letters of the file's name that a hidden name repeats, so that it stays under every system's limit. */
const REPEATED = 40;

/** A hidden name in the folder of a file that says which process made it; never taken before. */
export function besidePath(file: string, kind: BesideKind): string {
  return join(dirname(file), `.${basename(file).slice(0, REPEATED)}.${newTag()}.${kind}`);
}

/**
 * Content on its way to a file: written beside it under a hidden name that says which process writes, flushed, and then put in place in one
 * step. Nobody ever opens the name of another draft, and no link at that name is followed. A stopped program removes its drafts; one of a
 * killed program is found by `clearLeftovers`.
 */
export class Draft {
  readonly target: string;
  private readonly path: string;
  private readonly handle: FileHandle;
  private readonly release: () => void;
  private isPlaced = false;

  private constructor(target: string, path: string, handle: FileHandle, release: () => void) {
    this.target = target;
    this.path = path;
    this.handle = handle;
    this.release = release;
  }

  /** @param mode permissions, as of the file that it is to replace; null for those of any new file */
  static async open(target: string, mode: number | null = null): Promise<Draft> {
    const path = besidePath(target, 'draft');
    const release = undoWhenStopped(() => unlinkSync(path));
    try {
      const handle = await open(path, 'wx');
      const draft = new Draft(target, path, handle, release);
      try {
        if (mode !== null) await handle.chmod(mode);
      } catch (error) {
        await draft.discard();
        throw error;
      }
      return draft;
    } catch (error) {
      release();
      throw error;
    }
  }

  async write(content: string | Uint8Array): Promise<void> {
    await this.handle.appendFile(content);
  }

  /** Flushes what was written to the disk; nothing more is written after it. */
  async finish(): Promise<void> {
    await this.handle.sync();
    await this.handle.close();
  }

  /** Puts the finished draft where nothing is; false, and nothing changed, when something is there by now. */
  async placeNew(): Promise<boolean> {
    try {
      // Linking fails on a name that has been taken since; renaming would overwrite.
      await link(this.path, this.target);
    } catch (error) {
      if (errorCode(error) === 'EEXIST') return false;
      if (!NO_LINKS.has(errorCode(error))) throw error;
      if (await exists(this.target)) return false;
      await renamePatiently(this.path, this.target);
    }
    await rm(this.path, { force: true }).catch(() => {});
    this.placed();
    return true;
  }

  /** Puts the finished draft in the place of whatever is there. */
  async replace(): Promise<void> {
    await renamePatiently(this.path, this.target);
    this.placed();
  }

  private placed(): void {
    this.isPlaced = true;
    this.release();
  }

  /** Leaves nothing behind; does nothing to one that is in its place. */
  async discard(): Promise<void> {
    if (this.isPlaced) return;
    await this.handle.close().catch(() => {});
    await rm(this.path, { force: true }).catch(() => {});
    this.release();
  }
}

/** Gives a file a second name, so that it can come back; where there are no links a copy. Null when there is no file. */
export async function keepEarlier(file: string): Promise<string | null> {
  if (!(await exists(file))) return null;
  const earlier = besidePath(file, 'earlier');
  try {
    await link(file, earlier);
  } catch (error) {
    if (!NO_LINKS.has(errorCode(error))) throw error;
    await copyFile(file, earlier);
  }
  return earlier;
}

/**
 * Renames, and on Windows tries again for some seconds, where a program that looks at every file may hold one of the two.
 * @param pauses ms before each further try
 */
export async function renamePatiently(
  from: string,
  to: string,
  pauses: readonly number[] = process.platform === 'win32' ? RENAME_PAUSES : [],
): Promise<void> {
  for (const pause of pauses) {
    try {
      return await rename(from, to);
    } catch (error) {
      if (!HELD_FOR_A_MOMENT.has(errorCode(error))) throw error;
      await wait(pause);
    }
  }
  return rename(from, to);
}

/** Makes new names survive a power cut, where the system can: Windows and some network disks cannot, and keep each file whole all the same. */
export async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch((error: unknown) => {
    if (process.platform === 'win32') return null;
    throw error;
  });
  try {
    await handle?.sync();
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'ENOTSUP', 'EBADF'].includes(errorCode(error))) throw error;
  } finally {
    await handle?.close();
  }
}

/** Whether the right to write was taken from everybody. Renaming would replace such a file all the same, since it asks the folder alone. */
export function isProtected({ mode }: { readonly mode: number }): boolean {
  return (mode & 0o222) === 0;
}

export async function exists(path: string): Promise<boolean> {
  return (await lstat(path).catch(() => null)) !== null;
}

const LEFTOVER = new RegExp(String.raw`^\..+\.(${TAG_PATTERN})\.(draft|earlier|trial)$`, 's');

/**
 * Removes what programs that were killed left in a folder: hidden files whose names say which process made them, when it lives no more. What
 * lives, or may, is left alone, and so is everything with another name. Never fails: a leftover harms nobody.
 */
export async function clearLeftovers(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const [, tag, kind] = LEFTOVER.exec(name) ?? [];
    if (tag === undefined || fateOf(tag) !== 'dead') continue;
    await (kind === 'trial' ? rmdir : unlink)(join(folder, name)).catch(() => {});
  }
}
