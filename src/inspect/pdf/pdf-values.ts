import { LIMITS, LimitReached } from '../drawing.ts';

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

export interface PdfLexer {
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
