import type { Language, Translations } from '../language.ts';
import { englishChart } from './chart-english.ts';
import { germanChart } from './chart-german.ts';
import { spanishChart } from './chart-spanish.ts';

export type ChartWords = Translations<typeof englishChart>;

/** The words of a case's chart, by language: those of its report without what the page has no use for. */
export const CHART_WORDS: Readonly<Record<Language, ChartWords>> = { en: englishChart, es: spanishChart, de: germanChart };
