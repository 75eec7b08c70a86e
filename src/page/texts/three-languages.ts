import type { Language, Translations } from '../../words/language.ts';

/** The words of one part of the page: English gives the shape, and a word that a language lacks does not compile. */
export function threeLanguages<T>(en: T, es: Translations<NoInfer<T>>, de: Translations<NoInfer<T>>): Record<Language, Translations<T>> {
  return { en: en as Translations<T>, es, de };
}
