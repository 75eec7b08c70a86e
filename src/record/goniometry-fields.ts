export * from '../hand/goniometry-fields.ts';

/**
 * Degrees below which a change is the goniometer's and not the joint's: repeats by the same rater lie within 4 to 5, the SEM is 2.4 to
 * 4.9 (Macionis, BMC Musculoskelet Disord 2013;14:17). Another rater's repeats lie within 7 to 9.
 */
export const MEASURING_ERROR = 5;
export const MEASURING_ERROR_SOURCE =
  'Macionis, BMC Musculoskelet Disord 2013;14:17: SEM 2.4 to 4.9 degrees, repeats by one rater within 4 to 5';
