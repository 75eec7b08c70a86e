import { semiAxisFromPerimeter } from '../geometry/ellipse.ts';
import { degrees } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';

/** Section of a digit at mid proximal phalanx: an ellipse, semi-axes in mm, across the hand and dorsal to palmar. */
interface DigitSection {
  readonly halfWidth: number;
  readonly halfDepth: number;
}

/** Depth over width. Outside the first the two measurements disagree; outside the second no finger is so. Common practice, no source. */
const TYPICAL_DEPTH_RATIO = { from: 0.7, to: 1.25 };
const POSSIBLE_DEPTH_RATIO = { from: 0.5, to: 1.6 };

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

/** Half the angle of a digit's cone, degrees. Beyond the first the measurements are doubted, beyond the second no finger is so. Common practice, no source. */
const USUAL_TAPER = 6;
const MOST_TAPER = 12;

/** What a digit's taper follows from, mm. */
interface TaperMeasures {
  readonly circumference: number;
  readonly rootCircumference?: number;
  readonly palmarRoom: number;
}

/**
 * How much a digit narrows toward its tip: half the angle of the cone that is as round at its root crease, and half the palmar room further at the middle
 * of the proximal phalanx, as was measured (model rule 18). Radians, negative for a digit that widens, 0 where its root was not measured. Fails with
 * `TAPER_IMPOSSIBLE` beyond 12 degrees, warns with `TAPER_UNUSUAL` beyond 6.
 * @param where path of the field, e.g. `digits.ring.rootCircumference`
 */
export function digitTaper(measures: TaperMeasures, where: string, unit: LengthUnit = 'mm'): Result<number> {
  const { circumference, rootCircumference, palmarRoom } = measures;
  if (rootCircumference === undefined) return success(0);
  const taper = Math.atan((rootCircumference - circumference) / (Math.PI * palmarRoom));
  const value = degrees(taper);
  if (Math.abs(value) <= USUAL_TAPER) return success(taper);
  const shown = `${where}: root circumference ${formatLength(rootCircumference, unit)} and circumference ${formatLength(circumference, unit)} make a finger that ${value > 0 ? 'narrows' : 'widens'} by ${plain(Math.abs(value), 1)} degrees to each side`;
  if (Math.abs(value) > MOST_TAPER)
    return failure({
      code: 'TAPER_IMPOSSIBLE',
      where,
      message: `${shown}; up to ${MOST_TAPER} is allowed. Measure both again, or leave the root circumference away.`,
      kind: 'refused',
    });
  return success(taper, [
    {
      code: 'TAPER_UNUSUAL',
      where,
      message: `${shown}; up to ${USUAL_TAPER} is usual`,
      value,
      limit: Math.sign(value) * USUAL_TAPER,
      next: 'Measure both again: one at the root crease, one half-way to the PIP crease.',
    },
  ]);
}
