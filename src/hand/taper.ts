import { degrees } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';

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
