/** The languages of page and papers. Files and JSON stay English. */
export const LANGUAGE_IDS = ['en', 'es', 'de'] as const;
export type Language = (typeof LANGUAGE_IDS)[number];

/** The language for a list of wanted language tags (BCP 47), most wanted first; English when none is known. */
export function languageFor(tags: readonly string[]): Language {
  for (const tag of tags) {
    const found = LANGUAGE_IDS.find((language) => tag.toLowerCase().split(/[-_]/)[0] === language);
    if (found) return found;
  }
  return 'en';
}

/** What a file carries of its language: files of English words say nothing of it. */
export function spokenIn(language: Language): { readonly language?: Language } {
  return language === 'en' ? {} : { language };
}

/** The language that a file's inputs carry. */
export function languageOf(inputs: { readonly [key: string]: unknown }): Language {
  return LANGUAGE_IDS.find((language) => language === inputs.language) ?? 'en';
}

/** The same shape with every string left open, so that each language has exactly the texts of the others. */
export type Translations<T> = T extends string
  ? string
  : T extends (...values: infer V) => string
    ? (...values: V) => string
    : { readonly [K in keyof T]: Translations<T[K]> };
