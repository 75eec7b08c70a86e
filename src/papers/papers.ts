import type { PaperMaker } from '../sheet/paper/paper-maker.ts';
import { patientSheet } from './patient-sheet.ts';

/** The papers of every pattern. */
export const PAPERS_OF_A_PATTERN: Pick<PaperMaker, 'handout'> = { handout: patientSheet };
