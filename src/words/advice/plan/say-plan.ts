import type { NextArrangement } from '../../../block/plan.ts';
import type { Ask, PlanNote, Reason } from '../../../block/plan-notes.ts';
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

/** Whom to ask, and how soon, one sentence. */
export function sayAsk(ask: Ask, language: Language): string {
  return WORDS[language].ask[ask];
}

/** Why a block has its points in one term, one sentence. */
export function sayReason(reason: Reason, language: Language): string {
  const say = WORDS[language].reason[reason.rule] as (figures: Reason) => string;
  return say(reason);
}

/** What comes next, as a part of a sentence. A block goes by its id unless the reader knows it otherwise. */
export function sayStep(step: NextArrangement, language: Language, speech: PlanSpeech = { blockName: ({ id }) => id }): string {
  return (WORDS[language].next[step.kind] as (step: NextArrangement, speech: PlanSpeech) => string)(step, speech);
}

/** What to try when a suggestion does not redirect, one sentence. */
export function sayNext(steps: readonly NextArrangement[], language: Language, speech?: PlanSpeech): string {
  return WORDS[language].ifNot(steps.map((step) => sayStep(step, language, speech)));
}
