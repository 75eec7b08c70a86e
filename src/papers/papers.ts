import type { PaperMaker } from '../sheet/paper/pattern-pages.ts';
import { patientSheet } from './patient-sheet.ts';
import { storyPages } from './story-pages.ts';

/** The papers of every pattern. */
export const PAPERS_OF_A_PATTERN: PaperMaker = { story: storyPages, handout: patientSheet };
