import Drawing from 'dxf-writer';
import Handle from 'dxf-writer/src/Handle.js';
import type { LineArcPath, Vertex } from '../geometry/path.ts';
import type { Circle, Layer, Pattern } from '../pattern/pattern.ts';
import { BULGE_DECIMALS, COORDINATE_DECIMALS, fixed } from '../units/number.ts';
import { type Result, success } from '../units/result.ts';
import { type DrawnItem, fileOrder } from './file-order.ts';
import { dxfComments } from './inputs-text.ts';
import type { PatternWriter } from './writer.ts';

/**
 * AutoCAD colour indices: 7 is black on white and white on black; 251 and 8 are greys that keep a contrast of 3 to 1 on both
 * (WCAG 2.2, 1.4.11), as drawing programs show either.
 */
export const DXF_LAYER_COLOURS: Readonly<Record<Layer, number>> = { CUT: 7, MARK: 251, INFO: 8 };

/** The layer that every DXF has; its list of shapes is written first. */
const FIRST_LAYER = '0';

interface Shape {
  readonly layer: { readonly name: string };
}

/** The part of the library that is used. It copies values into the file as they are, so it is given numbers already written as text. */
interface DxfDrawing {
  readonly layers: Readonly<Record<string, { readonly shapes: Shape[] }>>;
  setUnits(unit: 'Millimeters'): void;
  header(name: string, values: readonly (readonly [code: number, value: string])[]): void;
  addLayer(name: string, colour: number, lineType: string): void;
  setActiveLayer(name: string): void;
  drawLine(x1: string, y1: string, x2: string, y2: string): void;
  drawCircle(x: string, y: string, radius: string): void;
  drawPolyline(points: readonly (readonly string[])[], closed: boolean): void;
  toDxfString(): string;
}

/**
 * DXF (AC1021) in ASCII, mm: layers CUT, MARK, INFO; outlines and holes as closed LWPOLYLINE with bulges, circles as CIRCLE, single straight
 * strokes as LINE, no splines, no text entities. The title and the inputs stand in comments (group 999) before the header.
 */
export const dxfWriter: PatternWriter = {
  format: 'dxf',
  extension: 'dxf',
  write(pattern: Pattern): Result<string> {
    const groups = fileOrder(pattern);
    if (!groups.ok) return groups;
    const drawing = emptyDrawing(pattern);
    for (const group of groups.value) for (const item of group.items) drawItem(drawing, item);
    const comments = dxfComments(pattern.title, pattern.inputs).map((comment) => `999\n${comment}\n`);
    return success(`${comments.join('')}${drawing.toDxfString()}\n`);
  },
};

function emptyDrawing(pattern: Pattern): DxfDrawing {
  // The library counts handles in one static counter; from 0 each time, the same pattern has the same bytes.
  Handle.seed = 0;
  const drawing = new Drawing() as unknown as DxfDrawing;
  const { minX, minY, maxX, maxY } = pattern.extents;
  drawing.setUnits('Millimeters');
  drawing.header('MEASUREMENT', [[70, '1']]);
  drawing.header('EXTMIN', corner(minX, minY));
  drawing.header('EXTMAX', corner(maxX, maxY));
  for (const layer of ['CUT', 'MARK', 'INFO'] as const) drawing.addLayer(layer, DXF_LAYER_COLOURS[layer], 'CONTINUOUS');
  return drawing;
}

function corner(x: number, y: number): readonly (readonly [number, string])[] {
  return [
    [10, coordinate(x)],
    [20, coordinate(y)],
    [30, coordinate(0)],
  ];
}

function drawItem(drawing: DxfDrawing, item: DrawnItem): void {
  for (const path of item.paths) {
    const circle = asCircle(path);
    inFileOrder(drawing, item.layer, () => (circle ? drawCircle(drawing, circle) : drawPath(drawing, path)));
  }
  for (const circle of item.circles) inFileOrder(drawing, item.layer, () => drawCircle(drawing, circle));
}

/** The library writes layer by layer. A shape keeps its layer when it moves to the first layer's list, and there the order is ours. */
function inFileOrder(drawing: DxfDrawing, layer: Layer, draw: () => void): void {
  drawing.setActiveLayer(layer);
  draw();
  const shapes = drawing.layers[layer]?.shapes.splice(0) ?? [];
  drawing.layers[FIRST_LAYER]?.shapes.push(...shapes);
}

function drawCircle(drawing: DxfDrawing, { center, radius }: Circle): void {
  drawing.drawCircle(coordinate(center.x), coordinate(center.y), coordinate(radius));
}

function drawPath(drawing: DxfDrawing, path: LineArcPath): void {
  const [from, to] = path.vertices;
  if (!from || !to) return;
  if (!path.closed && path.vertices.length === 2 && from.bulge === 0) {
    drawing.drawLine(coordinate(from.x), coordinate(from.y), coordinate(to.x), coordinate(to.y));
    return;
  }
  const last = path.vertices.length - 1;
  const points = path.vertices.map((v, i) => {
    const hasArc = v.bulge !== 0 && (path.closed || i < last);
    return hasArc ? [coordinate(v.x), coordinate(v.y), fixed(v.bulge, BULGE_DECIMALS)] : [coordinate(v.x), coordinate(v.y)];
  });
  drawing.drawPolyline(points, path.closed);
}

/** Two half circles that close are a circle, which many machines cut better as CIRCLE. */
function asCircle(path: LineArcPath): Circle | null {
  const [a, b] = path.vertices;
  if (!path.closed || path.vertices.length !== 2 || !a || !b || !isHalf(a) || a.bulge !== b.bulge) return null;
  return { center: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, radius: Math.hypot(b.x - a.x, b.y - a.y) / 2 };
}

function isHalf(v: Vertex): boolean {
  return Math.abs(v.bulge) === 1;
}

function coordinate(value: number): string {
  return fixed(value, COORDINATE_DECIMALS);
}
