import { type Raters, SIGMA } from '../../block/figures.ts';
import { addDays, daysBetween } from '../../units/day.ts';
import type { Lacking, Slope } from '../../words/advice/course/course-figures.ts';

/** A deficit read on a day, degrees. */
export interface Reading {
  readonly date: string;
  readonly deficit: number;
}

/** One-sided 95 % of the normal distribution: a gain over so many standard errors is believed. */
export const SURE = 1.64;
/** A goal further away than this is not dated: weeks. */
export const FARTHEST_GOAL = 12;
const WEEK = 7;

/**
 * How fast a deficit falls: least squares of the deficit over days, its standard error from the measuring error of one reading. Null for
 * readings of fewer than two days.
 * @param goal deficit with which the motion is content, degrees
 */
export function slopeOf(readings: readonly Reading[], motion: Lacking, raters: Raters, goal: number): Slope | null {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return null;
  const days = readings.map(({ date }) => daysBetween(first.date, date));
  const meanDay = mean(days);
  const meanDeficit = mean(readings.map(({ deficit }) => deficit));
  const spread = days.reduce((sum, day) => sum + (day - meanDay) ** 2, 0);
  if (spread === 0) return null;
  const perDay = readings.reduce((sum, { deficit }, k) => sum + ((days[k] ?? 0) - meanDay) * (deficit - meanDeficit), 0) / spread;
  const degreesPerWeek = -perDay * WEEK || 0;
  const standardError = (WEEK * SIGMA[raters]) / Math.sqrt(spread);
  const [low, high] = [degreesPerWeek - SURE * standardError, degreesPerWeek + SURE * standardError];
  // The fitted line, not the last reading: one reading is off by the measuring error.
  const left = meanDeficit + perDay * ((days.at(-1) ?? 0) - meanDay) - goal;
  const reached = (rate: number) => {
    const weeks = rate > 0 && left > 0 ? left / rate : Number.POSITIVE_INFINITY;
    return weeks <= FARTHEST_GOAL ? addDays(last.date, Math.ceil(weeks * WEEK)) : null;
  };
  const [date, earliest] = [reached(degreesPerWeek), reached(high)];
  return {
    motion,
    degreesPerWeek,
    low,
    high,
    standardError,
    visits: readings.length,
    between: [first.date, last.date],
    goalBy: date === null || earliest === null ? null : { date, earliest, latest: reached(low) },
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
