/** Letters of a file name before the ending; leaves room for the ending under every system's limit. */
const LONGEST_STEM = 80;

/**
 * A safe file name from free text: ASCII letters, digits, `-` and `_`, accents dropped, anything else a `-`, and `_mm` before the ending, so
 * that nobody reads the drawing in inches. Text without a usable character becomes `pattern`.
 */
export function outputFileName(text: string, extension: string): string {
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '');
  const stem = plain
    .replace(/[^A-Za-z0-9_-]+/g, '-')
    .replace(/-{2,}/g, '-')
    .slice(0, LONGEST_STEM)
    .replace(/^[-_]+|[-_]+$/g, '');
  const named = stem.replace(/_mm$/, '') || 'pattern';
  return `${named}_mm.${extension}`;
}
