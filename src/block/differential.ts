import { plain } from '../units/number.ts';

/** MP differentials in use, degrees: survey range 11 to 30 (Merritt & Jarrell, Ann Plast Surg 2020; Yates et al., J Hand Ther 2023). */
export const SURVEYED_DIFFERENTIAL = { low: 11, high: 30 } as const;

/** One step of trying, degrees. Common practice, no source. */
export const DIFFERENTIAL_STEP = 5;

/**
 * What to try when a suggestion does not redirect the motion, one sentence. Common practice, no source.
 * @param differential degrees, as it was tried
 * @param following id of the next suggestion, if there is one
 */
export function whatNext(differential: number, following: string | undefined): string {
  const { high } = SURVEYED_DIFFERENTIAL;
  const larger = Math.min(high, differential + DIFFERENTIAL_STEP);
  const first =
    larger > differential
      ? `first a differential of ${plain(larger, 1)} degrees`
      : `no larger differential (${high} degrees is the most that surveyed therapists use)`;
  const then = following === undefined ? 'then measure again and talk it over with the referrer' : `then ${following}`;
  return `If it does not redirect: ${first}, ${then}.`;
}
