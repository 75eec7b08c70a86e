import { plain } from '../units/number.ts';
import { type CautionWords, cautionWords } from './cautions.ts';
import { type HandWords, handWords } from './hand-words.ts';
import type { Language } from './language.ts';
import { type PatternWords, type PlateWords, patternWords, plateWords } from './pattern/pattern-words.ts';

/** All that a pattern is worded in: one language, its numbers with their decimal sign. */
export interface Speech {
  readonly language: Language;
  readonly hand: HandWords;
  readonly strip: PatternWords;
  readonly plate: PlateWords;
  readonly cautions: CautionWords;
  /** A number for readers, rounded to at most so many decimals. */
  readonly number: (value: number, decimals: number) => string;
}

export function speechIn(language: Language): Speech {
  return {
    language,
    hand: handWords(language),
    strip: patternWords(language),
    plate: plateWords(language),
    cautions: cautionWords(language),
    number: (value, decimals) => withDecimalSign(plain(value, decimals), language),
  };
}

/** A number as text with the decimal sign of a language: a comma in German and Spanish. */
export function withDecimalSign(number: string, language: Language): string {
  return language === 'en' ? number : number.replace('.', ',');
}
