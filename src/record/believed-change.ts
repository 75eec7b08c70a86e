import { type Raters, REAL, REAL_SOURCE } from '../block/figures.ts';
import type { Visit } from './case.ts';

/** Whether visits were measured by different people; a rater that was not noted is taken to be the same, which believes a loss sooner. */
export function ratersOf(visits: readonly (Pick<Visit, 'noted'> | undefined)[]): Raters {
  const known = visits.flatMap((visit) => (visit?.noted.rater ? [visit.noted.rater.toUpperCase()] : []));
  return new Set(known).size > 1 ? 'mixed' : 'same';
}

/** The least difference in degrees between the readings of two visits that is believed to be one of the joint. */
export function believedChange(before: Pick<Visit, 'noted'> | undefined, after: Pick<Visit, 'noted'> | undefined): number {
  return REAL[ratersOf([before, after])];
}

export const BELIEVED_CHANGE_SOURCE = REAL_SOURCE;
