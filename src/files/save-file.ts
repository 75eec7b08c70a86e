import { randomBytes } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { copyFile, link, lstat, mkdir, mkdtemp, open, rename, rm, rmdir, unlink } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';

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
}

const SAFE_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]*(\.[A-Za-z0-9]+)+$/;
/** Names that Windows keeps for devices, with any ending. */
const DEVICE_NAME = /^(con|prn|aux|nul|com\d|lpt\d)\./i;
/** What a file system answers that has no hard links, or that forbids them. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EACCES', 'EXDEV']);

/**
 * Whether files of these names can be written into the folder; to be asked before anything is computed. Makes nothing: a folder that does not
 * exist yet is looked for in its nearest parent. All problems at once: `OUTPUT_NAME`, `OUTPUT_EXISTS`, `OUTPUT_NOT_WRITABLE`.
 */
export async function checkWritable(folder: string, names: readonly string[] = [], options: SaveOptions = {}): Promise<Result<string>> {
  const problems = nameProblems(names);
  const usable = names.filter((name) => !problems.some((p) => p.where === name));
  const blocked = await folderProblem(folder);
  if (blocked) problems.push(blocked);
  else for (const name of usable) problems.push(...(await existingProblem(join(folder, name), options.force === true)));
  return problems.length > 0 ? failure(...problems) : success(folder);
}

/**
 * Saves the files together. Each is written under another name in the same folder, flushed to the disk and then renamed, so that a file is
 * either whole or not there; when one cannot be put in place, those already placed are taken back. Fails as `checkWritable` does, or with
 * `OUTPUT_FAILED`, and then leaves the folder's files as they were.
 */
export async function saveFiles(
  folder: string,
  files: readonly OutputFile[],
  options: SaveOptions = {},
): Promise<Result<readonly SavedFile[]>> {
  const names = files.map((file) => file.name);
  const place = await checkWritable(folder, names, options);
  if (!place.ok) return place;
  const staged: Staged[] = [];
  try {
    await mkdir(folder, { recursive: true });
    for (const file of files) await stage(folder, file, staged);
    for (const file of staged) await putInPlace(file, options.force === true);
    await flushFolder(folder);
  } catch (error) {
    const stuck = await takeBack(staged);
    return failure(saveProblem(folder, error, stuck));
  } finally {
    // A leftover under its hidden name harms nobody; it must not turn a saved set into an error.
    for (const file of staged)
      for (const path of [file.temporary, file.previous]) if (path) await rm(path, { force: true }).catch(() => {});
  }
  return success(staged.map(({ name, target, bytes }) => ({ name, path: target, bytes })));
}

interface Staged {
  readonly name: string;
  readonly target: string;
  readonly bytes: number;
  readonly temporary: string;
  /** A second name of the file that was replaced, until all are in place. */
  previous: string | null;
  placed: boolean;
}

function nameProblems(names: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const name of names) {
    const key = name.toLowerCase();
    const wrong = !SAFE_NAME.test(name) || DEVICE_NAME.test(name);
    const reason = wrong ? 'is not a plain file name (letters, digits, - and _, one ending)' : seen.has(key) ? 'is given twice' : null;
    if (reason) problems.push(problem('OUTPUT_NAME', name, `output file ${quote(name)} ${reason}; choose another name`));
    seen.add(key);
  }
  return problems;
}

async function folderProblem(folder: string): Promise<Problem | null> {
  let nearest = resolve(folder);
  while (!(await exists(nearest)) && dirname(nearest) !== nearest) nearest = dirname(nearest);
  try {
    // Only trying tells: permissions, read-only disks, quotas and access lists answer differently on each system.
    await rmdir(await mkdtemp(join(nearest, '.knucklewright-')));
    return null;
  } catch (error) {
    const reason = codeOf(error) === 'ENOTDIR' ? 'it, or a folder above it, is a file' : `the system says ${codeOf(error)}`;
    const message = `cannot write into the folder ${folder}: ${reason}; choose a folder that you may write to`;
    return problem('OUTPUT_NOT_WRITABLE', folder, message);
  }
}

