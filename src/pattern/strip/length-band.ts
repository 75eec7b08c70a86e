import type { Block } from '../../block/block.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { DIGIT_FIELDS } from '../../hand/fields.ts';
import type { DigitMeasures, Hand } from '../../hand/hand.ts';
import { READING_ERROR } from './solve-clearance.ts';
import type { StripSettings } from './strip-options.ts';
import { type StripPath, stripPathLength } from './strip-path.ts';
import { type StandingHand, standSections } from './strip-sections.ts';

/** The measures of a digit that the length follows from. */
const MEASURES = ['circumference', 'width', 'palmarRoom', 'dorsalLength'] as const;
/** Standard deviation of the differential that is made, degrees (model rule 17; starting value, common practice, no source). */
const DIFFERENTIAL_SPREAD = 5;

/** Lengths of sections that stand alike differ by rounding alone, mm. */
const SAME_LENGTH = 1e-9;
/** Two-sided 95 % of a normal distribution. */
const NORMAL_95 = 1.959963985;

/** How far the true length may lie from the computed one, mm: 95 % of hands measured with the errors above lie between. */
export interface LengthBand {
  readonly below: number;
  readonly above: number;
}

/** The 95 % band of a length that was read on a paper strip: the reading's own. */
export function readingBand(): LengthBand {
  return { below: NORMAL_95 * READING_ERROR, above: NORMAL_95 * READING_ERROR };
}

/**
 * The 95 % band of the path length from the measuring errors, by finite differences one standard deviation to each side, errors
 * independent. Second order, since the length has a minimum near the usual differential: a variable of standard deviation 1 adds
 * slope² + 2 curvature² to the variance and its curvature to the mean. A step onto a hand that cannot be is taken on the other side alone.
 */
export function lengthBand95(hand: Hand, block: Block, options: StripSettings, path: StripPath): LengthBand {
  const { pathLength } = path;
  // Palmar room and dorsal length move a section along its finger alone, so that many of the hands stand alike.
  const known: { readonly standing: StandingHand; readonly length: number | null }[] = [];
  const lengthOf = (h: Hand, o: StripSettings): number | null => {
    const standing = standSections(h, block, o, path.hand.version);
    if (!standing.ok) return null;
    const before = known.find((k) => standAlike(k.standing, standing.value));
    if (before) return before.length;
    const length = stripPathLength(standing.value, o);
    known.push({ standing: standing.value, length });
    return length;
  };
  let mean = 0;
  let variance = 0;
  const add = (plus: number | null, minus: number | null) => {
    const up = plus === null ? null : plus - pathLength;
    const down = minus === null ? null : minus - pathLength;
    const slope = up !== null && down !== null ? (up - down) / 2 : (up ?? -(down ?? 0));
    const curvature = up !== null && down !== null ? (up + down) / 2 : 0;
    mean += curvature;
    variance += slope * slope + 2 * curvature * curvature;
  };
  for (const digit of DIGITS) {
    const measures = hand.digits[digit];
    if (block.places[digit] === undefined || !measures) continue;
    for (const field of MEASURES) {
      const error = hand.estimated.find((e) => e.digit === digit && e.field === field)?.spread ?? DIGIT_FIELDS[field].spread;
      const at = (shift: number) => lengthOf(moved(hand, digit, measures, field, shift), options);
      add(at(error), at(-error));
    }
  }
  const at = (shift: number) => lengthOf(hand, { ...options, differential: options.differential + shift });
  add(at(DIFFERENTIAL_SPREAD), at(-DIFFERENTIAL_SPREAD));
  const half = NORMAL_95 * Math.sqrt(variance);
  return { below: half - mean, above: half + mean };
}

function standAlike(one: StandingHand, other: StandingHand): boolean {
  return one.sections.every((s, k) => {
    const o = other.sections[k];
    return (
      o !== undefined &&
      isSame(s.x, o.x) &&
      isSame(s.y, o.y) &&
      isSame(s.halfWidth, o.halfWidth) &&
      isSame(s.standingHalfDepth, o.standingHalfDepth)
    );
  });
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) < SAME_LENGTH;
}

function moved(hand: Hand, digit: DigitName, measures: DigitMeasures, field: (typeof MEASURES)[number], shift: number): Hand {
  return { ...hand, digits: { ...hand.digits, [digit]: { ...measures, [field]: measures[field] + shift } } };
}
