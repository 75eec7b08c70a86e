import { MEASURING_ERROR, MEASURING_ERROR_SOURCE } from './goniometry-fields.ts';

export const NO_SOURCE = 'common practice, no source';

/** mm by which a circumference must move to call for measuring again. Common practice, no source; the tape's own spread is 1 mm. */
export const SWELLING_CHANGE = 3;
/** Visits in a row in which nothing moves before the case is referred. Common practice, no source. */
export const STALLED_VISITS = 3;
/** Least and most degrees by which an angle is changed at once. Common practice, no source. */
export const ANGLE_STEP = { from: 5, to: 10 } as const;
/** MP differentials of the survey, degrees. */
export const DIFFERENTIAL_RANGE = { from: 11, to: 30 } as const;
const DIFFERENTIAL_SOURCE = 'Merritt & Jarrell, Ann Plast Surg 2020;84(3S):S141; Yates et al., J Hand Ther 2023;36:414-424';
/** MP angles of a plate, degrees: AAOS-type tables give the MP joint 0 to 90. */
export const MP_RANGE = { from: 0, to: 90 } as const;

/** Every rule of `case next`: what it says, and where it is from. */
export const COURSE_RULES = {
  MEASURING_ERROR: { says: `A change under ${MEASURING_ERROR} degrees is not read as a change.`, source: MEASURING_ERROR_SOURCE },
  REMEASURE_SWELLING: {
    says: `Measure again when a circumference moved by ${SWELLING_CHANGE} mm or more: the swelling changed and the fit with it.`,
    source: NO_SOURCE,
  },
  REFER_NO_CHANGE: { says: `Refer when nothing moved in ${STALLED_VISITS} visits.`, source: NO_SOURCE },
  CHANGE_ANGLE: {
    says: `Change the differential or the MP angle by ${ANGLE_STEP.from} to ${ANGLE_STEP.to} degrees toward the motion that lags.`,
    source: NO_SOURCE,
  },
  ANGLE_LIMIT: {
    says: `Keep the differential within ${DIFFERENTIAL_RANGE.from} to ${DIFFERENTIAL_RANGE.to} degrees; beyond it choose another block.`,
    source: DIFFERENTIAL_SOURCE,
  },
  MP_LIMIT: { says: `Keep the MP angle within ${MP_RANGE.from} to ${MP_RANGE.to} degrees.`, source: 'AAOS-type tables: MP 0 to 90' },
  KEEP: { says: 'Keep what works: the motion it was made for gains, or lacks no more than the measuring error.', source: NO_SOURCE },
  TOO_FEW_VISITS: { says: 'Two visits are needed to see a change.', source: NO_SOURCE },
} as const satisfies Record<string, { readonly says: string; readonly source: string }>;

export type CourseRule = keyof typeof COURSE_RULES;
