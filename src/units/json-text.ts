import { quote, visible } from './quote.ts';
import { failure, type Result, success } from './result.ts';

/** Far above any hand, block, option or case file; keeps a wrong file from filling the memory. */
export const LARGEST_JSON_BYTES = 1_000_000;

/**
 * The value in a JSON text, unchecked; a byte order mark is passed over. One problem when the text is too large
 * (`FILE_TOO_LARGE`), not JSON (`JSON_SYNTAX`, with line and column counted from 1), has a number beyond all numbers (`JSON_NUMBER`), or a name
 * twice in one object (`JSON_NAME_TWICE`), of which readers take one or the other.
 * @param source name of the file, set before the message
 * @param largest in bytes of UTF-8
 */
export function parseJsonText(text: string, source?: string, largest = LARGEST_JSON_BYTES): Result<unknown> {
  const prefix = source === undefined ? '' : `${source}: `;
  if (text.length > largest || new TextEncoder().encode(text).length > largest) {
    const message = `${prefix}the file is larger than ${largest} bytes, the most that is read; is it the right file?`;
    return failure({ code: 'FILE_TOO_LARGE', where: '', message, kind: 'input' });
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    const value = JSON.parse(body) as unknown;
    const where = MAY_BE_INFINITE.test(body) ? infiniteIn(value) : null;
    const twice = where === null ? repeatedName(body) : null;
    if (twice !== null) {
      const line = body.slice(0, twice.offset).split(/\r\n|\r|\n/).length;
      const message = `${prefix}line ${line}: ${quote(twice.name)} stands twice in one object, and only one of the two would count; remove the wrong one`;
      return failure({ code: 'JSON_NAME_TWICE', where: twice.name, message, kind: 'input' });
    }
    if (where === null) return success(value);
    const message = `${prefix}${where === '' ? 'the number' : `${where}: the number`} is too large to be read; at most about 1e308`;
    return failure({ code: 'JSON_NUMBER', where, message, kind: 'input' });
  } catch {
    const { offset, expected } = jsonFault(body);
    const before = body.slice(0, offset).split(/\r\n|\r|\n/);
    const column = Array.from(before.at(-1) ?? '').length + 1;
    const found = offset >= body.length ? 'the end of the file' : describe(body, offset);
    const message = `${prefix}not JSON at line ${before.length}, column ${column}: expected ${expected}, found ${found}`;
    return failure({ code: 'JSON_SYNTAX', where: '', message, kind: 'input' });
  }
}

/** The first name that an object of a sound JSON text has twice; null when there is none. */
function repeatedName(text: string): { readonly name: string; readonly offset: number } | null {
  const open: (Set<string> | null)[] = [];
  let last: { readonly text: string; readonly offset: number } | null = null;
  for (const { 0: token, index } of text.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\]:]/g)) {
    if (token === '{') open.push(new Set());
    else if (token === '[') open.push(null);
    else if (token === '}' || token === ']') open.pop();
    else if (token !== ':') last = { text: token, offset: index };
    else if (last !== null) {
      const name = JSON.parse(last.text) as string;
      const names = open.at(-1);
      if (names?.has(name)) return { name, offset: last.offset };
      names?.add(name);
    }
  }
  return null;
}

/** A number of the grammar may be larger than any that can be held; it is then read as infinity, without a word. */
const MAY_BE_INFINITE = /\d[eE]\+?\d{3}|\d{309}/;

/** Where the first infinite number stands in a value, as a path; '' for the value itself, null when there is none. Never recurses. */
function infiniteIn(value: unknown): string | null {
  const open: { readonly where: string; readonly value: unknown }[] = [{ where: '', value }];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (at.value === Number.POSITIVE_INFINITY || at.value === Number.NEGATIVE_INFINITY) return at.where;
    if (typeof at.value !== 'object' || at.value === null) continue;
    for (const [key, inner] of Object.entries(at.value))
      open.push({ where: `${at.where}${at.where && '.'}${visible(key)}`.slice(-LONGEST_PATH), value: inner });
  }
  return null;
}

/** A path that a person can still read; of a longer one the end. */
const LONGEST_PATH = 200;

function describe(text: string, offset: number): string {
  const code = text.codePointAt(offset) ?? 0;
  const character = String.fromCodePoint(code);
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(character) ? character : `the character U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}

interface Fault {
  readonly offset: number;
  readonly expected: string;
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/**
 * Where a text first leaves the grammar of RFC 8259, and what the grammar wants there. Engines word and place this differently
 * (some give no place at all), so that their messages cannot be used. A text that is JSON gives its own end.
 */
function jsonFault(text: string): Fault {
  let at = 0;
  /** Closing signs of what is open. */
  const open: ('}' | ']')[] = [];
  let state: 'value' | 'first-value' | 'first-name' | 'name' | 'colon' | 'after' = 'value';
  const skip = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return false;
    at += match[0].length;
    return true;
  };
  const string = (): Fault | null => {
    for (at++; at < text.length; ) {
      const c = text.charCodeAt(at);
      if (c === 0x22) {
        at++;
        return null;
      }
      if (c < 0x20) return { offset: at, expected: 'the closing double quote on the same line' };
      if (c !== 0x5c) at++;
      else if (!skip(ESCAPE)) return { offset: at, expected: 'an escape that JSON knows' };
    }
    return { offset: at, expected: 'a closing double quote' };
  };
  for (;;) {
    while (' \t\r\n'.includes(text[at] ?? '-')) at++;
    const c = text[at] ?? '';
    const close = open.at(-1);
    if (state === 'after') {
      if (close === undefined) return { offset: at, expected: 'nothing more' };
      if (c === close) open.pop();
      else if (c === ',') state = close === '}' ? 'name' : 'value';
      else return { offset: at, expected: `a comma or ${close}` };
      at++;
    } else if (state === 'colon') {
      if (c !== ':') return { offset: at, expected: 'a colon' };
      at++;
      state = 'value';
    } else if ((state === 'first-name' || state === 'first-value') && c === close) {
      open.pop();
      at++;
      state = 'after';
    } else if (state === 'first-name' || state === 'name') {
      if (c !== '"') return { offset: at, expected: 'a name in double quotes' };
      const fault = string();
      if (fault !== null) return fault;
      state = 'colon';
    } else if (c === '{' || c === '[') {
      open.push(c === '{' ? '}' : ']');
      at++;
      state = c === '{' ? 'first-name' : 'first-value';
    } else if (c === '"') {
      const fault = string();
      if (fault !== null) return fault;
      state = 'after';
    } else if (skip(WORD) || skip(NUMBER)) state = 'after';
    else return { offset: at, expected: 'a value' };
  }
}

/** The value of an own key of an object or list, undefined for anything else; never reaches a prototype. */
export function getOwn(value: unknown, key: PropertyKey): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<PropertyKey, unknown>)[key]
    : undefined;
}
