import type { Language, Translations } from '../language.ts';
import { englishRecord } from './english.ts';
import { germanRecord } from './german.ts';
import { spanishRecord } from './spanish.ts';

export type RecordWords = Translations<typeof englishRecord>;

/** The words of a case and its visits, by language: report, chart, what next. */
export const RECORD_WORDS: Readonly<Record<Language, RecordWords>> = { en: englishRecord, es: spanishRecord, de: germanRecord };
