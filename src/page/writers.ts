import type { SheetSettings } from '../sheet/paper/sheet-settings.ts';
import { dxfWriter } from '../writers/dxf/dxf.ts';
import { pdfWriter } from '../writers/pdf/pdf.ts';
import { svgWriter } from '../writers/svg/svg.ts';
import type { PatternWriter, WriterFormat } from '../writers/writer.ts';

export { layOutForPdf } from '../writers/pdf/pdf.ts';

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
