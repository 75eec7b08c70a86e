import { type Box, boxOf, unionBox } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Drawing, DrawnShape, DrawnText } from '../../pattern/drawing.ts';
import { type PageLayer, type PageStroke, type PageText, placeLayer, scaleLayer } from './page.ts';

/** Box round what is drawn, without the white margin that a picture by itself has: a page has its own. mm */
export function inkOf({ items }: Pick<Drawing, 'items'>): Box {
  return unionBox(items.flatMap((item) => (item.kind === 'shape' ? shapeBoxes(item) : [textBox(item)])));
}

function shapeBoxes({ paths, circles }: DrawnShape): readonly Box[] {
  const round = circles.map(({ center: { x, y }, radius: r }) => ({ minX: x - r, maxX: x + r, minY: y - r, maxY: y + r }));
  return [...paths.map((path) => boxOf([path])), ...round];
}

function textBox({ text, at, height, align }: DrawnText): Box {
  const width = textWidth(text, height);
  const minX = at.x - { left: 0, center: width / 2, right: width }[align];
  return { minX, maxX: minX + width, minY: at.y - TAIL * height, maxY: at.y + height };
}

/** What letters with a tail take under the baseline, in capital heights. */
const TAIL = 0.3;

/**
 * A picture as it comes onto a page, smaller or larger by a factor, the upper left corner of its ink at (0, 0): the one road from a drawing
 * to paper. Its letters take the room of stroke letters, for which pictures are laid out.
 */
export function drawingLayer({ items }: Pick<Drawing, 'items'>, factor: number): PageLayer {
  const ink = inkOf({ items });
  // A page draws all strokes of a layer before its letters. No letter of a picture may lie under an area, so that the order changes nothing.
  const layer: PageLayer = {
    clip: null,
    strokes: items.flatMap((item) => (item.kind === 'shape' ? [shapeStroke(item)] : [])),
    texts: items.flatMap((item) => (item.kind === 'text' ? [drawnText(item)] : [])),
  };
  return scaleLayer(placeLayer(layer, { dx: -ink.minX, dy: -ink.maxY }), factor);
}

function shapeStroke({ role, paths, circles, pen, tone, fill }: DrawnShape): PageStroke {
  return { pen: { line: pen, tone, fill, factor: 1 }, role, paths, circles };
}

function drawnText({ text, at, height, align, tone, strong }: DrawnText): PageText {
  return { text, at, height, align, angle: 0, bold: strong, asStrokes: true, tone };
}
