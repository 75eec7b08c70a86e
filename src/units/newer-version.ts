import { getOwn } from './get-own.ts';
import type { Problem } from './result.ts';

const SCHEMA = /^knucklewright\/([a-z-]{1,30})@(\d{1,9})$/;

/**
 * `FILE_NEWER` when a file says that it has a later version of its kind than this program knows; null for any other file, whatever is wrong
 * with it.
 * @param known the schema of the kind that is read, as `knucklewright/hand@1`
 */
export function newerVersion(json: unknown, known: string, source = ''): Problem | null {
  const written = getOwn(json, 'schema');
  const found = typeof written === 'string' ? SCHEMA.exec(written) : null;
  const own = SCHEMA.exec(known);
  if (!found || !own || found[1] !== own[1] || Number(found[2]) <= Number(own[2])) return null;
  const message = `${source === '' ? '' : `${source}: `}${newerWords(Number(found[2]), Number(own[2]), String(own[1]))}`;
  return { code: 'FILE_NEWER', where: 'schema', message, kind: 'input' };
}

export function newerWords(found: number, known: number, kind: string): string {
  return `the file has version ${found} of the ${kind} file, and this program knows up to version ${known}: a newer knucklewright wrote it. Use that one; the file was left as it is`;
}
