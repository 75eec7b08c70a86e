import type { Language, Translations } from '../language.ts';
import { patternEnglish, plateEnglish } from './english.ts';
import { patternGerman, plateGerman } from './german.ts';
import { patternSpanish, plateSpanish } from './spanish.ts';

export type PatternWords = Translations<typeof patternEnglish>;
export type PlateWords = Translations<typeof plateEnglish>;

const WORDS: Readonly<Record<Language, PatternWords>> = { en: patternEnglish, de: patternGerman, es: patternSpanish };

/** The words of strips: on them, beside them, and of their making. */
export function patternWords(language: Language): PatternWords {
  return WORDS[language];
}

const PLATES: Readonly<Record<Language, PlateWords>> = { en: plateEnglish, de: plateGerman, es: plateSpanish };

export function plateWords(language: Language): PlateWords {
  return PLATES[language];
}
