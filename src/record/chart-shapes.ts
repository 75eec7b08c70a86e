import { type Point, polyline } from '../geometry/path.ts';
import { dashed } from '../pattern/dashes.ts';
import type { DrawnShape, DrawnText, Pen, Tone } from '../pattern/drawing.ts';

/** Strokes and gaps of the passive lines and of the band's edges, mm. */
export const PASSIVE_DASH = [2.2, 1.4] as const;
export const BAND_DASH = [0.7, 0.9] as const;

/** A line through the points, unbroken or in dashes that start anew at each point. */
export function chartLine(
  role: string,
  title: string,
  points: readonly Point[],
  pen: Pen,
  tone: Tone,
  dash: readonly number[] = [],
): DrawnShape {
  const pieces = points.slice(1).flatMap((to, k) => dashed(points[k] ?? to, to, dash));
  return { kind: 'shape', role, title, paths: dash.length === 0 ? [polyline(points)] : pieces, circles: [], pen, tone, fill: null };
}

/** An area between two corners. */
export function chartBox(
  role: string,
  title: string,
  from: Point,
  to: Point,
  fill: Tone | null,
  pen: Pen | null = null,
  tone: Tone = 'ink',
): DrawnShape {
  const corners = [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
  return { kind: 'shape', role, title, paths: [polyline(corners, true)], circles: [], pen, tone, fill };
}

export function chartDot(role: string, title: string, center: Point, radius: number, fill: Tone, pen: Pen, tone: Tone): DrawnShape {
  return { kind: 'shape', role, title, paths: [], circles: [{ center, radius }], pen, tone, fill };
}

export interface TextStyle {
  readonly height?: number;
  readonly align?: DrawnText['align'];
  readonly tone?: Tone;
  readonly strong?: boolean;
}

/** Capital height of most words on the chart, mm. */
export const WORDS = 2.5;

export function chartText(
  role: string,
  text: string,
  at: Point,
  { height = WORDS, align = 'left', tone = 'ink', strong = false }: TextStyle = {},
): DrawnText {
  return { kind: 'text', role, text, at, height, align, tone, strong };
}
