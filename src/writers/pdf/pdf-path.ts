import { type ArcShape, arcOf, type Point, type Segment } from '../../geometry/path.ts';

/** A cubic Bézier curve after its starting point. */
export type Cubic = readonly [Point, Point, Point];

/** Farthest that a drawn curve may lie from the true arc, mm; output rule 4 allows 0.001. */
export const ARC_ERROR = 0.0002;

/** A curve never covers more than this; a wide arc in few pieces would also be far off in its tangents. radians */
const WIDEST = Math.PI / 4;

/** The arc of a segment as cubic curves that stay within `ARC_ERROR` of it; null for a straight segment. */
export function arcCubics(segment: Segment): readonly Cubic[] | null {
  const arc = arcOf(segment);
  if (!arc) return null;
  let count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / WIDEST - 1e-9));
  while (cubicError(arc.radius, Math.abs(arc.sweep) / count) > ARC_ERROR) count++;
  const cubics = Array.from({ length: count }, (_, k) => cubicOf(arc, arc.startAngle + (arc.sweep * k) / count, arc.sweep / count));
  const last = cubics[count - 1];
  // The end is the segment's own, so that neighbours meet without rounding.
  return last ? [...cubics.slice(0, -1), [last[0], last[1], segment.to]] : cubics;
}

/**
 * Radial error of the usual cubic for an arc (handles of 4/3 tan(sweep/4) radii): 2/27 r sin⁶(sweep/4) / cos²(sweep/4), the greatest
 * distance of that curve from the circle, all of it outside; right to 0.02 % up to a quarter circle, as the tests find by sampling.
 */
export function cubicError(radius: number, sweep: number): number {
  const quarter = sweep / 4;
  return ((2 / 27) * radius * Math.sin(quarter) ** 6) / Math.cos(quarter) ** 2;
}

function cubicOf(arc: ArcShape, from: number, sweep: number): Cubic {
  const handle = (4 / 3) * Math.tan(sweep / 4) * arc.radius;
  const at = (angle: number): Point => ({ x: arc.center.x + arc.radius * Math.cos(angle), y: arc.center.y + arc.radius * Math.sin(angle) });
  const [start, end] = [at(from), at(from + sweep)];
  return [
    { x: start.x - handle * Math.sin(from), y: start.y + handle * Math.cos(from) },
    { x: end.x + handle * Math.sin(from + sweep), y: end.y - handle * Math.cos(from + sweep) },
    end,
  ];
}
