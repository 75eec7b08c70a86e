import { fixed, plain } from '../../units/number.ts';
import type { Language, Translations } from '../language.ts';
import { withDecimalSign } from '../speech.ts';
import { terminalEnglish } from './english.ts';
import { terminalGerman } from './german.ts';
import { terminalSpanish } from './spanish.ts';

export type TerminalWords = Translations<typeof terminalEnglish>;

const WORDS: Readonly<Record<Language, TerminalWords>> = { en: terminalEnglish, de: terminalGerman, es: terminalSpanish };

/** What commands print of what they made, in one language, with its numbers. Problems and warnings stay English, and so do JSON and names of files. */
export interface TerminalSpeech {
  readonly language: Language;
  readonly w: TerminalWords;
  readonly number: (value: number, decimals?: number) => string;
  /** With all its decimals, for columns. */
  readonly fixed: (value: number, decimals: number) => string;
}

export function terminalSpeech(language: Language): TerminalSpeech {
  return {
    language,
    w: WORDS[language],
    number: (value, decimals) => withDecimalSign(plain(value, decimals), language),
    fixed: (value, decimals) => withDecimalSign(fixed(value, decimals), language),
  };
}
