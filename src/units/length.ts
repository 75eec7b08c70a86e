import { NUMBER_PATTERN, plain, readNumber, tidyNumberText, whyNoNumber } from './number.ts';
import { quote } from './quote.ts';

export const LENGTH_UNITS = ['mm', 'cm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Millimetres in one of the unit; the inch is 25.4 mm exactly (CSS Values and Units; ISO 32000). */
export const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: 25.4 };

/** `number`: without a unit, so in the unit that was agreed; `length`: with its own unit. */
type LengthNotation = 'number' | 'length' | RingNotation;

type ParsedLength =
  | { readonly ok: true; readonly mm: number; readonly notation: LengthNotation }
  | { readonly ok: false; readonly reason: string };

interface LengthOptions {
  /** Ring sizes are circumferences, so they are read only where a circumference is asked for. */
  readonly ringSizes?: boolean;
  /** Whether 0 is a length here. */
  readonly zero?: boolean;
}

const LONGEST_TEXT = 40;
/** Nothing on a hand or in a workshop is a kilometre long; also keeps every read length writable. */
const LARGEST_MM = 1e6;
const SHOWN_DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 2, cm: 3, in: 4 };

const UNIT_WORDS: readonly (readonly [LengthUnit, RegExp])[] = [
  ['mm', /^(?:mm|millimet(?:re|er)s?)$/i],
  ['cm', /^(?:cm|centimet(?:re|er)s?)$/i],
  ['in', /^(?:in\.?|inch|inches|"|″|”|''|′′|’’)$/i],
];
const NUMBER_AND_UNIT = new RegExp(`^(${NUMBER_PATTERN}) ?(\\D*)$`);

/**
 * A length as a person types it, in mm: 84, "84", "84,5", "84.5 mm", "8,4 cm", `3 5/16"`, "3½ in", and with `ringSizes` also
 * "ring 54" and "US 7 1/2" (see `parseRingSize`). Without a unit it is in `unit`. Units in any letter case.
 * "1,234" is 1.234, since a comma is a decimal comma; what has two separators is refused, as are exponents and signs.
 * The reason of a refusal quotes the input and is a sentence without its full stop.
 */
export function parseLength(input: number | string, unit: LengthUnit, options: LengthOptions = {}): ParsedLength {
  if (typeof input === 'number') {
    if (!Number.isFinite(input)) return refused(input, 'is not a number');
    return input < 0 ? refused(input, 'is negative') : inRange(input, input * MM_PER[unit], 'number', options);
  }
  if (input.length > LONGEST_TEXT) return refused(input, `is longer than the ${LONGEST_TEXT} characters a length may have`);
  const text = tidyNumberText(input);
  const ring = parseRingSize(text);
  if (ring !== null) {
    if (options.ringSizes !== true) return refused(input, 'is a ring size, which tells a circumference and nothing else; give a length');
    return ring.ok ? ring : refused(input, ring.reason);
  }
  const [, number, word] = NUMBER_AND_UNIT.exec(text) ?? [];
  const value = number === undefined ? null : readNumber(number);
  if (value === null || word === undefined) return refused(input, whyNoNumber(text));
  if (word === '') return inRange(input, value * MM_PER[unit], 'number', options);
  const own = UNIT_WORDS.find(([, words]) => words.test(word))?.[0];
  if (own !== undefined) return inRange(input, value * MM_PER[own], 'length', options);
  return refused(input, /^[.,]/.test(word) ? whyNoNumber(text) : `has an unknown unit ${quote(word)}; use mm, cm or in`);
}

function inRange(input: number | string, mm: number, notation: LengthNotation, options: LengthOptions): ParsedLength {
  if (mm === 0 && options.zero !== true) return refused(input, 'is zero');
  if (mm > LARGEST_MM) return refused(input, 'is too large for a length');
  return { ok: true, mm: mm === 0 ? 0 : mm, notation };
}

function refused(input: number | string, why: string): ParsedLength {
  return { ok: false, reason: `${quote(input)} ${why}` };
}

/** A length for a reader's eye, in his unit: "84.5 mm", "8.45 cm", "3.3125 in"; at most 2, 3 and 4 decimals. */
export function formatLength(mm: number, unit: LengthUnit): string {
  return `${plain(mm / MM_PER[unit], SHOWN_DECIMALS[unit])} ${unit}`;
}

type RingNotation = 'ringIso' | 'ringUs' | 'ringUk';

type ParsedRingSize =
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
