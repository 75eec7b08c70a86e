import { type Box, polyline } from '../geometry/path.ts';
import type { Drawing } from '../pattern/drawing.ts';
import { type Measure, type PageLayer, type PageText, placeLayer, text, wrapWords } from '../sheet/paper/page.ts';
import { drawingLayer, inkOf } from '../sheet/paper/page-layers.ts';

/** Baseline to baseline over the height of capitals. */
const PITCH = 1.72;

/** Something laid below a level: what is drawn, and the level below it. mm */
export interface Laid {
  readonly layer: PageLayer;
  readonly bottom: number;
}

/** Words broken to a width, their capitals' tops at `top`. */
export function words(
  line: string,
  { x, top, width, height }: { readonly x: number; readonly top: number; readonly width: number; readonly height: number },
  measure: Measure,
  rest: Partial<PageText> = {},
): Laid {
  const bold = rest.bold ?? false;
  const lines = line === '' ? [] : wrapWords(line, width, height, bold, measure);
  const shift = { left: 0, center: width / 2, right: width }[rest.align ?? 'left'];
  const texts = lines.map((one, k) => text(one, x + shift, top - height - k * height * PITCH, height, rest));
  return { layer: { clip: null, strokes: [], texts }, bottom: top - lines.length * height * PITCH };
}

/** A picture as large as a box allows, at most at `most` times its size, in the middle of it; `place` finds its points on the page. */
export function picture(
  drawing: Pick<Drawing, 'items'>,
  box: Box,
  most = 1,
): { readonly layer: PageLayer; readonly place: (p: { x: number; y: number }) => { x: number; y: number }; readonly factor: number } {
  const ink = inkOf(drawing);
  const [w, h] = [ink.maxX - ink.minX, ink.maxY - ink.minY];
  const factor = Math.min(most, (box.maxX - box.minX) / w, (box.maxY - box.minY) / h);
  const dx = (box.minX + box.maxX - factor * w) / 2;
  const dy = (box.minY + box.maxY + factor * h) / 2;
  return {
    layer: placeLayer(drawingLayer(drawing, factor), { dx, dy }),
    place: ({ x, y }) => ({ x: dx + factor * (x - ink.minX), y: dy + factor * (y - ink.maxY) }),
    factor,
  };
}

/** A frame of fine or strong lines. */
export function frame(box: Box, pen: 'rule' | 'bar', role: string): PageLayer {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
  return { clip: null, strokes: [{ pen, role, paths: [polyline(corners, true)], circles: [] }], texts: [] };
}

/** An empty box to tick, its foot on the baseline. */
export function tickBox(x: number, baseline: number, size: number): PageLayer {
  return frame({ minX: x, minY: baseline - 0.1 * size, maxX: x + size, maxY: baseline + 0.9 * size }, 'rule', 'tick-box');
}

/** A line to write on. */
export function blank(x: number, baseline: number, width: number): PageLayer {
  const path = polyline([
    { x, y: baseline - 0.6 },
    { x: x + width, y: baseline - 0.6 },
  ]);
  return { clip: null, strokes: [{ pen: 'rule', role: 'blank', paths: [path], circles: [] }], texts: [] };
}
