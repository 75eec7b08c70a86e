import { semiAxisFromPerimeter } from '../geometry/ellipse.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';

/** Section of a digit at mid proximal phalanx: an ellipse, semi-axes in mm, across the hand and dorsal to palmar. */
export interface DigitSection {
  readonly halfWidth: number;
  readonly halfDepth: number;
}

/** Depth over width. Outside the first the two measurements disagree; outside the second no finger is so. Common practice, no source. */
export const TYPICAL_DEPTH_RATIO = { from: 0.7, to: 1.25 };
export const POSSIBLE_DEPTH_RATIO = { from: 0.5, to: 1.6 };

/**
 * The ellipse with the measured width and circumference (mm). Fails with `SECTION_IMPOSSIBLE` where the circumference is at most
 * twice the width or the depth lies outside 0.5 to 1.6 widths; warns with `DEPTH_RATIO_UNUSUAL` outside 0.70 to 1.25.
 * @param where path of the digit, e.g. `digits.ring`
 * @param unit unit in which messages show lengths
 */
export function digitSection(width: number, circumference: number, where = '', unit: LengthUnit = 'mm'): Result<DigitSection> {
  const shown = () =>
    `${where === '' ? '' : `${where}: `}width ${formatLength(width, unit)} and circumference ${formatLength(circumference, unit)}`;
  const impossible = (why: string) =>
    failure<DigitSection>({
      code: 'SECTION_IMPOSSIBLE',
      where,
      message: `${shown()} contradict each other: ${why}. Measure both again.`,
      kind: 'refused',
    });
  const halfWidth = width / 2;
  const halfDepth = semiAxisFromPerimeter(halfWidth, circumference);
  if (halfDepth === null) return impossible(`the circumference must be more than twice the width, ${formatLength(2 * width, unit)}`);
  const ratio = halfDepth / halfWidth;
  const depth = () => `the depth would be ${formatLength(2 * halfDepth, unit)}, ${plain(ratio)} of the width`;
  if (ratio < POSSIBLE_DEPTH_RATIO.from || ratio > POSSIBLE_DEPTH_RATIO.to) {
    return impossible(`${depth()}; ${POSSIBLE_DEPTH_RATIO.from} to ${POSSIBLE_DEPTH_RATIO.to} is allowed`);
  }
  if (ratio >= TYPICAL_DEPTH_RATIO.from && ratio <= TYPICAL_DEPTH_RATIO.to) return success({ halfWidth, halfDepth });
  return success({ halfWidth, halfDepth }, [
    {
      code: 'DEPTH_RATIO_UNUSUAL',
      message: `${shown()} disagree: ${depth()}; ${TYPICAL_DEPTH_RATIO.from} to ${TYPICAL_DEPTH_RATIO.to} is usual`,
      where,
      value: ratio,
      limit: ratio < TYPICAL_DEPTH_RATIO.from ? TYPICAL_DEPTH_RATIO.from : TYPICAL_DEPTH_RATIO.to,
      next: 'Measure width and circumference again, at the same level.',
    },
  ]);
}
