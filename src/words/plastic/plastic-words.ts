import { getOwn } from '../../units/json-text.ts';
import type { Language, Translations } from '../language.ts';
import { plasticEnglish } from './english.ts';
import { plasticGerman } from './german.ts';
import { plasticSpanish } from './spanish.ts';

export type PlasticWords = Translations<typeof plasticEnglish>;

const WORDS: Readonly<Record<Language, PlasticWords>> = { en: plasticEnglish, de: plasticGerman, es: plasticSpanish };

/** The words of what is cut from plastic: lists, sheets, sizes. */
export function plasticWords(language: Language): PlasticWords {
  return WORDS[language];
}

/** What a warning's code asks to look at; null for one that has no words here. */
export function lookAtWords(code: string, { lookAt }: PlasticWords): string | null {
  const words = getOwn(lookAt, code);
  return typeof words === 'string' ? words : null;
}
