import { english, type Texts } from './english.ts';
import { german } from './german.ts';
import { spanish } from './spanish.ts';

export const LANGUAGES = { en: english, es: spanish, de: german } as const satisfies Record<string, Texts>;
export type Language = keyof typeof LANGUAGES;

/** The page's language for a list of wanted language tags (BCP 47), most wanted first; English when none is known. */
export function languageFor(tags: readonly string[]): Language {
  for (const tag of tags) {
    const found = (Object.keys(LANGUAGES) as Language[]).find((language) => tag.toLowerCase().split('-')[0] === language);
    if (found) return found;
  }
  return 'en';
}
