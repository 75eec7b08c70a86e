import { createSVGWindow } from 'svgdom';
import type { Drawing } from '../../pattern/drawing.ts';
import type { Result } from '../../units/result.ts';
import { svgDrawing } from './svg-drawing.ts';

/** `svgDrawing` for Node, on a window without a screen. */
export function svgDrawingInNode(drawing: Drawing): Result<string> {
  return svgDrawing(createSVGWindow(), drawing);
}
