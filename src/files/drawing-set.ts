import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { SET_ID, setIdOf } from '../pattern/set-id.ts';
import { getOwn } from '../units/get-own.ts';
import { visible } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { DXF_SET } from '../writers/inputs-text.ts';
import { embeddedInputs } from './file-inputs.ts';
import { readHead } from './read-file.ts';

/** Endings of the files that one drawing is written in. */
const ENDINGS = /\.(svg|dxf|pdf|report\.txt|json)$/i;
/** Sheets of one layout are one set, whatever their number, and so are the pages of its cut list. */
const NUMBERED = /^(sheet|cut-list)-\d{2,}_mm$/;
/** Enough to hold what a file says of itself; an attachment of a PDF may stand at its end. */
const HEAD_BYTES = 262_144;
const LARGEST_PDF = 20_000_000;
const MOST_SIBLINGS = 500;

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

/** Names of the files in the same folder that belong to the same drawing by their names; the file itself is not among them. */
async function siblingsOf(path: string): Promise<readonly string[]> {
  const own = basename(path);
  const stem = own.replace(ENDINGS, '');
  if (stem === own || !stem.endsWith('_mm')) return [];
  const family = NUMBERED.exec(stem)?.[1];
  const names = await readdir(dirname(path)).catch(() => []);
  return names
    .filter((name) => {
      const other = name.replace(ENDINGS, '');
      if (name === own || name === other) return false;
      return other === stem || (family !== undefined && NUMBERED.exec(other)?.[1] === family);
    })
    .sort()
    .slice(0, MOST_SIBLINGS);
}

/** The siblings of a file that carry another set's id than `id`. What carries none is not ours to judge. */
export async function othersOf(path: string, id: string): Promise<readonly string[]> {
  const others: string[] = [];
  for (const name of await siblingsOf(path)) {
    const bytes = await readHead(join(dirname(path), name), /\.pdf$/i.test(name) ? LARGEST_PDF : HEAD_BYTES);
    const theirs = bytes === null ? null : setIdIn(bytes);
    if (theirs !== null && theirs !== id) others.push(name);
  }
  return others;
}

/** `SET_MIXED` when files that belong together by their names were drawn from different inputs; null when they were not. */
export async function mixedSet(path: string, bytes: Uint8Array): Promise<Problem | null> {
  const id = setIdIn(bytes);
  const others = id === null ? [] : await othersOf(path, id);
  return others.length === 0 ? null : mixed(path, others, 'Use none of them; draw all formats again together with --force');
}

export function mixed(path: string, others: readonly string[], next: string): Problem {
  const named = others.slice(0, 5).map(visible).join(', ') + (others.length > 5 ? ` and ${others.length - 5} more` : '');
  const message = `${visible(path)} and ${named} have one name but are of different patterns, as a run leaves them that was stopped half-way. ${next}.`;
  return { code: 'SET_MIXED', where: path, message, kind: 'input' };
}
