import type { Language, Translations } from '../language.ts';
import { englishLetter } from './english.ts';
import { germanLetter } from './german.ts';
import { spanishLetter } from './spanish.ts';

export type LetterWords = Translations<typeof englishLetter>;

/** The words of the letter on a case, by language. */
export const LETTER_WORDS: Readonly<Record<Language, LetterWords>> = { en: englishLetter, es: spanishLetter, de: germanLetter };
