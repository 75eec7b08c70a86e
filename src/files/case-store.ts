import { link, open, readFile, realpath, rename, stat, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Case } from '../record/case.ts';
import type { CaseFile, VisitFile } from '../record/case-schema.ts';
import { parseCaseText, readCase } from '../record/read-case.ts';
import { caseText, withVisit } from '../record/write-case.ts';
import { LARGEST_JSON_BYTES } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';
import { LOCK_PATIENCE, LockHeldError, withFileLock } from './file-lock.ts';

/** How often a file that changes between reading and writing, by something that knows no lock, is read again. */
const MOST_TRIES = 5;
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV']);

/** The case in a file. Fails with `FILE_NOT_READ`, or as `parseCaseText`. */
export async function loadCase(path: string): Promise<Result<Case>> {
  const text = await readWhole(path);
  return text.ok ? parseCaseText(text.value, path) : text;
}

/**
 * Writes a new case file, whole or not at all. Fails with `OUTPUT_EXISTS` when the path is taken, `OUTPUT_FAILED`, `CASE_LOCKED`, or as
 * `caseText`; then nothing was written.
 */
export async function createCase(path: string, file: CaseFile): Promise<Result<Case>> {
  const text = caseText(file);
  if (!text.ok) return text;
  return guarded(path, LOCK_PATIENCE, async () => {
    if (!(await placeNew(path, text.value))) {
      const message = `${path} exists and was not touched; choose another name, or add to it with case add`;
      return failure({ code: 'OUTPUT_EXISTS', where: path, message, kind: 'input' });
    }
    return readCase(file, path);
  });
}

/**
 * Adds a visit to a case file. Under a lock the file is read and proved, and replaced in one step by the new one, flushed to the disk before
 * and after: whoever is killed at whatever moment leaves the old file or the new one, whole. A file that cannot be read as a case is left
 * as it is. Fails as `loadCase`, `withVisit` and `caseText`, or with `CASE_LOCKED`, `CASE_CHANGING`, `OUTPUT_FAILED`.
 * @param visitFor the visit for the case as it stands when it is locked
 */
export async function addVisit(
  path: string,
  visitFor: (record: Case) => Result<VisitFile>,
  patience: number = LOCK_PATIENCE,
): Promise<Result<Case>> {
  const real = await realpath(path).catch(() => path);
  return guarded(real, patience, async () => {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const before = await readWhole(real, path);
      const read = before.ok ? parseCaseText(before.value, path) : before;
      if (!before.ok || !read.ok) return read as Result<Case>;
      const next = nextText(read.value, visitFor);
      if (!next.ok) return next;
      if (await replace(real, before.value, next.value.text)) return next.value.read;
    }
    const message = `${path} is being changed by another program; nothing was added. Close it there and try again`;
    return failure({ code: 'CASE_CHANGING', where: path, message, kind: 'input' });
  });
}

function nextText(record: Case, visitFor: (record: Case) => Result<VisitFile>): Result<{ text: string; read: Result<Case> }> {
  const visit = visitFor(record);
  if (!visit.ok) return visit;
  const file = withVisit(record.file, visit.value);
  if (!file.ok) return file;
  const text = caseText(file.value);
  return text.ok ? success({ text: text.value, read: readCase(file.value) }) : text;
}

async function guarded(path: string, patience: number, work: () => Promise<Result<Case>>): Promise<Result<Case>> {
  try {
    return await withFileLock(path, work, patience);
  } catch (error) {
    if (error instanceof LockHeldError) {
      const message = `${path} is held by ${error.owner}, which adds to it; nothing was written. Try again; if nobody is adding to it, delete ${error.path}`;
      return failure({ code: 'CASE_LOCKED', where: path, message, kind: 'input' });
    }
    const code = codeOf(error);
    if (code === '') throw error;
    const why: Record<string, string> = {
      ENOSPC: 'the disk is full',
      ENOENT: 'the folder does not exist',
      EACCES: 'you may not write there',
    };
    const message = `cannot save ${path}: ${why[code] ?? `the system says ${code}`}; the case was left as it was`;
    return failure({ code: 'OUTPUT_FAILED', where: path, message, kind: 'input' });
  }
}

async function readWhole(path: string, named: string = path): Promise<Result<string>> {
  const refused = (what: string) => failure<string>({ code: 'FILE_NOT_READ', where: named, message: `${named} ${what}.`, kind: 'input' });
  try {
    const { size } = await stat(path);
    if (size > LARGEST_JSON_BYTES) return refused(`is ${size} bytes large; at most ${LARGEST_JSON_BYTES} are read. Is it the right file?`);
    const bytes = await readFile(path);
    try {
      return success(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
    } catch {
      return refused('is damaged or no case file: it is not text in UTF-8. It was left as it is; take the last copy of it');
    }
  } catch (error) {
    const code = codeOf(error);
    if (code === '') throw error;
    const why: Record<string, string> = {
      ENOENT: 'does not exist. Check the path, or start it with case new',
      EACCES: 'may not be read',
      EISDIR: 'is a folder',
    };
    return refused(why[code] ?? `cannot be read (${code})`);
  }
}

/** The one name under which new content waits: the lock allows one writer, so a leftover of a killed one is overwritten. */
function draftPath(path: string): string {
  return join(dirname(path), `.${basename(path)}.draft`);
}

/** @param mode permissions of the file that it replaces: a case that only its owner may read stays so */
async function writeDraft(path: string, text: string, mode: number | null = null): Promise<string> {
  const draft = draftPath(path);
  const handle = await open(draft, 'w');
  try {
    if (mode !== null) await handle.chmod(mode);
    await handle.writeFile(text, 'utf8');
    await handle.sync();
  } finally {
    await handle.close();
  }
  return draft;
}

/** False when the file no longer holds what was read: then it is left alone. */
async function replace(path: string, before: string, text: string): Promise<boolean> {
  const draft = await writeDraft(path, text, (await stat(path)).mode & 0o777);
  try {
    if ((await readFile(path, 'utf8').catch(() => null)) !== before) return false;
    await rename(draft, path);
  } finally {
    await unlink(draft).catch(() => {});
  }
  await flushFolder(dirname(path));
  return true;
}

/** False when the path is taken. Linking fails on a name that has been taken since; renaming would overwrite. */
async function placeNew(path: string, text: string): Promise<boolean> {
  const taken = () =>
    stat(path).then(
      () => true,
      (error: unknown) => codeOf(error) !== 'ENOENT',
    );
  if (await taken()) return false;
  const draft = await writeDraft(path, text);
  try {
    await link(draft, path);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    if (!NO_LINKS.has(codeOf(error))) throw error;
    if (await taken()) return false;
    await rename(draft, path);
  } finally {
    await unlink(draft).catch(() => {});
  }
  await flushFolder(dirname(path));
  return true;
}

/** Makes the new name survive a power cut, where the system can: Windows and some network disks cannot, and keep the file whole all the same. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  try {
    await handle?.sync();
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'ENOTSUP', 'EBADF'].includes(codeOf(error))) throw error;
  } finally {
    await handle?.close();
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
