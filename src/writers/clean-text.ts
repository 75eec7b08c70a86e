/** Control characters, halves of surrogate pairs and the two code points that XML forbids everywhere. */
const FORBIDDEN = /[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu;
const SPACES = /[\s\u0085]+/gu;

/** Text that is safe on one line of any file: every run of white space (line breaks, no-break spaces) is one space, control characters are gone. */
export function cleanText(text: string): string {
  return text.replace(SPACES, ' ').replace(FORBIDDEN, '').trim();
}

/** The same in ASCII: what lies outside is written `\uXXXX`, one per UTF-16 unit, as JSON does. */
export function asciiText(text: string): string {
  return cleanText(text).replace(/[^\x20-\x7e]/g, escaped);
}

/** `\uXXXX` of one UTF-16 unit. */
export function escaped(unit: string): string {
  return `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

/** Characters of Windows code page 1252 beyond Latin-1, which PDF calls WinAnsiEncoding (ISO 32000-1, annex D). */
const BEYOND_LATIN = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** Each character that the standard fonts of a PDF cannot show, once, in order of appearance. */
export function notWinAnsi(text: string): readonly string[] {
  const unknown = [...text.normalize('NFC')].filter((c) => !/[\x20-\x7e\u00a0-\u00ac\u00ae-\u00ff]/.test(c) && !BEYOND_LATIN.includes(c));
  return [...new Set(unknown)];
}
