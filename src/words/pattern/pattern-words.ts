import type { Language, Translations } from '../language.ts';
import { patternEnglish } from './english.ts';
import { patternGerman } from './german.ts';
import { plateEnglish } from './plate-english.ts';
import { plateGerman } from './plate-german.ts';
import { plateSpanish } from './plate-spanish.ts';
import { patternSpanish } from './spanish.ts';

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
