import { NUMBER_PATTERN, readNumber, tidyNumberText, whyNoNumber } from './number.ts';
import { quote } from './quote.ts';

/** Degrees (what a person types or reads) to radians (what geometry uses). */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Radians to degrees. */
export function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

type ParsedDegrees = { readonly ok: true; readonly degrees: number } | { readonly ok: false; readonly reason: string };

const LONGEST_TEXT = 40;
const NUMBER_AND_UNIT = new RegExp(`^(${NUMBER_PATTERN}) ?(?:°|º|deg|degrees?)?$`, 'i');

/** An angle as a person types it, in degrees, not negative: 25, "25", "12,5", "25°", "25 deg". The reason quotes the input. */
export function parseDegrees(input: number | string): ParsedDegrees {
  if (typeof input === 'number') {
    if (!Number.isFinite(input)) return refused(input, 'is not a number');
    return input < 0 ? refused(input, 'is negative') : { ok: true, degrees: input === 0 ? 0 : input };
  }
  if (input.length > LONGEST_TEXT) return refused(input, `is longer than the ${LONGEST_TEXT} characters an angle may have`);
  const text = tidyNumberText(input);
  const number = NUMBER_AND_UNIT.exec(text)?.[1];
  const value = number === undefined ? null : readNumber(number);
  return value === null ? refused(input, whyNoNumber(text)) : { ok: true, degrees: value };
}

function refused(input: number | string, why: string): ParsedDegrees {
  return { ok: false, reason: `${quote(input)} ${why}` };
}

/** What stands before an angle beyond straight, in each language of the house. */
export const BEYOND_STRAIGHT = /^(?:hyperextension|hyper|hiperextensi[oó]n|hiper|(?:ü|ue)ber(?:streckung)?|h)\s*/i;
