import { type Box, boxOf, unionBox } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Drawing, DrawnShape, DrawnText } from '../../pattern/drawing.ts';
import type { Part } from '../../pattern/pattern.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { drawnLayer, joined, type PageLayer, type PageStroke, type PageText, placeLayer, scaleLayer } from './page.ts';

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

/** A part as it is laid on paper: its lower left corner at (0, 0), turned by a quarter or not. mm */
export interface LaidPart {
  readonly title: string;
  readonly layer: PageLayer;
  readonly width: number;
  readonly height: number;
}

/** The order of the file: marks, then holes, then the outline (output rule 8). */
function partLayer(part: Part): PageLayer {
  const cut = (role: string, path: Part['outline']) => ({ pen: 'CUT' as const, role, paths: [path], circles: [] });
  const outlines: PageLayer = {
    clip: null,
    strokes: [...part.holes.map((hole) => cut('hole', hole)), cut('outline', part.outline)],
    texts: [],
  };
  return joined(drawnLayer(part), outlines);
}

function partBox(part: Part): Box {
  const outline = boxOf([part.outline]);
  return part.marks.length + part.labels.length > 0 ? unionBox([outline, boxOfDrawn(part)]) : outline;
}

export function layPart(part: Part, quarterTurn: boolean): LaidPart {
  const box = partBox(part);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const atOrigin = placeLayer(partLayer(part), { dx: -box.minX, dy: -box.minY });
  if (!quarterTurn) return { title: part.title, layer: atOrigin, width, height };
  return { title: part.title, layer: placeLayer(atOrigin, { angle: 90, dx: height, dy: 0 }), width: height, height: width };
}

/** Parts set in rows, left to right and downwards, with free space between; null when they are larger than the room. Lower left corner at (0, 0). */
export function arrangeParts(parts: readonly LaidPart[], room: { readonly width: number; readonly height: number }): LaidPart | null {
  const placed: { part: LaidPart; x: number; top: number }[] = [];
  let [x, top, rowHeight, width] = [0, 0, 0, 0];
  for (const part of parts) {
    if (x > 0 && x + part.width > room.width) [x, top, rowHeight] = [0, top + rowHeight + PART_GAP, 0];
    if (part.width > room.width || top + part.height > room.height) return null;
    placed.push({ part, x, top });
    width = Math.max(width, x + part.width);
    x += part.width + PART_GAP;
    rowHeight = Math.max(rowHeight, part.height);
  }
  const height = Math.max(...placed.map((p) => p.top + p.part.height));
  const layers = placed.map(({ part, x: dx, top: down }) => placeLayer(part.layer, { dx, dy: height - down - part.height }));
  return { title: parts.map((p) => p.title).join(', '), layer: joined(...layers), width, height };
}

/** Free space between parts on one page. mm */
const PART_GAP = 8;
