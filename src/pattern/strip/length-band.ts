import type { Block } from '../../block/block.ts';
import { DIGITS } from '../../hand/digits.ts';
import { DIGIT_FIELDS } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { READING_ERROR } from './solve-clearance.ts';
import type { StripSettings } from './strip-options.ts';
import { type StripPath, stripPathLength, stripPathLengthsNear } from './strip-path.ts';
import { restand, standSections } from './strip-sections.ts';

/** The measures of a digit that the length follows from. */
const MEASURES = ['circumference', 'width', 'palmarRoom', 'dorsalLength'] as const;
/** Standard deviation of the differential that is made, degrees (model rule 17; starting value, common practice, no source). */
const DIFFERENTIAL_SPREAD = 5;

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
  const { pathLength, hand: standing } = path;
  const nearLength = stripPathLengthsNear(standing, options);
  const lengthOf = (h: Hand, o: StripSettings): number | null => {
    const moved = standSections(h, block, o, standing.version);
    if (!moved.ok) return null;
    return nearLength(moved.value.sections) ?? stripPathLength(moved.value, o);
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
      const at = (shift: number) => {
        const moved = { ...measures, [field]: measures[field] + shift };
        const sections = restand(standing, digit, moved, options, hand.units);
        if (!sections.ok) return null;
        return nearLength(sections.value) ?? lengthOf({ ...hand, digits: { ...hand.digits, [digit]: moved } }, options);
      };
      add(at(error), at(-error));
    }
  }
  const at = (shift: number) => lengthOf(hand, { ...options, differential: options.differential + shift });
  add(at(DIFFERENTIAL_SPREAD), at(-DIFFERENTIAL_SPREAD));
  const half = NORMAL_95 * Math.sqrt(variance);
  return { below: half - mean, above: half + mean };
}
