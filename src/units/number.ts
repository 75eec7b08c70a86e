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
  // Only a negative number can come out as "-0".
  return value < 0 && Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Whether `fixed` takes the value. */
export function isWritable(value: number): boolean {
  return Number.isFinite(value) && Math.abs(value) < LARGEST_WRITABLE;
}

/** A number for a reader's eye: at most `decimals` digits, trailing zeros dropped ("84.5", "20"). Same errors as `fixed`. */
export function plain(value: number, decimals = 2): string {
  const text = fixed(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A number in as few characters as SVG takes: `plain` without the zero before the point (".5", "-.25", "0"). Same errors as `fixed`. */
export function shortest(value: number, decimals = 2): string {
  return plain(value, decimals).replace(/^(-?)0\./, '$1.');
}

/** Rounds to the decimals that are written, so that a library which formats by itself gets the same number. */
export function rounded(value: number, decimals: number): number {
  return Number(fixed(value, decimals));
}
