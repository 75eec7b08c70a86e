import { SAME_POINT } from '../units/tolerance.ts';
import { distanceToSegment } from './broken-line.ts';
import { arcOf, type LineArcPath, type Point, pointsAlong, segmentsOf } from './path.ts';

/** How far a chord may lie from its arc where only marks are placed by it. mm */
const CHORD_ERROR = 0.01;

/** The corners of a path with its arcs as chords within 0.01 mm: for placing marks, never for cutting. */
export function chordPoints(path: LineArcPath): readonly Point[] {
  return segmentsOf(path).flatMap((segment) => {
    const arc = arcOf(segment);
    const step = arc ? 2 * Math.acos(Math.max(0, 1 - CHORD_ERROR / arc.radius)) : 1;
    return pointsAlong(segment, arc ? Math.max(1, Math.ceil(Math.abs(arc.sweep) / step)) : 1);
  });
}

/** Whether a point lies inside a closed polygon (even-odd rule). */
export function insidePolygon(polygon: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length] as Point;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

/**
 * The pieces of a straight line that lie inside a closed polygon, each shortened by `inset` mm where they end at its edge; shorter ones are left out.
 * What lies within `SAME_POINT` of the edge lies on it, so that no last digit says whether a line through a corner, or along an edge, is cut there.
 */
export function clipToPolygon(polygon: readonly Point[], from: Point, to: Point, inset: number): readonly (readonly [Point, Point])[] {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  const at = (t: number): Point => ({ x: from.x + t * dx, y: from.y + t * dy });
  const aside = polygon.map((p) => (dx * (p.y - from.y) - dy * (p.x - from.x)) / length);
  const same = SAME_POINT / length;
  const cuts = [0, 1];
  for (const [i, a] of polygon.entries()) {
    const k = (i + 1) % polygon.length;
    const b = polygon[k] as Point;
    const [offA, offB] = [aside[i] as number, aside[k] as number];
    const isOn = Math.abs(offA) < SAME_POINT;
    if (!isOn && (Math.abs(offB) < SAME_POINT || offA > 0 === offB > 0)) continue;
    const share = isOn ? 0 : offA / (offA - offB);
    const [x, y] = [a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)];
    const t = ((x - from.x) * dx + (y - from.y) * dy) / length ** 2;
    if (t > same && t < 1 - same) cuts.push(t);
  }
  cuts.sort((p, q) => p - q);
  const isInside = (p: Point) =>
    insidePolygon(polygon, p) && polygon.every((a, i) => distanceToSegment(p, a, polygon[(i + 1) % polygon.length] as Point) >= SAME_POINT);
  const pieces: (readonly [Point, Point])[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [low, high] = [cuts[i] as number, cuts[i + 1] as number];
    if (!isInside(at((low + high) / 2))) continue;
    const start = low === 0 && isInside(from) ? low : low + inset / length;
    const end = high === 1 && isInside(to) ? high : high - inset / length;
    if (end - start > inset / length) pieces.push([at(start), at(end)]);
  }
  return pieces;
}

/** The widest stretch of the level line at `y` inside a closed polygon, or null where there is none. */
export function widestSpan(polygon: readonly Point[], y: number): { readonly from: number; readonly to: number } | null {
  const xs = polygon
    .flatMap((a, i) => {
      const b = polygon[(i + 1) % polygon.length] as Point;
      return a.y > y !== b.y > y ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
    })
    .sort((p, q) => p - q);
  let best: { from: number; to: number } | null = null;
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const [from, to] = [xs[i] as number, xs[i + 1] as number];
    if (!best || to - from > best.to - best.from) best = { from, to };
  }
  return best;
}
