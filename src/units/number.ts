/** Decimals written for a coordinate in mm. Four decimals are 0.1 µm, far below any cutter. */
export const COORDINATE_DECIMALS = 4;
/** Decimals written for a bulge; at the longest arc drawn (about 1 m) nine keep the arc's height within 1 µm. */
export const BULGE_DECIMALS = 9;

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

/** Rounds to the decimals that are written, so that a library which formats by itself gets the same number. */
export function rounded(value: number, decimals: number): number {
  return Number(fixed(value, decimals));
}