async function existingProblem(path: string, force: boolean): Promise<readonly Problem[]> {
  const found = await lstat(path).catch(() => null);
  if (found?.isDirectory()) return [problem('OUTPUT_EXISTS', path, `${path} is a folder; move it away or choose another folder`)];
  return found && !force ? [alreadyThere(path)] : [];
}

function alreadyThere(path: string): Problem {
  const message = `${path} exists and was not touched; choose another folder, or ask for it to be replaced (--force)`;
  return problem('OUTPUT_EXISTS', path, message);
}

async function stage(folder: string, file: OutputFile, staged: Staged[]): Promise<void> {
  const bytes = typeof file.content === 'string' ? Buffer.from(file.content, 'utf8') : file.content;
  const temporary = besideName(folder, file.name);
  staged.push({ name: file.name, target: join(folder, file.name), bytes: bytes.byteLength, temporary, previous: null, placed: false });
  const handle = await open(temporary, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

function besideName(folder: string, name: string): string {
  return join(folder, `.${name}.${randomBytes(6).toString('hex')}.tmp`);
}

async function putInPlace(file: Staged, force: boolean): Promise<void> {
  if (force) {
    await keepPrevious(file);
    await rename(file.temporary, file.target);
  } else {
    await placeNew(file);
  }
  file.placed = true;
}

/** Gives the file that is about to be replaced a second name; the first one stays, so that at no moment there is none. */
async function keepPrevious(file: Staged): Promise<void> {
  if (!(await exists(file.target))) return;
  const previous = besideName(dirname(file.target), file.name);
  try {
    await link(file.target, previous);
  } catch (error) {
    if (!NO_LINKS.has(codeOf(error))) throw error;
    await copyFile(file.target, previous);
  }
  file.previous = previous;
}

/** Linking fails when the name has been taken since it was checked; renaming would overwrite. */
async function placeNew(file: Staged): Promise<void> {
  try {
    await link(file.temporary, file.target);
  } catch (error) {
    if (!NO_LINKS.has(codeOf(error))) throw error;
    if (await exists(file.target)) throw Object.assign(new Error('exists'), { code: 'EEXIST', dest: file.target });
    await rename(file.temporary, file.target);
  }
}

/** Undoes `putInPlace`; returns what to say about each file where that failed. The earlier file then stays under its second name. */
async function takeBack(staged: readonly Staged[]): Promise<readonly string[]> {
  const stuck: string[] = [];
  for (const file of staged.filter((f) => f.placed)) {
    try {
      if (file.previous) await rename(file.previous, file.target);
      else await unlink(file.target);
    } catch {
      stuck.push(file.previous ? `${file.target} (the earlier file is now ${file.previous})` : file.target);
      file.previous = null;
    }
  }
  return stuck;
}

/** Makes the new names survive a power cut. Windows cannot open a folder for this and does not need it. */
async function flushFolder(folder: string): Promise<void> {
  let handle: FileHandle;
  try {
    handle = await open(folder, 'r');
  } catch (error) {
    if (process.platform === 'win32') return;
    throw error;
  }
  try {
    await handle.sync();
  } catch (error) {
    // Some network file systems do not flush folders; the files themselves are flushed.
    if (!['EINVAL', 'EPERM', 'ENOTSUP', 'EBADF'].includes(codeOf(error))) throw error;
  } finally {
    await handle.close();
  }
}

function saveProblem(folder: string, error: unknown, stuck: readonly string[]): Problem {
  const left = stuck.length > 0 ? `; could not be undone: ${stuck.join(', ')}; put this right by hand` : '; nothing was written';
  if (codeOf(error) === 'EEXIST') return alreadyThere(String((error as { dest?: unknown }).dest ?? folder));
  const reason = codeOf(error) === 'ENOSPC' ? 'the disk is full' : `the system says ${codeOf(error)}`;
  return problem('OUTPUT_FAILED', folder, `cannot save into the folder ${folder}: ${reason}${left}`);
}

function problem(code: string, where: string, message: string): Problem {
  return { code, where, message, kind: 'input' };
}

async function exists(path: string): Promise<boolean> {
  return (await lstat(path).catch(() => null)) !== null;
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}
