import type { Language } from '../language.ts';
import { patientEnglish } from './patient-english.ts';
import { patientGerman } from './patient-german.ts';
import { patientSpanish } from './patient-spanish.ts';
import { storyEnglish } from './story-english.ts';
import { storyGerman } from './story-german.ts';
import { storySpanish } from './story-spanish.ts';

const english = { patient: patientEnglish, story: storyEnglish };

const WORDS = {
  en: english,
  de: { patient: patientGerman, story: storyGerman },
  es: { patient: patientSpanish, story: storySpanish },
};

export type PaperWords = (typeof WORDS)[Language];

/** Every word of the papers in a language. */
export function paperWords(language: Language): PaperWords {
  return WORDS[language];
}
