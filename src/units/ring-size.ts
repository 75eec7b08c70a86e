import { NUMBER_PATTERN, readNumber } from './decimal-text.ts';

export type RingNotation = 'ringIso' | 'ringUs' | 'ringUk';

export type ParsedRingSize =
  | { readonly ok: true; readonly mm: number; readonly notation: RingNotation }
  | { readonly ok: false; readonly reason: string };

/** How far customary charts of US sizes lie apart, mm. */
export const US_RING_CHART_SPREAD = 0.4;

/** US size n has an inner diameter of 0.458 + 0.032 n inches: customary, no standard. */
const US_DIAMETER_AT_0 = 0.458 * 25.4;
const US_DIAMETER_STEP = 0.032 * 25.4;
/** UK letter C is 40 mm round, a letter is 1.25 mm, a half letter half of it: BS EN 28653 at second hand. */
const UK_CIRCUMFERENCE_AT_C = 40;
const UK_CIRCUMFERENCE_STEP = 1.25;

/** What is taken for a size of each system; wide of any finger, narrow enough to catch a number of the other system. */
const ISO_SIZES = { from: 20, to: 120 };
const US_SIZES = { from: 0, to: 25 };

/** Inner circumference in mm of a US ring size (whole, half or any part of one). */
export function usRingCircumference(size: number): number {
  return Math.PI * (US_DIAMETER_AT_0 + US_DIAMETER_STEP * size);
}

/** Inner circumference in mm of a UK ring letter "A" to "Z"; second-hand figures, not read in the standard. */
export function ukRingCircumference(letter: string, half = false): number {
  const steps = letter.toUpperCase().charCodeAt(0) - 'C'.charCodeAt(0) + (half ? 0.5 : 0);
  return UK_CIRCUMFERENCE_AT_C + UK_CIRCUMFERENCE_STEP * steps;
}

/**
 * The ISO 8653 size nearest to an inner circumference in mm; the size number is that circumference in whole mm.
 * @throws RangeError when the circumference is not a positive number
 */
export function nearestIsoRingSize(innerCircumferenceMm: number): number {
  if (!(innerCircumferenceMm > 0) || !Number.isFinite(innerCircumferenceMm)) {
    throw new RangeError(`no ring has a circumference of ${String(innerCircumferenceMm)} mm`);
  }
  return Math.round(innerCircumferenceMm);
}

const SYSTEM_AND_SIZE = /^(ring|iso|eu|us|uk) ?(.*)$/i;
const NUMBER = new RegExp(`^${NUMBER_PATTERN}$`);
const UK_SIZE = /^([a-z])( ?1\/2)?$/i;

/**
 * A ring size as an inner circumference in mm, from a tidied text: "ring 54", "ISO 54", "EU 54" (ISO 8653), "US 7", "US 7.5",
 * "US 7 1/2", "UK L", "UK L 1/2". Null when the text does not begin like one. A reason is the end of a sentence about the text.
 */
export function parseRingSize(tidied: string): ParsedRingSize | null {
  const [, word, size] = SYSTEM_AND_SIZE.exec(tidied) ?? [];
  if (word === undefined || size === undefined) return null;
  const system = word.toLowerCase();
  if (system === 'uk') {
    const [, letter, half] = UK_SIZE.exec(size) ?? [];
    if (letter === undefined) return { ok: false, reason: 'is not a UK ring size; write a letter, as UK L or UK L 1/2' };
    return { ok: true, mm: ukRingCircumference(letter, half !== undefined), notation: 'ringUk' };
  }
  const value = NUMBER.test(size) ? readNumber(size) : null;
  if (system === 'us') {
    if (value === null || value < US_SIZES.from || value > US_SIZES.to) {
      return { ok: false, reason: `is not a US ring size; those run from ${US_SIZES.from} to ${US_SIZES.to}, as US 7 or US 7 1/2` };
    }
    return { ok: true, mm: usRingCircumference(value), notation: 'ringUs' };
  }
  if (value === null || value < ISO_SIZES.from || value > ISO_SIZES.to) {
    const reason = 'is not an ISO 8653 ring size; that is the inner circumference in mm, as ring 54 (a US size is written US 7)';
    return { ok: false, reason };
  }
  return { ok: true, mm: value, notation: 'ringIso' };
}
