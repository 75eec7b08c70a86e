import { dxfWriter } from '../writers/dxf.ts';
import { svgWriter } from '../writers/svg.ts';
import type { PatternWriter, WriterFormat } from '../writers/writer.ts';

/** The writer of a format for the page: the command's own, with the browser's window for SVG. */
export function pageWriter(format: WriterFormat): PatternWriter {
  switch (format) {
    case 'svg':
      return svgWriter(window);
    case 'dxf':
      return dxfWriter;
  }
}
