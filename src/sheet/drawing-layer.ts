import type { Drawing, DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { type PageLayer, type PageStroke, type PageText, placeLayer, scaleLayer } from './page.ts';

/**
 * A picture as it comes onto a page, smaller or larger by a factor, its upper left corner at (0, 0): the one road from a drawing to paper.
 * Its letters take the room of stroke letters, for which pictures are laid out.
 */
export function drawingLayer({ items, extents }: Drawing, factor: number): PageLayer {
  // A page draws all strokes of a layer before its letters. No letter of a picture may lie under an area, so that the order changes nothing.
  const layer: PageLayer = {
    clip: null,
    strokes: items.flatMap((item) => (item.kind === 'shape' ? [shapeStroke(item)] : [])),
    texts: items.flatMap((item) => (item.kind === 'text' ? [drawnText(item)] : [])),
  };
  return scaleLayer(placeLayer(layer, { dx: -extents.minX, dy: -extents.maxY }), factor);
}

function shapeStroke({ role, paths, circles, pen, tone, fill }: DrawnShape): PageStroke {
  return { pen: { line: pen, tone, fill, factor: 1 }, role, paths, circles };
}

function drawnText({ text, at, height, align, tone, strong }: DrawnText): PageText {
  return { text, at, height, align, angle: 0, bold: strong, asStrokes: true, tone };
}
