import { isDay, tidyDay } from '../../units/day.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { flag } from './flag.ts';
import { flagProblem } from './flag-problem.ts';

export const dateFlag = flag('--date <date>', 'date to print, YYYY-MM-DD; never taken from the clock');

/** The date to print, as the person gave it, or null; the clock is never read. */
export function readDateFlag(date: string | undefined): Result<string | null> {
  if (date === undefined) return success(null);
  const day = tidyDay(date);
  return isDay(day) ? success(day) : failure(flagProblem('--date', `${quote(date)} is not a date; write it as 2026-03-31`));
}
