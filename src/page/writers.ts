import { PAPERS } from '../sheet/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type PrintedBars, type SheetSettings } from '../sheet/sheet-settings.ts';
import { parseLength } from '../units/length.ts';
import { dxfWriter } from '../writers/dxf.ts';
import { pdfWriter } from '../writers/pdf.ts';
import { svgWriter } from '../writers/svg.ts';
import type { PatternWriter, WriterFormat } from '../writers/writer.ts';
import type { Entries } from './state.ts';

/** The writer of a format for the page: the command's own, with the browser's window for SVG. */
export function pageWriter(format: WriterFormat, settings: SheetSettings): PatternWriter {
  switch (format) {
    case 'svg':
      return svgWriter(window);
    case 'dxf':
      return dxfWriter;
    case 'pdf':
      return pdfWriter(settings);
  }
}

/** The sheet as it is printed before any correction. */
export function sheetSettings({ paper }: Entries['print']): SheetSettings {
  return { ...DEFAULT_SHEET_SETTINGS, paper: PAPERS[paper as keyof typeof PAPERS] ?? PAPERS.a4 };
}

/** What the two bars measured, mm; null until both can be read. */
export function printedBars({ across, along }: Entries['print']): PrintedBars | null {
  const [one, other] = [parseLength(across, 'mm'), parseLength(along, 'mm')];
  return one.ok && other.ok ? { across: one.mm, along: other.mm } : null;
}
