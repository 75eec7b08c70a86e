import { isDay, tidyDay } from '../../units/day.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { LANGUAGE_IDS, type Language, languageFor } from '../../words/language.ts';
import { flag, flagProblem } from './flag.ts';

export const dateFlag = flag('--date <date>', 'date to print, YYYY-MM-DD; never taken from the clock');

/** The date to print, as the person gave it, or null; the clock is never read. */
export function readDateFlag(date: string | undefined): Result<string | null> {
  if (date === undefined) return success(null);
  const day = tidyDay(date);
  return isDay(day) ? success(day) : failure(flagProblem('--date', `${quote(date)} is not a date; write it as 2026-03-31`));
}

/** The language of what is printed and read; file names and JSON stay English. */
export const languageFlag = flag('--language <language>', "language of what is printed (default: the environment's, then English)").choices(
  LANGUAGE_IDS,
);

/** The language that was asked for, else the environment's, else English. POSIX: LC_ALL goes before LC_MESSAGES, that before LANG. */
export function readLanguageFlag(given: Language | undefined, environment: NodeJS.ProcessEnv = process.env): Language {
  const { LC_ALL, LC_MESSAGES, LANG } = environment;
  return given ?? languageFor([LC_ALL || LC_MESSAGES || LANG || '']);
}

/** The flag of every command that suggests. */
export const confirmsFlag = flag(
  '--clinician-confirms',
  'suggest in spite of a hard end-feel or an unprotected repair: you have examined the hand and take it on',
);
