import type { Drawing } from './drawing.ts';

/** Words, figures and pictures to be printed, free of paper and format. */
export interface Report {
  readonly title: string;
  /** Small, above the head, on every page: whose paper it is. */
  readonly over?: readonly string[];
  /** Bold, on every page. */
  readonly head: string;
  /** Under it, on every page. */
  readonly under: readonly string[];
  readonly sections: readonly ReportSection[];
  /** Words of the page number; English where it is not given. */
  readonly pageOf?: (page: number, pages: number) => string;
}

/** In this order under its heading ('' for a picture, which has a title of its own): the picture, the lines, the table. */
export interface ReportSection {
  readonly heading: string;
  readonly drawing?: Drawing;
  /** Greatest height of the drawing, mm; as much as the page has where it is not given. */
  readonly tallest?: number;
  readonly lines: readonly ReportLine[];
  readonly table?: ReportTable;
  /** Lines to write on, side by side, each with what belongs on it. */
  readonly toSign?: readonly string[];
}

/** A paragraph; `mark` hangs before it, a letter or a bullet. */
export interface ReportLine {
  readonly mark: string | null;
  readonly text: string;
}

export interface ReportTable {
  readonly columns: readonly { readonly heading: string; readonly align: 'left' | 'center' }[];
  readonly rows: readonly ReportRow[];
}

export interface ReportRow {
  /** One for each column. */
  readonly cells: readonly string[];
  /** Across the whole table under the cells. */
  readonly remarks: readonly string[];
}
