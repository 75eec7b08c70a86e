import { createSVGWindow } from 'svgdom';
import type { Drawing } from '../../pattern/drawing.ts';
import type { Result } from '../../units/result.ts';
import { DEFAULT_OUTPUT_SETTINGS, type OutputSettings } from '../output-settings.ts';
import type { PatternWriter } from '../writer.ts';
import { svgWriter } from './svg.ts';
import { svgDrawing } from './svg-drawing.ts';

/** The SVG writer for Node, on a window without a screen. */
export function svgNodeWriterFor(settings: OutputSettings): PatternWriter {
  return svgWriter(createSVGWindow(), settings);
}

/** The same for our own defaults. */
export const svgNodeWriter: PatternWriter = svgNodeWriterFor(DEFAULT_OUTPUT_SETTINGS);

/** `svgDrawing` for Node, on a window without a screen. */
export function svgDrawingInNode(drawing: Drawing): Result<string> {
  return svgDrawing(createSVGWindow(), drawing);
}
