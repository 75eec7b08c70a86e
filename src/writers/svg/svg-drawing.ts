import { Svg, withWindow } from '@svgdotjs/svg.js';
import { strokeText } from '../../geometry/stroke-letters.ts';
import type { Drawing, DrawnShape, DrawnText } from '../../pattern/drawing.ts';
import { COORDINATE_DECIMALS, fixed } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { cleanText } from '../clean-text.ts';
import { PEN_WIDTHS, TONES } from '../drawing-style.ts';
import { withoutStrokes } from '../unknown-characters.ts';
import { describe, line, titled, token } from './svg.ts';
import { svgPathData } from './svg-path.ts';

/** Width of a letter's stroke by its capital height: that of plain and of strong type. */
const LETTER_STROKE = { plain: 0.1, strong: 0.15 } as const;

/**
 * A drawing as SVG, at its size in mm, on paper white; letters are strokes, so that it looks the same everywhere. The same drawing gives the
 * same text. Fails with `LABEL_CHARACTERS_UNKNOWN` for text that has no strokes.
 * @param window the page's own, or svgdom's in Node
 */
export function svgDrawing(window: Window, drawing: Drawing): Result<string> {
  const problems: Problem[] = drawing.items.flatMap((item) => (item.kind === 'text' ? unknownCharacters(item) : []));
  return problems.length > 0 ? failure(...problems) : success(withWindow(window, () => document(drawing)));
}

function document(drawing: Drawing): string {
  const { extents } = drawing;
  const width = fixed(extents.maxX - extents.minX, COORDINATE_DECIMALS);
  const height = fixed(extents.maxY - extents.minY, COORDINATE_DECIMALS);
  const svg = new Svg();
  svg.attr({ width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}`, role: 'img' });
  titled(svg, drawing.title);
  line(svg);
  describe(svg, 'desc', cleanText(drawing.description));
  line(svg);
  svg.path(`M 0 0 H ${width} V ${height} H 0 Z`).attr({ fill: TONES.paper, 'data-role': 'paper' });
  for (const item of drawing.items) {
    line(svg);
    if (item.kind === 'shape') drawShape(svg, item, drawing);
    else drawText(svg, item, drawing);
  }
  line(svg);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg().replaceAll('&quot;', '"')}\n`;
}

function drawShape(svg: Svg, shape: DrawnShape, { extents }: Drawing): void {
  const data = svgPathData(shape.paths, shape.circles, extents);
  if (data === '') return;
  const path = svg.path(data);
  path.attr({ fill: shape.fill === null ? 'none' : TONES[shape.fill], 'data-role': token(shape.role) });
  if (shape.pen !== null) {
    const width = fixed(PEN_WIDTHS[shape.pen], 2);
    path.attr({ stroke: TONES[shape.tone], 'stroke-width': width, 'stroke-linejoin': 'round', 'stroke-linecap': 'butt' });
  }
  if (shape.title !== '') titled(path, shape.title);
}

function drawText(svg: Svg, { text, at, height, align, tone, strong, role }: DrawnText, { extents }: Drawing): void {
  const data = svgPathData(strokeText(text, { at, height, align }).paths, [], extents);
  if (data === '') return;
  const width = fixed(height * (strong ? LETTER_STROKE.strong : LETTER_STROKE.plain), 3);
  const ends = { 'stroke-linejoin': 'round', 'stroke-linecap': 'round' };
  const path = svg.path(data).attr({ fill: 'none', stroke: TONES[tone], 'stroke-width': width, ...ends, 'data-role': token(role) });
  titled(path, text);
}

function unknownCharacters({ text }: DrawnText): readonly Problem[] {
  return withoutStrokes(text, strokeText(text, { at: { x: 0, y: 0 }, height: 1 }).unknown, 'labels');
}
