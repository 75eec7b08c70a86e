import { NUMBER_PATTERN, readNumber, tidyNumberText, whyNoNumber } from './decimal-text.ts';
import { plain } from './number.ts';
import { quote } from './quote.ts';
import { parseRingSize, type RingNotation } from './ring-size.ts';

export const LENGTH_UNITS = ['mm', 'cm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Millimetres in one of the unit; the inch is 25.4 mm exactly (CSS Values and Units; ISO 32000). */
export const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: 25.4 };

/** `number`: without a unit, so in the unit that was agreed; `length`: with its own unit. */
export type LengthNotation = 'number' | 'length' | RingNotation;

export type ParsedLength =
  | { readonly ok: true; readonly mm: number; readonly notation: LengthNotation }
  | { readonly ok: false; readonly reason: string };

export interface LengthOptions {
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
