import { realpath, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Case } from '../record/case.ts';
import type { CaseFile, VisitFile } from '../record/case-schema.ts';
import { parseCaseText, readCase } from '../record/read-case.ts';
import { caseText, withVisit } from '../record/write-case.ts';
import { decodeText } from '../units/file-format.ts';
import { LARGEST_JSON_BYTES } from '../units/json-text.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { clearLeftovers, Draft, exists, flushFolder, isProtected } from './draft.ts';
import { errorCode, systemReason } from './error-code.ts';
import { LockHeldError, type LockWaiting, withFileLock } from './file-lock.ts';
import { readBytes } from './read-file.ts';
import { unstopped } from './stop-cleanly.ts';

/** How often a file that changes between reading and writing, by something that knows no lock, is read again. */
const MOST_TRIES = 5;

/** The case in a file. Fails with `FILE_NOT_READ`, or as `parseCaseText`. */
export async function loadCase(path: string): Promise<Result<Case>> {
  const text = await readWhole(path);
  return text.ok ? parseCaseText(text.value, path) : text;
}

/**
 * Writes a new case file, whole or not at all. Fails with `OUTPUT_EXISTS` when the path is taken, `OUTPUT_FAILED`, `CASE_LOCKED`, or as
 * `caseText`; then nothing was written.
 */
export async function createCase(path: string, file: CaseFile, waiting: LockWaiting = {}): Promise<Result<Case>> {
  const text = caseText(file);
  if (!text.ok) return text;
  return guarded(path, waiting, async () => {
    const placed = await placeNew(path, text.value);
    if (placed === null) {
      const message = `${path} exists and was not touched; choose another name, or add to it with case add`;
      return failure({ code: 'OUTPUT_EXISTS', where: path, message, kind: 'input' });
    }
    return withWarnings(readCase(file, path), placed);
  });
}

/**
 * Adds a visit to a case file. Under a lock the file is read and proved, and replaced in one step by the new one, flushed to the disk before
 * and after: whoever is killed at whatever moment leaves the old file or the new one, whole. A file that cannot be read as a case is left
 * as it is. Fails as `loadCase`, `withVisit` and `caseText`, or with `CASE_LOCKED`, `CASE_CHANGING`, `OUTPUT_PROTECTED`, `OUTPUT_FAILED`.
 * @param visitFor the visit for the case as it stands when it is locked
 */
export async function addVisit(
  path: string,
  visitFor: (record: Case) => Result<VisitFile>,
  waiting: LockWaiting = {},
): Promise<Result<Case>> {
  const withNew = (record: Case) => {
    const visit = visitFor(record);
    return visit.ok ? withVisit(record.file, visit.value, path) : visit;
  };
  return changeCase(path, withNew, waiting);
}

/**
 * Puts another case in the place of the one in a file, in the manner of `addVisit`.
 * @param change the new case for the one that stands there when it is locked
 */
export async function changeCase(
  path: string,
  change: (record: Case) => Result<CaseFile>,
  waiting: LockWaiting = {},
): Promise<Result<Case>> {
  const real = await realpath(path).catch(() => path);
  const found = await stat(real).catch(() => null);
  if (found?.isFile() && isProtected(found)) {
    const message = `${path} is write-protected; nothing was added. Take the protection away, or work on a copy`;
    return failure({ code: 'OUTPUT_PROTECTED', where: path, message, kind: 'input' });
  }
  return guarded(real, waiting, async () => {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const before = await readWhole(real);
      const read = before.ok ? parseCaseText(before.value, path) : before;
      if (!before.ok || !read.ok) return read as Result<Case>;
      const next = nextText(read.value, change);
      if (!next.ok) return next;
      const replaced = await replace(real, before.value, next.value.text);
      if (replaced !== null) return withWarnings(next.value.read, replaced);
    }
    const message = `${path} is being changed by another program; nothing was added. Close it there and try again`;
    return failure({ code: 'CASE_CHANGING', where: path, message, kind: 'input' });
  });
}

function nextText(record: Case, change: (record: Case) => Result<CaseFile>): Result<{ text: string; read: Result<Case> }> {
  const file = change(record);
  if (!file.ok) return file;
  const text = caseText(file.value);
  return text.ok ? success({ text: text.value, read: readCase(file.value) }) : text;
}

