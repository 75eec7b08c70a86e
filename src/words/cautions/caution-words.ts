import type { Language, Translations } from '../language.ts';
import { cautionsEnglish } from './english.ts';
import { cautionsGerman } from './german.ts';
import { cautionsSpanish } from './spanish.ts';

export type CautionWords = Translations<typeof cautionsEnglish>;

const WORDS: Readonly<Record<Language, CautionWords>> = { en: cautionsEnglish, de: cautionsGerman, es: cautionsSpanish };

export function cautionWords(language: Language): CautionWords {
  return WORDS[language];
}
