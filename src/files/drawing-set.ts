import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { gunzipSync, inflateSync } from 'node:zlib';
import { SET_ID, setIdOf } from '../pattern/set-id.ts';
import { decodeText, drawingFormat, isGzip } from '../units/file-format.ts';
import { getOwn } from '../units/json-text.ts';
import { failure, type Problem, type Result } from '../units/result.ts';
import { DXF_SET, inputsFromDxf, inputsFromPdf, inputsFromSvg } from '../writers/inputs-text.ts';
import { readHead } from './read-file.ts';

/** Ending of the report that stands beside the files of one drawing (output rule 14). */
export const REPORT_ENDING = 'report.txt';
/** Ending of the words that a drawing for a machine leaves out. */
export const WORDS_ENDING = 'txt';
/** Endings of the files that one drawing is written in. */
const ENDINGS = ['svg', 'dxf', 'pdf', REPORT_ENDING, WORDS_ENDING];
const ENDING = /\.(svg|dxf|pdf|report\.txt|txt)$/i;
/** Sheets of one layout are one set, whatever their number, and so are the pages of its cut list. */
const NUMBERED = /^(sheet|cut-list)-\d{2,}_mm$/;
/** Enough to hold what a file says of itself; an attachment of a PDF may stand at its end. */
const HEAD_BYTES = 262_144;
const LARGEST_PDF = 20_000_000;

/** The id of the set that a file belongs to: as it says itself or, in a file of an earlier version, of the inputs it carries. Null for other files. */
export function setIdIn(bytes: Uint8Array): string | null {
  const inputs = embeddedInputs(bytes);
  if (inputs.ok && typeof inputs.value === 'object' && inputs.value !== null) {
    const stated = getOwn(inputs.value, 'set');
    if (typeof stated === 'string' && SET_ID.test(stated)) return stated;
    return setIdOf(inputs.value as Readonly<Record<string, unknown>>);
  }
  const text = new TextDecoder('latin1').decode(bytes.subarray(0, HEAD_BYTES));
  const said = new RegExp(`(?:${DXF_SET}|"set": "|^set {9})([0-9a-f]{16})\\b`, 'm').exec(text);
  return said?.[1] ?? null;
}

/** Names that files of the same drawing, or of the same layout, have or would have; the file itself is not among them. */
async function siblingsOf(path: string): Promise<readonly string[]> {
  const own = basename(path);
  const stem = own.replace(ENDING, '');
  if (stem === own || !stem.endsWith('_mm')) return [];
  const family = NUMBERED.exec(stem)?.[1];
  if (family === undefined) return ENDINGS.map((ending) => `${stem}.${ending}`).filter((name) => name !== own);
  const names = await readdir(dirname(path)).catch(() => []);
  return names.filter((name) => name !== own && ENDING.test(name) && NUMBERED.exec(name.replace(ENDING, ''))?.[1] === family).sort();
}

/**
 * The names in a folder of what an earlier layout of this program left there and the new one does not have: sheets and list pages with
 * other numbers. Only files that carry a set's id.
 */
export async function outdatedSheets(folder: string, names: ReadonlySet<string>): Promise<readonly string[]> {
  const found = await readdir(folder).catch(() => []);
  const outdated: string[] = [];
  for (const name of found) {
    if (names.has(name) || !ENDING.test(name) || !NUMBERED.test(name.replace(ENDING, ''))) continue;
    const bytes = await readHead(join(folder, name), /\.pdf$/i.test(name) ? LARGEST_PDF : HEAD_BYTES);
    if (bytes.ok && setIdIn(bytes.value) !== null) outdated.push(name);
  }
  return outdated.sort();
}

/** The line by which a text belongs to a set. */
export function setLine(id: string): string {
  return `set         ${id}\n`;
}

/** The siblings of a file that carry another set's id than `id`. What carries none is not ours to judge. */
async function othersOf(path: string, id: string, leaving: ReadonlySet<string> = new Set()): Promise<readonly string[]> {
  const others: string[] = [];
  for (const name of await siblingsOf(path)) {
    if (leaving.has(name)) continue;
    const bytes = await readHead(join(dirname(path), name), /\.pdf$/i.test(name) ? LARGEST_PDF : HEAD_BYTES);
    const theirs = bytes.ok ? setIdIn(bytes.value) : null;
    if (theirs !== null && theirs !== id) others.push(name);
  }
  return others;
}