async function guarded(path: string, waiting: LockWaiting, work: () => Promise<Result<Case>>): Promise<Result<Case>> {
  try {
    return await withFileLock(
      path,
      async () => {
        await clearLeftovers(dirname(path));
        return work();
      },
      waiting,
    );
  } catch (error) {
    if (error instanceof LockHeldError) {
      const message = `${path} is held by ${error.owner}, which adds to it; nothing was written. Try again; if nobody is adding to it, delete ${error.path}`;
      return failure({ code: 'CASE_LOCKED', where: path, message, kind: 'input' });
    }
    const code = errorCode(error);
    if (code === '') throw error;
    const message = `cannot save ${path}: ${systemReason(code)}; the case was left as it was`;
    return failure({ code: 'OUTPUT_FAILED', where: path, message, kind: 'input' });
  }
}

async function readWhole(path: string): Promise<Result<string>> {
  const bytes = await readBytes(path, LARGEST_JSON_BYTES);
  if (!bytes.ok) {
    const missing = !(await exists(path));
    return missing ? failure(...bytes.problems.map((p) => ({ ...p, message: `${p.message} Or start it with case new.` }))) : bytes;
  }
  try {
    return success(decodeText(bytes.value, { strict: true, keepMark: true }));
  } catch {
    const message = `${path} is damaged or no case file: it is not text in UTF-8. It was left as it is; take the last copy of it.`;
    return failure({ code: 'FILE_NOT_READ', where: path, message, kind: 'input' });
  }
}

/** Null when the file no longer holds what was read: then it is left alone. A case that only its owner may read stays so. */
async function replace(path: string, before: string, text: string): Promise<readonly Warning[] | null> {
  const draft = await written(path, text, (await stat(path)).mode & 0o777);
  try {
    const now = await readWhole(path);
    if (!now.ok || now.value !== before) return null;
    return await unstopped(async () => {
      await draft.replace();
      return settled(path);
    });
  } finally {
    await draft.discard();
  }
}

/** Null when the path is taken. */
async function placeNew(path: string, text: string): Promise<readonly Warning[] | null> {
  if (await exists(path)) return null;
  const draft = await written(path, text, null);
  try {
    return await unstopped(async () => ((await draft.placeNew()) ? settled(path) : null));
  } finally {
    await draft.discard();
  }
}

/** The file is in its place by now: that its folder cannot be flushed is no reason to say that it is not, or it would be written twice. */
async function settled(path: string): Promise<readonly Warning[]> {
  try {
    await flushFolder(dirname(path));
    return [];
  } catch (error) {
    const message = `${path} was saved, but the system did not confirm that it would survive a power cut (${errorCode(error)})`;
    return [{ code: 'NOT_CONFIRMED', where: path, message, next: 'look at the disk, and make a copy of the file' }];
  }
}

/** What the case itself gives to say was said when it was read; of saving there is only what came of it. */
function withWarnings(read: Result<Case>, warnings: readonly Warning[]): Result<Case> {
  return read.ok ? success(read.value, warnings) : read;
}

async function written(path: string, text: string, mode: number | null): Promise<Draft> {
  const draft = await Draft.open(path, mode);
  try {
    await draft.write(text);
    await draft.finish();
    return draft;
  } catch (error) {
    await draft.discard();
    throw error;
  }
}

/** Every case of these files, or every problem of all of them. A case that stands in two files is told (`CASE_TWICE`). */
export async function loadCases(paths: readonly string[]): Promise<Result<readonly Case[]>> {
  const records: Case[] = [];
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  const from = new Map<string, string>();
  for (const path of paths) {
    const read = await loadCase(path);
    if (!read.ok) {
      problems.push(...read.problems);
      continue;
    }
    const name = `${read.value.code} ${read.value.side} ${read.value.digit}`;
    const before = from.get(name);
    if (before !== undefined)
      problems.push({
        code: 'CASE_TWICE',
        where: path,
        message: `${path} holds the case ${name}, and ${before} does too; name one of them.`,
        kind: 'input',
      });
    from.set(name, path);
    records.push(read.value);
    warnings.push(...read.warnings);
  }
  return problems.length > 0 ? failure(...problems) : success(records, warnings);
}
