import { rmdirSync } from 'node:fs';
import { lstat, mkdir, rm, rmdir, unlink } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { besidePath, clearLeftovers, Draft, exists, flushFolder, isProtected, keepEarlier, renamePatiently } from './draft.ts';
import { errorCode, systemReason } from './error-code.ts';
import { undoWhenStopped, unstopped } from './stop-cleanly.ts';

export { outputFileName } from '../writers/output-file-name.ts';

export interface OutputFile {
  /** Name without a folder; see `outputFileName`. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

export interface SavedFile {
  readonly name: string;
  /** The folder as it was given, joined with the name. */
  readonly path: string;
  readonly bytes: number;
}

export interface SaveOptions {
  /** Replace files that exist; without it they are a problem. */
  readonly force?: boolean;
  /** The names are a person's own: blanks and other letters are allowed, but no path, and nothing that a system keeps for itself. */
  readonly ownNames?: boolean;
}

const SAFE_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]*(\.[A-Za-z0-9]+)+$/;
/** What every system takes in a name: no separators, no signs that Windows refuses, nothing invisible, no blank or point at an end. */
const OWN_NAME = /^[^\\/:*?"<>|.\s\p{C}\p{Zl}\p{Zp}-][^\\/:*?"<>|\p{C}\p{Zl}\p{Zp}]*\.[A-Za-z0-9]+$/u;
/** Names that Windows keeps for devices, with any ending. */
const DEVICE_NAME = /^(con|prn|aux|nul|com\d|lpt\d)\./i;

/**
 * Whether files of these names can be written into the folder; to be asked before anything is computed. Makes nothing: a folder that does not
 * exist yet is looked for in its nearest parent. All problems at once: `OUTPUT_NAME`, `OUTPUT_EXISTS`, `OUTPUT_PROTECTED`, `OUTPUT_NOT_WRITABLE`.
 */
export async function checkWritable(folder: string, names: readonly string[] = [], options: SaveOptions = {}): Promise<Result<string>> {
  const problems = nameProblems(names, options.ownNames === true);
  const usable = names.filter((name) => !problems.some((p) => p.where === name));
  const blocked = await folderProblem(folder);
  if (blocked) problems.push(blocked);
  else {
    const found = await Promise.all(usable.map((name) => whatIsThere(join(folder, name), options.force === true)));
    problems.push(...found.flatMap((one) => (one === null || one === 'taken' ? [] : [one])));
    const taken = usable.filter((_, k) => found[k] === 'taken').map((name) => join(folder, name));
    if (taken.length > 0) problems.push(alreadyThere(taken));
  }
  return problems.length > 0 ? failure(...problems) : success(folder);
}

/**
 * Saves the files together. Each is written under another name in the same folder, flushed to the disk and then put in its place, so that a
 * file is either whole or not there; when one cannot be put in place, those already placed are taken back. Fails as `checkWritable` does, or
 * with `OUTPUT_FAILED`, and then leaves the folder's files as they were.
 */
export async function saveFiles(
  folder: string,
  files: readonly OutputFile[],
  options: SaveOptions = {},
): Promise<Result<readonly SavedFile[]>> {
  const names = files.map((file) => file.name);
  const set = await FileSet.open(folder, names, options);
  if (!set.ok) return set;
  for (const file of files) {
    const added = await set.value.add(file);
    if (!added.ok) return added;
  }
  return set.value.commit();
}

/** Folders where this process has looked for leftovers. */
const cleared = new Set<string>();

/** Files that are written one by one under hidden names and all put in place at the end; what `saveFiles` does, for more than fits into memory. */
export class FileSet {
  readonly folder: string;
  private readonly force: boolean;
  private readonly staged: Staged[] = [];

  private constructor(folder: string, force: boolean) {
    this.folder = folder;
    this.force = force;
  }