/**
 * `SET_MIXED` when files that are to be written would stand beside others of their names that are of another pattern; null when they would
 * not. What is written anew or taken away is no matter.
 * @param leaving names of files that the run replaces or takes away
 */
export async function wouldMix(folder: string, name: string, id: string, leaving: ReadonlySet<string>): Promise<Problem | null> {
  const path = join(folder, name);
  const others = await othersOf(path, id, leaving);
  if (others.length === 0) return null;
  const reports = others.filter((file) => file.endsWith(`.${REPORT_ENDING}`));
  const words = others.filter((file) => file.endsWith(`.${WORDS_ENDING}`) && !reports.includes(file));
  const formats = ['svg', 'dxf', 'pdf'].filter((format) => [...others, ...leaving].some((file) => file.endsWith(`.${format}`)));
  const ways = [
    ...(words.length > 0 ? [`take ${words.join(', ')} away`] : []),
    ...(words.length < others.length
      ? [`write all of them together with --formats ${formats.join(',')}${reports.length > 0 ? ' --reports' : ''} --force`]
      : []),
  ].join(' and ');
  return mixed(path, others, `${ways.charAt(0).toUpperCase()}${ways.slice(1)}, or choose another folder`);
}

/** The files beside one that have its name but another set's id; none for a file that carries no id. */
export async function filesOfAnotherSet(path: string, bytes: Uint8Array): Promise<readonly string[]> {
  const id = setIdIn(bytes);
  return id === null ? [] : othersOf(path, id);
}

/** `SET_MIXED` when files that belong together by their names were drawn from different inputs; null when they were not. */
export async function mixedSet(path: string, bytes: Uint8Array): Promise<Problem | null> {
  const others = await filesOfAnotherSet(path, bytes);
  return others.length === 0
    ? null
    : mixed(
        path,
        others,
        'A run was stopped half-way, or only one of them was drawn again: use none, and draw all formats again together with --force',
      );
}

function mixed(path: string, others: readonly string[], next: string): Problem {
  const named = others.slice(0, 5).join(', ') + (others.length > 5 ? ` and ${others.length - 5} more` : '');
  const message = `${path} and ${named} have one name but are of different patterns. ${next}.`;
  return { code: 'SET_MIXED', where: path, message, kind: 'input' };
}

const LARGEST_INFLATED_BYTES = 2_000_000;
const LARGEST_UNPACKED_BYTES = 20_000_000;

/**
 * What a drawing carries in its metadata, comments or attachment, parsed but not yet checked; an .svgz is unpacked first. Fails with
 * `FILE_KIND`, `INPUTS_MISSING` or `INPUTS_BROKEN`.
 */
export function embeddedInputs(packed: Uint8Array): Result<unknown> {
  const bytes = unpacked(packed);
  const format = bytes === null ? null : drawingFormat(bytes);
  if (bytes !== null && format === 'pdf') return inputsFromPdf(bytes, inflated);
  if (bytes !== null && format === 'svg') return inputsFromSvg(decodeText(bytes));
  if (bytes !== null && format === 'dxf') return inputsFromDxf(decodeText(bytes));
  const message = 'is no SVG, DXF or PDF that can be read; name a file that knucklewright drew';
  return failure({ code: 'FILE_KIND', where: '', message, kind: 'input' });
}

/** Null for what is damaged, or larger than any drawing of ours. */
function unpacked(bytes: Uint8Array): Uint8Array | null {
  if (!isGzip(bytes)) return bytes;
  try {
    return gunzipSync(bytes, { maxOutputLength: LARGEST_UNPACKED_BYTES });
  } catch {
    return null;
  }
}

/** What deflate left, or null where it is something else. */
function inflated(bytes: Uint8Array): Uint8Array | null {
  try {
    return inflateSync(bytes, { maxOutputLength: LARGEST_INFLATED_BYTES });
  } catch {
    // Most streams of a PDF are not deflated text; that is no fault of the file.
    return null;
  }
}
