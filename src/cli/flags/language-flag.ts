import { LANGUAGE_IDS, type Language, languageFor } from '../../words/language.ts';
import { flag } from './flag.ts';

/** The language of what is printed and read; file names and JSON stay English. */
export const languageFlag = flag('--language <language>', "language of what is printed (default: the environment's, then English)").choices(
  LANGUAGE_IDS,
);

/** The language that was asked for, else the environment's, else English. POSIX: LC_ALL goes before LC_MESSAGES, that before LANG. */
export function readLanguageFlag(given: Language | undefined, environment: NodeJS.ProcessEnv = process.env): Language {
  const { LC_ALL, LC_MESSAGES, LANG } = environment;
  return given ?? languageFor([LC_ALL || LC_MESSAGES || LANG || '']);
}
