import { quote } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';

/** Unknown characters that a message names; the rest are counted. */
const MOST_NAMED = 10;

/** `LABEL_CHARACTERS_UNKNOWN` for a label with characters that the stroke alphabet has not; none where it has all. */
export function withoutStrokes(text: string, unknown: readonly string[], where: string): readonly Problem[] {
  const message = `label ${quote(text)}: no strokes for ${named(unknown)}; use letters, digits and punctuation that the stroke alphabet has`;
  return unknown.length > 0 ? [{ code: 'LABEL_CHARACTERS_UNKNOWN', where, message, kind: 'input' }] : [];
}

/** The same for words of a printed page, which are set in a PDF's standard fonts. */
export function withoutLetters(text: string, unknown: readonly string[], where: string): readonly Problem[] {
  const message = `${where}: ${quote(text)}: the PDF's font has no ${named(unknown)}; write it in Latin letters`;
  return unknown.length > 0 ? [{ code: 'LABEL_CHARACTERS_UNKNOWN', where, message, kind: 'input' }] : [];
}

function named(unknown: readonly string[]): string {
  // What cannot be seen comes as its code point already, or is shown by it alone.
  const shown = unknown.slice(0, MOST_NAMED).map((c) => {
    if (c.startsWith('U+')) return c;
    const code = `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
    return /[\p{C}\p{M}\p{Z}]/u.test(c) ? code : `${quote(c)} (${code})`;
  });
  return [...shown, ...(unknown.length > MOST_NAMED ? [`${unknown.length - MOST_NAMED} more`] : [])].join(', ');
}
