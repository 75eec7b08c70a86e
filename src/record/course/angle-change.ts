import { SURVEYED_DIFFERENTIAL } from '../../block/figures.ts';
import type { AngleChange } from '../../words/advice/course/course-figures.ts';
import { type Course, newest } from './course.ts';

/** Least and most degrees by which an angle is changed at once. Common practice, no source. */
export const ANGLE_STEP = { from: 5, to: 10 } as const;
/** MP angles of a plate where passive MP motion was not measured, degrees: AAOS-type tables give the MP joint 0 to 90. */
export const MP_RANGE = { from: 0, to: 90 } as const;

/**
 * How to change the angle of the device in use: more differential for a strip; for a plate more MP flexion where extension lags, less where
 * flexion does. Inside the range of the differential, or of the MP motion that was measured; null where that leaves no step of 5.
 */
export function angleChange({ device, served, visits, deficits }: Course): AngleChange | null {
  const { made } = device;
  if (made === null) return null;
  if (made.kind === 'strip') {
    return made.differential === null
      ? null
      : stepped('differential', served, made.differential, 1, { from: SURVEYED_DIFFERENTIAL.low, to: SURVEYED_DIFFERENTIAL.high });
  }
  const now = deficits.at(-1) ?? { extension: 0, flexion: 0 };
  const toward = now.flexion > now.extension ? 'flexion' : 'extension';
  const passive = newest(visits, ({ goniometry }) => goniometry.mp.passive);
  const range = {
    from: Math.max(MP_RANGE.from, passive?.extensionDeficit ?? MP_RANGE.from),
    to: Math.min(MP_RANGE.to, passive?.flexion ?? MP_RANGE.to),
  };
  return stepped('mpAngle', toward, made.mpAngle, toward === 'extension' ? 1 : -1, range);
}

function stepped(
  what: AngleChange['what'],
  toward: AngleChange['toward'],
  from: number,
  sign: 1 | -1,
  range: { readonly from: number; readonly to: number },
): AngleChange | null {
  const nearer = from + sign * ANGLE_STEP.from;
  if (nearer < range.from || nearer > range.to) return null;
  const further = Math.min(range.to, Math.max(range.from, from + sign * ANGLE_STEP.to));
  return { what, toward, from, to: [Math.min(nearer, further), Math.max(nearer, further)] };
}