  /** Fails as `checkWritable`. */
  static async open(folder: string, names: readonly string[], options: SaveOptions = {}): Promise<Result<FileSet>> {
    const place = await checkWritable(folder, names, options);
    if (!place.ok) return place;
    try {
      await mkdir(folder, { recursive: true });
    } catch (error) {
      return failure(saveProblem(folder, error, []));
    }
    // Once a run: a batch opens thousands of sets in one folder.
    if (!cleared.has(resolve(folder))) await clearLeftovers(folder);
    cleared.add(resolve(folder));
    return success(new FileSet(folder, options.force === true));
  }

  /** Writes the file under its hidden name and flushes it. Fails with `OUTPUT_FAILED`, and has then discarded the set. */
  async add(file: OutputFile): Promise<Result<SavedFile>> {
    const bytes = typeof file.content === 'string' ? Buffer.from(file.content, 'utf8') : file.content;
    try {
      const draft = await Draft.open(join(this.folder, file.name));
      const staged: Staged = { name: file.name, target: draft.target, bytes: bytes.byteLength, draft, earlier: null, placed: false };
      this.staged.push(staged);
      await draft.write(bytes);
      await draft.finish();
      return success(savedFile(staged));
    } catch (error) {
      await this.discard();
      return failure(saveProblem(this.folder, error, []));
    }
  }

  /**
   * Puts all files in place, and takes away what an earlier run left under the names of `away`; all of it or, on `OUTPUT_EXISTS` and
   * `OUTPUT_FAILED`, nothing. A signal that comes meanwhile waits.
   */
  async commit(away: readonly string[] = []): Promise<Result<readonly SavedFile[]>> {
    return unstopped(async () => {
      const gone: Gone[] = [];
      try {
        for (const file of this.staged) await putInPlace(file, this.force);
        for (const name of away) {
          const target = join(this.folder, name);
          const earlier = await keepEarlier(target);
          if (earlier === null) continue;
          gone.push({ target, earlier });
          await unlink(target);
        }
        await flushFolder(this.folder);
      } catch (error) {
        const stuck = await takeBack(this.staged, gone);
        return failure(saveProblem(this.folder, error, stuck));
      } finally {
        // A leftover under its hidden name harms nobody; it must not turn a saved set into an error.
        for (const { earlier } of [...this.staged, ...gone]) if (earlier) await rm(earlier, { force: true }).catch(() => {});
        await this.discard();
      }
      return success(this.staged.map(savedFile));
    });
  }

  /** Removes what is not in its place. */
  async discard(): Promise<void> {
    for (const { draft } of this.staged) await draft.discard();
  }
}

function savedFile({ name, target, bytes }: Staged): SavedFile {
  return { name, path: target, bytes };
}

interface Staged {
  readonly name: string;
  readonly target: string;
  readonly bytes: number;
  readonly draft: Draft;
  /** A second name of the file that was replaced, until all are in place. */
  earlier: string | null;
  placed: boolean;
}

/** A file that was taken away, and its second name. */
interface Gone {
  readonly target: string;
  earlier: string | null;
}

function nameProblems(names: readonly string[], own: boolean): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const name of names) {
    const key = name.toLowerCase();
    const wrong = !(own ? OWN_NAME : SAFE_NAME).test(name) || DEVICE_NAME.test(name);
    const plain = own
      ? 'has a character that files cannot have everywhere, or no ending'
      : 'is not a plain file name (letters, digits, - and _, one ending)';
    const reason = wrong ? plain : seen.has(key) ? 'is given twice' : null;
    if (reason) problems.push(problem('OUTPUT_NAME', name, `output file ${quote(name)} ${reason}; choose another name`));
    seen.add(key);
  }
  return problems;
}

async function folderProblem(folder: string): Promise<Problem | null> {
  let nearest = resolve(folder);
  for (;;) {
    const missing = await lstat(nearest).then(() => '', errorCode);
    // The system never looked: each folder above would be asked for with a name as long, and what comes of it cannot be made.
    if (missing === 'ENAMETOOLONG') return notWritable(folder, quote(folder), systemReason(missing));
    if (missing === '' || dirname(nearest) === nearest) break;
    nearest = dirname(nearest);
  }
  const trial = besidePath(join(nearest, 'knucklewright'), 'trial');
  const release = undoWhenStopped(() => rmdirSync(trial));
  try {
    // Only trying tells: permissions, read-only disks, quotas and access lists answer differently on each system.
    await mkdir(trial);
    await rmdir(trial);
    return null;
  } catch (error) {
    const reason = errorCode(error) === 'ENOTDIR' ? 'it, or a folder above it, is a file' : systemReason(errorCode(error));
    return notWritable(folder, folder, reason);
  } finally {
    release();
  }
}

