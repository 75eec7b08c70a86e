import { type LineArcPath, type Point, polyline } from '../geometry/path.ts';

/** Strokes and gaps in mm, in turn; an empty list is an unbroken line. */
export type DashPattern = readonly number[];

/** How each kind of line is told apart, drawn as strokes so that every machine draws it alike. */
export const DASHES = {
  dorsal: [],
  palmar: [3, 1.5],
  web: [0.8, 1.2],
  border: [4, 1, 1, 1],
  limit: [1.5, 1],
} as const satisfies Record<string, DashPattern>;

/** Shorter remainders at the end are left away: a plotter makes a blot of them. mm */
const SHORTEST_STROKE = 0.3;

/** The straight line between two points as its strokes. */
export function dashed(from: Point, to: Point, pattern: DashPattern): readonly LineArcPath[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (pattern.length === 0) return [polyline([from, to])];
  const at = (d: number): Point => ({ x: from.x + ((to.x - from.x) * d) / length, y: from.y + ((to.y - from.y) * d) / length });
  const strokes: LineArcPath[] = [];
  let d = 0;
  for (let k = 0; d < length; k++) {
    const next = Math.min(length, d + (pattern[k % pattern.length] as number));
    if (k % 2 === 0 && next - d >= SHORTEST_STROKE) strokes.push(polyline([at(d), at(next)]));
    d = next;
  }
  return strokes;
}
