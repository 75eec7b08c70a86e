import * as z from 'zod';
import { quote } from '../units/quote.ts';
import { failure, type Result, success } from '../units/result.ts';
import { flagProblem } from './flags/flag-problem.ts';

/** The date to print, as the person gave it, or null; the clock is never read. */
export function readDate(date: string | undefined): Result<string | null> {
  if (date === undefined) return success(null);
  const real = z.iso.date().safeParse(date).success;
  return real ? success(date) : failure(flagProblem('--date', `${quote(date)} is not a date; write it as 2026-03-31`));
}
