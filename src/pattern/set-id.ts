import { sha256 } from '../units/sha-256.ts';

/** Digits of a set id. */
const DIGITS = 16;
export const SET_ID = /^[0-9a-f]{16}$/;

/** What one file of a set may have and another not: the machine it is for, the language of its words, a paper strip to try first, its number among the sheets of a layout. */
const OF_ONE_FILE: ReadonlySet<string> = new Set(['cutter', 'language', 'number', 'paperTrial', 'set']);

/**
 * The id of the set of files that one pattern is written in: 16 hex digits of the SHA-256 of the inputs it carries, the version of its
 * geometry among them, whatever the order of their keys. Kerf, cutter and paper make no other set; the sheets of one layout are one set.
 */
export function setIdOf(inputs: Readonly<Record<string, unknown>>): string {
  const shared = Object.fromEntries(Object.entries(inputs).filter(([key]) => !OF_ONE_FILE.has(key)));
  return digestOf(shared);
}

/** 16 hex digits for any JSON, the same whatever the order of keys. */
export function digestOf(json: unknown): string {
  return sha256(JSON.stringify(json, (_, value: unknown) => sorted(value))).slice(0, DIGITS);
}

function sorted(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}
