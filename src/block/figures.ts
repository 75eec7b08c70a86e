import { GONIOMETRY_SPREAD, GONIOMETRY_SPREAD_SOURCE } from '../hand/fields.ts';
import { normalDistribution } from '../units/chance.ts';

/** The figures on which the plan and the course of a case decide, in degrees, each with its source. */

/** Who read the angles that are compared: the same person each time, or different people (not known counts as different). */
export type Raters = 'same' | 'mixed';

/** The deficit from which a device is suggested. It does not change with the rater. */
export const LACK = 10;
export const LACK_SOURCE = 'common practice, no source: goniometers are read by fives; the trial registration NCT06985459 asks 10';

/** From here to under `LACK` a deficit is slight: exercise, a device only when it is asked for. */
export const SLIGHT = 5;

/** A deficit up to which a motion has reached its goal, unless the patient has a goal of their own. */
export const GOAL = 5;

/** Standard deviation of one reading. */
export const SIGMA: Readonly<Record<Raters, number>> = { same: GONIOMETRY_SPREAD, mixed: 4.5 };
/** However often a motion is measured, the mean of the readings is not surer than this. Common practice, no source. */
export const LEAST_SIGMA = 2.5;
export const SIGMA_SOURCE = GONIOMETRY_SPREAD_SOURCE;

/** The least difference between two readings to be believed: 1.96 times the square root of 2 times `SIGMA`, rounded up to a whole degree. */
export const REAL: Readonly<Record<Raters, number>> = { same: 10, mixed: 13 };
export const REAL_SOURCE = `1.96 x sqrt 2 x the standard deviation of one reading (3.5 for one rater, 4.5 for several; ${SIGMA_SOURCE})`;

/** Between these a chance of lacking is not sure either way. */
export const UNSURE = { from: 0.2, to: 0.8 } as const;

/** Both lacking: from this share of the larger on, the smaller deficit makes it a plate first. Common practice, no source. */
export const PLATE_SHARE = 1 / 3;
/** Readings from which a motion that is still not sure is shown both ways: once, and twice more. */
export const ENOUGH_READINGS = 3;
/** Passive motion less than this beyond active is the same, and a stiff joint. degrees; trial registration NCT06985459 asks 10. */
export const PASSIVE_MARGIN = 10;
/** A deficit that is large for exercise alone. degrees; common practice, no source. */
export const LARGE = 60;
/** An extensor lag that may be a torn central slip, and the weeks in which it is thought of. Common practice, no source. */
export const SLIP_LAG = 20;
export const SLIP_WEEKS = 8;
/** How near to straight a chronic boutonniere must go passively before a strip. degrees; Merritt & Jarrell 2020. */
export const BOUTONNIERE_PASSIVE = 20;
/** Beyond straight by this is no longer a joint to be helped into extension. degrees; common practice, no source. */
export const BEYOND = 10;

/**
 * The standard deviation of a deficit as it was read, degrees: of one reading, or of the mean of several.
 * @param readings how often it was measured, 1 or more
 */
export function readingSpread(raters: Raters = 'same', readings = 1): number {
  return readings <= 1 ? SIGMA[raters] : Math.max(LEAST_SIGMA, SIGMA[raters] / Math.sqrt(readings));
}

/**
 * The chance that the true deficit is `LACK` or more, by measuring error alone: 1 - Phi((LACK - deficit) / sigma). Never a chance of success.
 * @param deficit degrees, as it was read
 * @param sigma standard deviation of the reading, degrees; see `readingSpread`
 */
export function chanceOfLacking(deficit: number, sigma: number = SIGMA.same): number {
  return normalDistribution((deficit - LACK) / sigma);
}

/** MP differentials in use, degrees: 11 to 30 by 98 % (extension) and 92 % (flexion) of 108 surveyed therapists, Yates et al., J Hand Ther 2023;36:414. */
export const SURVEYED_DIFFERENTIAL = { low: 11, high: 30 } as const;

/** One step of trying, degrees. Common practice, no source. */
export const DIFFERENTIAL_STEP = 5;
