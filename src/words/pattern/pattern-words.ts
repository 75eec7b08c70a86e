import type { Language, Translations } from '../language.ts';
import { patternEnglish } from './english.ts';
import { patternGerman } from './german.ts';
import { patternSpanish } from './spanish.ts';

export type PatternWords = Translations<typeof patternEnglish>;

const WORDS: Readonly<Record<Language, PatternWords>> = { en: patternEnglish, de: patternGerman, es: patternSpanish };

/** The words of strips: on them, beside them, and of their making. */
export function patternWords(language: Language): PatternWords {
  return WORDS[language];
}