function notWritable(folder: string, shown: string, reason: string): Problem {
  return problem('OUTPUT_NOT_WRITABLE', folder, `cannot write into the folder ${shown}: ${reason}; choose a folder that you may write to`);
}

/** What stands in the way at a path: a problem of its own, a file that may be replaced where that is asked for (`taken`), or nothing. */
async function whatIsThere(path: string, force: boolean): Promise<Problem | 'taken' | null> {
  const found = await lstat(path).catch(() => null);
  if (found?.isDirectory()) return problem('OUTPUT_EXISTS', path, `${path} is a folder; move it away or choose another folder`);
  if (found && isProtected(found)) {
    const message = `${path} exists, is write-protected and was not touched; choose another folder, or take the protection away and ask for it to be replaced (--force)`;
    return problem('OUTPUT_PROTECTED', path, message);
  }
  return found && !force ? 'taken' : null;
}

/** So many files are named in a message, of more their number. */
const MOST_NAMED = 3;

/** @param paths of a folder, one at least */
function alreadyThere(paths: readonly string[]): Problem {
  const [first = ''] = paths;
  const more = paths.length - MOST_NAMED;
  const named = [first, ...paths.slice(1, MOST_NAMED).map((path) => basename(path))].join(', ') + (more > 0 ? ` and ${more} more` : '');
  const what = paths.length === 1 ? 'exists and was not touched' : 'exist and were not touched';
  const message = `${named} ${what}; choose another folder, or ask for ${paths.length === 1 ? 'it' : 'them'} to be replaced (--force)`;
  return problem('OUTPUT_EXISTS', first, message);
}

async function putInPlace(file: Staged, force: boolean): Promise<void> {
  if (force) {
    file.earlier = await keepEarlier(file.target);
    await file.draft.replace();
  } else if (!(await file.draft.placeNew())) throw Object.assign(new Error('exists'), { code: 'EEXIST', dest: file.target });
  file.placed = true;
}

/** Undoes what `commit` did; returns what to say about each file where that failed. The earlier file then stays under its second name. */
async function takeBack(staged: readonly Staged[], gone: readonly Gone[]): Promise<readonly string[]> {
  const stuck: string[] = [];
  for (const file of [...staged.filter((f) => f.placed), ...gone]) {
    try {
      if (file.earlier) await renamePatiently(file.earlier, file.target);
      else await unlink(file.target);
      file.earlier = null;
    } catch {
      stuck.push(file.earlier ? `${file.target} (the earlier file is now ${await setAside(file.earlier, file.target)})` : file.target);
      file.earlier = null;
    }
  }
  return stuck;
}

/** Out of the way of `clearLeftovers`, under a name that the person sees; where even that fails, where it is. */
async function setAside(earlier: string, target: string): Promise<string> {
  const seen = `${target}.earlier`;
  if (await exists(seen)) return earlier;
  return renamePatiently(earlier, seen).then(
    () => seen,
    () => earlier,
  );
}

function saveProblem(folder: string, error: unknown, stuck: readonly string[]): Problem {
  const left = stuck.length > 0 ? `; could not be undone: ${stuck.join(', ')}; put this right by hand` : '; nothing was written';
  if (errorCode(error) === 'EEXIST') return alreadyThere([String((error as { dest?: unknown }).dest ?? folder)]);
  return problem(
    'OUTPUT_FAILED',
    folder,
    `cannot save into the folder ${folder}: ${systemReason(errorCode(error) || String(error))}${left}`,
  );
}

function problem(code: string, where: string, message: string): Problem {
  return { code, where, message, kind: 'input' };
}
