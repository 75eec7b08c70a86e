import type { Language, Translations } from '../../language.ts';
import { englishCourse } from './english.ts';
import { germanCourse } from './german.ts';
import { spanishCourse } from './spanish.ts';

export type CourseWords = Translations<typeof englishCourse>;

/** What the rules of the course say, by language. */
export const COURSE_WORDS: Readonly<Record<Language, CourseWords>> = { en: englishCourse, es: spanishCourse, de: germanCourse };
