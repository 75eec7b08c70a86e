import { inflateSync } from 'node:zlib';
import { type Budget, LIMITS, LimitReached, Unreadable } from '../drawing.ts';

/** Values of PDF (ISO 32000, 7.3). Names keep their slash off; a string's bytes are one character each. */
export type PdfValue =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'name'; readonly value: string }
  | { readonly kind: 'string'; readonly value: string }
  | { readonly kind: 'ref'; readonly value: number }
  | { readonly kind: 'array'; readonly value: readonly PdfValue[] }
  | { readonly kind: 'dict'; readonly value: ReadonlyMap<string, PdfValue> }
  /** An operator or keyword: `m`, `true`, `stream`. */
  | { readonly kind: 'word'; readonly value: string };

interface PdfLexer {
  /** The next value, null at the end. */
  next(): PdfValue | null;
  position(): number;
  jump(to: number): void;
}

const BLANKS = /[\0\t\n\f\r ]*/y;
const COMMENT = /%[^\r\n]*/y;
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)/y;
const NAME = /\/([^\0\t\n\f\r ()<>[\]{}/%]*)/y;
const WORD = /[^\0\t\n\f\r ()<>[\]{}/%]+/y;
const REFERENCE = /[\0\t\n\f\r ]+\d+[\0\t\n\f\r ]+R(?![A-Za-z0-9])/y;
const HEX = /<([0-9a-fA-F\s]*)>/y;
const ESCAPES: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** Reads values from latin1 text, from `start` on. Unknown bytes are passed over, as readers do. */
export function pdfLexer(text: string, start = 0): PdfLexer {
  let at = start;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const string = (): PdfValue => {
    let depth = 1;
    let value = '';
    for (at++; at < text.length; at++) {
      const c = text[at] ?? '';
      if (c === '\\') {
        const octal = /^[0-7]{1,3}/.exec(text.slice(at + 1, at + 4))?.[0];
        if (octal !== undefined) value += String.fromCharCode(Number.parseInt(octal, 8) & 255);
        else value += ESCAPES[text[at + 1] ?? ''] ?? text[at + 1] ?? '';
        at += octal?.length ?? 1;
        continue;
      }
      if (c === '(') depth++;
      else if (c === ')' && --depth === 0) break;
      value += c;
    }
    at++;
    return { kind: 'string', value };
  };
  const list = (end: string, depth: number): PdfValue[] => {
    const found: PdfValue[] = [];
    for (let value = read(depth + 1); value !== null; value = read(depth + 1)) {
      if (value.kind === 'word' && value.value === end) break;
      found.push(value);
    }
    return found;
  };
  const read = (depth: number): PdfValue | null => {
    if (depth > LIMITS.depth) throw new LimitReached(`values stand more than ${LIMITS.depth} deep in each other`);
    // One after the other: a pattern of both, repeated, keeps every step of a long blank in mind.
    do take(BLANKS);
    while (take(COMMENT));
    if (at >= text.length) return null;
    const c = text[at] ?? '';
    if (c === '/')
      return {
        kind: 'name',
        value: (take(NAME)?.[1] ?? '').replace(/#([0-9a-fA-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
      };
    if (c === '(') return string();
    if (text.startsWith('<<', at)) {
      at += 2;
      const entries = list('>>', depth);
      const dict = new Map<string, PdfValue>();
      for (let k = 0; k + 1 < entries.length; k += 2) {
        const [key, value] = [entries[k], entries[k + 1]];
        if (key?.kind === 'name' && value) dict.set(key.value, value);
      }
      return { kind: 'dict', value: dict };
    }
    if (text.startsWith('>>', at)) {
      at += 2;
      return { kind: 'word', value: '>>' };
    }
    if (c === '<') {
      const found = take(HEX);
      if (!found) at++;
      const hex = (found?.[1] ?? '').replace(/\s/g, '');
      return {
        kind: 'string',
        value: (hex.match(/..?/g) ?? []).map((pair) => String.fromCharCode(Number.parseInt(pair.padEnd(2, '0'), 16))).join(''),
      };
    }
    if (c === '[') {
      at++;
      return { kind: 'array', value: list(']', depth) };
    }
    if (c === ']') {
      at++;
      return { kind: 'word', value: ']' };
    }
    const number = take(NUMBER);
    if (number) {
      const value = Number(number[0]);
      if (/^\d+$/.test(number[0]) && take(REFERENCE)) return { kind: 'ref', value };
      return { kind: 'number', value };
    }
    const word = take(WORD);
    if (word) return { kind: 'word', value: word[0] };
    at++;
    return { kind: 'word', value: c };
  };
  return {
    next: () => read(0),
    position: () => at,
    jump(to) {
      at = to;
    },
  };
}

export interface PdfObject {
  readonly value: PdfValue;
  /** The bytes of its stream as they stand in the file, one character each; null when it has none. */
  readonly raw: string | null;
}

/** The objects of a PDF, found by looking for them, not by its table: a table may be broken, compressed or missing. */
export interface PdfObjects {
  /** The value itself, or what the reference leads to. */
  resolve(value: PdfValue | undefined): PdfValue | undefined;
  object(value: PdfValue | undefined): PdfObject | undefined;
  /** The unpacked stream, unpacked once however often it is asked for; null when it is packed in a way that is not read. */
  content(object: PdfObject): string | null;
  readonly all: ReadonlyMap<number, PdfObject>;
}

const OBJECT = /(\d{1,10})[\0\t\n\f\r ]+\d{1,5}[\0\t\n\f\r ]+obj(?![a-zA-Z])/g;
export function pdfObjects(bytes: Uint8Array, budget: Budget): PdfObjects {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  const all = new Map<number, PdfObject>();
  let from = 0;
  for (;;) {
    OBJECT.lastIndex = from;
    const found = OBJECT.exec(text);
    if (!found) break;
    budget.item();
    const lexer = pdfLexer(text, OBJECT.lastIndex);
    const value = lexer.next();
    if (!value) break;
    from = lexer.position();
    const begins = /^[\0\t\n\f\r ]*stream(\r\n|\n|\r)/.exec(text.slice(from, from + 40));
    let raw: string | null = null;
    if (begins && value.kind === 'dict') {
      const start = from + begins[0].length;
      const stated = value.value.get('Length');
      const length =
        stated?.kind === 'number' && /^\s*endstream/.test(text.slice(start + stated.value, start + stated.value + 20)) ? stated.value : -1;
      const end = length >= 0 ? start + length : text.indexOf('endstream', start);
      if (end < 0) throw new Unreadable('a stream has no end: the file may be cut off');
      raw = text.slice(start, end);
      from = end;
    }
    all.set(Number(found[1]), { value, raw });
  }
  const resolve = (value: PdfValue | undefined): PdfValue | undefined => {
    let current = value;
    for (let k = 0; current?.kind === 'ref' && k < 16; k++) current = all.get(current.value)?.value;
    return current?.kind === 'ref' ? undefined : current;
  };
  const unpacked = new Map<PdfObject, string>();
  const content = (object: PdfObject): string | null => {
    if (object.raw === null || object.value.kind !== 'dict') return null;
    const filter = resolve(object.value.value.get('Filter'));
    const names = filter?.kind === 'array' ? filter.value.map((f) => resolve(f)) : filter ? [filter] : [];
    if (names.length === 0) return object.raw;
    const [only] = names;
    if (names.length > 1 || only?.kind !== 'name' || !['FlateDecode', 'Fl'].includes(only.value)) return null;
    const known = unpacked.get(object);
    if (known !== undefined) return known;
    const text = inflated(object.raw);
    budget.unpacked(text.length);
    unpacked.set(object, text);
    return text;
  };
  for (const object of [...all.values()]) unpackObjects(object, all, content, budget);
  const object = (value: PdfValue | undefined): PdfObject | undefined => {
    if (value?.kind === 'ref') return all.get(value.value);
    return value ? { value, raw: null } : undefined;
  };
  if (/\/Encrypt[\0\t\n\f\r ]+\d/.test(text)) throw new Unreadable('the PDF is encrypted');
  return { resolve, object, content, all };
}

/** Taking a PDF's values apart takes about as long for one sign as other texts for so many. */
export const CHARACTERS_A_VALUE_SIGN = 4;

function inflated(raw: string): string {
  try {
    return inflateSync(Buffer.from(raw, 'latin1'), { maxOutputLength: LIMITS.bytes }).toString('latin1');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ERR_BUFFER_TOO_LARGE')
      throw new LimitReached(`a stream unpacks to more than ${LIMITS.bytes} bytes`);
    throw new Unreadable('a packed stream is damaged');
  }
}

/** Objects packed into an object stream (ISO 32000, 7.5.7). What stands in the file itself wins over them. */
function unpackObjects(object: PdfObject, all: Map<number, PdfObject>, content: PdfObjects['content'], budget: Budget): void {
  if (object.value.kind !== 'dict') return;
  const dict = object.value.value;
  const [type, count, first] = [dict.get('Type'), dict.get('N'), dict.get('First')];
  if (type?.kind !== 'name' || type.value !== 'ObjStm' || count?.kind !== 'number' || first?.kind !== 'number') return;
  const text = content(object);
  if (text === null) return;
  const heads = pdfLexer(text.slice(0, first.value));
  for (let k = 0; k < Math.min(count.value, LIMITS.items); k++) {
    budget.item();
    const [id, offset] = [heads.next(), heads.next()];
    if (id?.kind !== 'number' || offset?.kind !== 'number') return;
    const lexer = pdfLexer(text, first.value + offset.value);
    const value = lexer.next();
    budget.characters(CHARACTERS_A_VALUE_SIGN * (lexer.position() - first.value - offset.value));
    if (value && !all.has(id.value)) all.set(id.value, { value, raw: null });
  }
}

export type Dict = ReadonlyMap<string, PdfValue>;

/** What a value or reference stands for, where it is of that kind. */
export function dictOf(value: PdfValue | undefined, objects: PdfObjects): Dict | null {
  const found = objects.resolve(value);
  return found?.kind === 'dict' ? found.value : null;
}

export function numberOf(value: PdfValue | undefined, objects: PdfObjects): number | null {
  const found = objects.resolve(value);
  return found?.kind === 'number' ? found.value : null;
}

export function numbersOf(value: PdfValue | undefined, objects: PdfObjects): readonly number[] {
  const found = objects.resolve(value);
  return found?.kind === 'array' ? found.value.map((one) => numberOf(one, objects) ?? 0) : [];
}

/** UTF-16 with its mark, else one byte a letter. */
export function readable(bytes: string): string {
  if (!bytes.startsWith('\u00fe\u00ff')) return bytes;
  return new TextDecoder('utf-16be').decode(Uint8Array.from(bytes.slice(2), (c) => c.charCodeAt(0)));
}
