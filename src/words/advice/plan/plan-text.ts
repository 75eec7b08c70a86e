import type { Language, Translations } from '../../language.ts';
import { planTextEnglish } from './text-english.ts';
import { planTextGerman } from './text-german.ts';
import { planTextSpanish } from './text-spanish.ts';

export type PlanText = Translations<typeof planTextEnglish>;

/** What a plan in words says round its notes, by language. */
export const PLAN_TEXT: Readonly<Record<Language, PlanText>> = { en: planTextEnglish, es: planTextSpanish, de: planTextGerman };
