import { DEFAULT_OUTPUT_SETTINGS, type OutputSettings } from './output-settings.ts';
import type { PatternWriter, WriterFormat } from './writer.ts';

/** The writer of a format for Node, loaded only when asked for, so that a command pays for no library that it does not use. */
export async function loadWriter(format: WriterFormat, settings: OutputSettings = DEFAULT_OUTPUT_SETTINGS): Promise<PatternWriter> {
  switch (format) {
    case 'svg':
      return (await import('./svg/svg-node.ts')).svgNodeWriterFor(settings);
    case 'dxf':
      return (await import('./dxf/dxf.ts')).dxfWriterFor(settings);
    case 'pdf':
      return (await import('./pdf/pdf.ts')).pdfWriter(settings.pdf);
  }
}
