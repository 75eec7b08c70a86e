import { fixed, plain } from '../../units/number.ts';
import type { Language, Translations } from '../language.ts';
import { withDecimalSign } from '../speech.ts';
import { sheetEnglish } from './english.ts';
import { sheetGerman } from './german.ts';
import { sheetSpanish } from './spanish.ts';

export type SheetWords = Translations<typeof sheetEnglish>;

const WORDS: Readonly<Record<Language, SheetWords>> = { en: sheetEnglish, de: sheetGerman, es: sheetSpanish };

/** The words of pages in a language, with its numbers. */
export interface SheetSpeech {
  readonly w: SheetWords;
  readonly number: (value: number, decimals: number) => string;
  /** With all its decimals, for columns. */
  readonly fixed: (value: number, decimals: number) => string;
}

export function sheetSpeech(language: Language): SheetSpeech {
  return {
    w: WORDS[language],
    number: (value, decimals) => withDecimalSign(plain(value, decimals), language),
    fixed: (value, decimals) => withDecimalSign(fixed(value, decimals), language),
  };
}
