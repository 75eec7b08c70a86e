import type { NextArrangement } from '../../../block/next-arrangement.ts';
import type { PlanNote, Reason } from '../../../block/plan-notes.ts';
import type { Language } from '../../language.ts';
import { english } from './english.ts';
import { german } from './german.ts';
import type { PlanSpeech, PlanWords } from './plan-words.ts';
import { spanish } from './spanish.ts';

const WORDS: Readonly<Record<Language, PlanWords>> = { en: english, es: spanish, de: german };

/** What a note of the plan says, in one or more sentences. */
export function sayPlanNote(note: PlanNote, language: Language): string {
  const say = WORDS[language].note[note.rule] as (figures: PlanNote) => string;
  return say(note);
}

/** Why a block has its points in one term, one sentence. */
export function sayReason(reason: Reason, language: Language): string {
  const say = WORDS[language].reason[reason.rule] as (figures: Reason) => string;
  return say(reason);
}

/** What to try when a suggestion does not redirect, one sentence. Blocks go by their ids unless the reader knows them otherwise. */
export function sayNext(steps: readonly NextArrangement[], language: Language, speech: PlanSpeech = { blockName: ({ id }) => id }): string {
  const { next, ifNot } = WORDS[language];
  return ifNot(steps.map((step) => (next[step.kind] as (step: NextArrangement, speech: PlanSpeech) => string)(step, speech)));
}
