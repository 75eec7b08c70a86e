import type { Language } from '../../words/language.ts';
import { english, type Texts } from './english.ts';
import { german } from './german.ts';
import { spanish } from './spanish.ts';

export const LANGUAGES = { en: english, es: spanish, de: german } as const satisfies Record<Language, Texts>;
export { type Language, languageFor } from '../../words/language.ts';
