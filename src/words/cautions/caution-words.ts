import type { Language, Translations } from '../language.ts';
import { cautionsEnglish, pencilTestEnglish } from './english.ts';
import { cautionsGerman, pencilTestGerman } from './german.ts';
import { cautionsSpanish, pencilTestSpanish } from './spanish.ts';

export type CautionWords = Translations<typeof cautionsEnglish>;

const WORDS: Readonly<Record<Language, CautionWords>> = { en: cautionsEnglish, de: cautionsGerman, es: cautionsSpanish };

export function cautionWords(language: Language): CautionWords {
  return WORDS[language];
}

/** The check before making a strip, by language. */
export const PENCIL_TESTS: Readonly<Record<Language, string>> = { en: pencilTestEnglish, de: pencilTestGerman, es: pencilTestSpanish };
