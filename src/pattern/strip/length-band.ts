import type { Block } from '../../block/block.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import type { DigitMeasures, Hand } from '../../hand/hand.ts';
import type { StripOptions } from './strip-options.ts';
import { stripPath } from './strip-path.ts';
import { standSections } from './strip-sections.ts';

/** Standard deviations of one measurement, mm and degrees (strip model; starting values, common practice, no source). */
export const MEASURING_ERRORS = { circumference: 1.0, width: 0.5, palmarRoom: 1.0, dorsalLength: 1.5, differential: 5 } as const;

/** Two-sided 95 % of a normal distribution. */
const NORMAL_95 = 1.959963985;
/** Step of the finite differences, as a share of the standard deviation: small enough for the slope, large against rounding. */
const STEP = 0.1;

/**
 * Half width of the 95 % band of the path length, mm: each measuring error carried through by finite differences, errors independent.
 * A step onto a hand that cannot be (no ellipse) is taken on the other side alone.
 */
export function lengthHalfBand95(hand: Hand, block: Block, options: StripOptions, pathLength: number): number {
  const lengthOf = (h: Hand, o: StripOptions): number | null => {
    const standing = standSections(h, block, o);
    const path = standing.ok ? stripPath(standing.value, o) : null;
    return path?.ok ? path.value.pathLength : null;
  };
  const spread = (error: number, at: (shift: number) => number | null): number => {
    const step = STEP * error;
    const above = at(step);
    const below = at(-step);
    if (above !== null && below !== null) return ((above - below) / (2 * step)) * error;
    return above !== null ? ((above - pathLength) / step) * error : below !== null ? ((pathLength - below) / step) * error : 0;
  };
  const spreads: number[] = [];
  for (const digit of DIGITS) {
    const measures = hand.digits[digit];
    if (block.places[digit] === undefined || !measures) continue;
    for (const field of ['circumference', 'width', 'palmarRoom', 'dorsalLength'] as const) {
      const estimate = hand.estimated.find((e) => e.digit === digit && e.field === field);
      spreads.push(
        spread(estimate?.spread ?? MEASURING_ERRORS[field], (shift) => lengthOf(moved(hand, digit, measures, field, shift), options)),
      );
    }
  }
  spreads.push(
    spread(MEASURING_ERRORS.differential, (shift) => lengthOf(hand, { ...options, differential: options.differential + shift })),
  );
  return NORMAL_95 * Math.hypot(...spreads);
}

function moved(
  hand: Hand,
  digit: DigitName,
  measures: DigitMeasures,
  field: keyof typeof MEASURING_ERRORS & keyof DigitMeasures,
  shift: number,
): Hand {
  return { ...hand, digits: { ...hand.digits, [digit]: { ...measures, [field]: measures[field] + shift } } };
}
