/** Decimals written for a coordinate in mm. Four decimals are 0.1 µm, far below any cutter. */
export const COORDINATE_DECIMALS = 4;
/** Decimals written for letters and what is only read: 0.01 mm is far below the line's own width. */
export const READ_DECIMALS = 2;
/** Decimals written for a bulge; at the longest arc drawn (about 1 m) nine keep the arc's height within 1 µm. */
export const BULGE_DECIMALS = 9;
/** Of what is only read, whose arcs are no longer than a few mm: 1 µm. */
export const READ_BULGE_DECIMALS = 4;

const LARGEST_WRITABLE = 1e12;

/**
 * The one road from a number to text: fixed decimals, never an exponent, "-0", a comma or NaN.
 * @param value any finite number below 1e12 in size
 * @param decimals digits after the point, 0 to 12
 * @throws RangeError when the value is not finite or too large to be written without an exponent
 */
export function fixed(value: number, decimals: number): string {
  if (!isWritable(value)) throw new RangeError(`cannot write ${String(value)} as a number: it must be finite and below 1e12`);
  const text = value.toFixed(decimals);
  // Only a small negative number can come out as "-0".
  return value < 0 && value > -1 && Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Whether `fixed` takes the value. */
export function isWritable(value: number): boolean {
  return Number.isFinite(value) && Math.abs(value) < LARGEST_WRITABLE;
}

/** A number for a reader's eye: at most `decimals` digits, trailing zeros dropped ("84.5", "20"). Same errors as `fixed`. */
export function plain(value: number, decimals = 2): string {
  const text = fixed(value, decimals);
  if (decimals === 0) return text;
  let end = text.length;
  while (text[end - 1] === '0') end--;
  return text.slice(0, text[end - 1] === '.' ? end - 1 : end);
}

/** A number in as few characters as SVG takes: `plain` without the zero before the point (".5", "-.25", "0"). Same errors as `fixed`. */
export function shortest(value: number, decimals = 2): string {
  const text = plain(value, decimals);
  if (text.startsWith('0.')) return text.slice(1);
  return text.startsWith('-0.') ? `-${text.slice(2)}` : text;
}

/** Rounds to the decimals that are written, so that a library which formats by itself gets the same number. */
export function rounded(value: number, decimals: number): number {
  return Number(fixed(value, decimals));
}

/** How many of what, in English: `1 case`, `2 cases`. */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}

/** The only forms in which a person's number is read: a point or a comma is the decimal sign, and there is no other separator. */
const DECIMAL = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const FRACTION = String.raw`\d+ ?/ ?\d+`;
const MIXED = String.raw`\d+[ -]${FRACTION}`;
/** Source of a regular expression for one number without sign: decimal, fraction, or whole number with fraction. No groups. */
export const NUMBER_PATTERN = `(?:${MIXED}|${FRACTION}|${DECIMAL})`;

const WHOLE = new RegExp(`^${NUMBER_PATTERN}$`);

/** Text made even before reading: spaces of every kind to one blank, "½" to " 1/2", the fraction slash to "/". */
export function tidyNumberText(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (c) => ` ${c.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * The value of a tidied unsigned number, or null when the text is none: "84", "84,5", "84.5", ".5", "5/16", "3 5/16", "3-5/16".
 * "1,234" is 1.234: the comma is always a decimal comma. A fraction behind a whole number must be less than one.
 * No exponent, sign, group separator, hexadecimal or infinity is read.
 */
export function readNumber(tidied: string): number | null {
  if (!WHOLE.test(tidied)) return null;
  const parts = tidied.match(/[\d.,]+/g) ?? [];
  if (!tidied.includes('/')) return finite(Number((parts[0] ?? '').replace(',', '.')));
  const [denominator, numerator, whole] = parts.reverse().map(Number);
  if (denominator === undefined || numerator === undefined || denominator === 0) return null;
  if (whole !== undefined && numerator >= denominator) return null;
  return finite((whole ?? 0) + numerator / denominator);
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** Why a tidied text is no number, as the end of a sentence; for texts that `readNumber` refused. */
export function whyNoNumber(tidied: string): string {
  if (tidied === '') return 'is empty';
  if (/[\p{Cc}\p{Cf}]/u.test(tidied)) return 'holds a hidden character; type it again';
  if (/^[-−–]\s?[\d.,]/.test(tidied)) return 'is negative';
  if (/^\+/.test(tidied)) return 'has a plus sign; leave it out';
  if (/^[\d.,]+e[-+]?\d/i.test(tidied)) return 'is written with an exponent; write the number in full';
  if (/^[\d.,]*[.,]\d*[.,]/.test(tidied)) return 'has more than one decimal sign; write thousands without a separator, as 1234.5';
  if (/^\d+[.,](?!\d)/.test(tidied)) return 'ends in a decimal sign';
  if (/^\d+ \d+(?![\d/ ])/.test(tidied)) return 'is two numbers; write one, without blanks inside it';
  if (tidied.includes('/')) return 'is not a fraction that can be read; write it as 3 5/16';
  return 'is not a number';
}
