import type { Language } from '../language.ts';
import { patientEnglish } from './patient-english.ts';
import { patientGerman } from './patient-german.ts';
import { patientSpanish } from './patient-spanish.ts';

const english = { patient: patientEnglish };

const WORDS = {
  en: english,
  de: { patient: patientGerman },
  es: { patient: patientSpanish },
};

export type PaperWords = (typeof WORDS)[Language];

/** Every word of the papers in a language. */
export function paperWords(language: Language): PaperWords {
  return WORDS[language];
}
