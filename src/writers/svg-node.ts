import { createSVGWindow } from 'svgdom';
import { svgWriter } from './svg.ts';
import type { PatternWriter } from './writer.ts';

/** The SVG writer for Node, on a window without a screen. */
export const svgNodeWriter: PatternWriter = svgWriter(createSVGWindow());
