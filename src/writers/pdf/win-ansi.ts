/** Characters of Windows code page 1252 beyond Latin-1, which PDF calls WinAnsiEncoding (ISO 32000-1, annex D). */
const BEYOND_LATIN = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** Each character that the standard fonts of a PDF cannot show, once, in order of appearance. */
export function notWinAnsi(text: string): readonly string[] {
  const unknown = [...text.normalize('NFC')].filter((c) => !/[\x20-\x7e\u00a0-\u00ac\u00ae-\u00ff]/.test(c) && !BEYOND_LATIN.includes(c));
  return [...new Set(unknown)];
}
