import type { Language } from '../../words/language.ts';
import { DEFAULT_MARGIN, type Orientation, PAPERS, type Paper } from './paper.ts';

/** What may be printed: the pattern at 1:1 with its paper strip, if it has one, that paper strip alone, the making sheet, the page for the patient. */
export const SHEET_PARTS = ['pattern', 'trial', 'making', 'handout'] as const;
export type SheetPart = (typeof SHEET_PARTS)[number];

/** What the two 100 mm bars of an uncorrected print measured, mm. */
export interface PrintedBars {
  readonly across: number;
  readonly along: number;
}

/** What a clinic puts on its papers: lines for the head of the patient's sheet, and its telephone. */
export interface ClinicLines {
  readonly letterhead: readonly string[];
  readonly telephone: string;
}

export const NO_CLINIC: ClinicLines = { letterhead: [], telephone: '' };

/** How a pattern is put on paper. */
export interface SheetSettings {
  readonly paper: Paper;
  /** mm on every side. */
  readonly margin: number;
  /** `both`: what fits a page stays inside the printable areas of A4 and Letter alike. */
  readonly area: 'both' | 'paper';
  readonly parts: readonly SheetPart[];
  readonly orientation: Orientation | 'auto';
  /** Draws everything larger or smaller against a printer's error, or not. */
  readonly correction: PrintedBars | null;
  /** Of everything that is read. */
  readonly language: Language;
  readonly clinic: ClinicLines;
}

export const DEFAULT_SHEET_SETTINGS: SheetSettings = {
  paper: PAPERS.a4,
  margin: DEFAULT_MARGIN,
  area: 'both',
  parts: ['pattern', 'making'],
  orientation: 'auto',
  correction: null,
  language: 'en',
  clinic: NO_CLINIC,
};
