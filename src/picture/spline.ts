import type { Point } from '../geometry/path.ts';

/** Points of a smooth line between two of its corners. */
const STEPS = 6;

/**
 * A smooth line through all points (centripetal Catmull-Rom, which makes no loops where points lie unevenly), as close points.
 * Barry & Goldman, SIGGRAPH 1988. A closed one ends at its first point, which is not repeated.
 */
export function smooth(points: readonly Point[], closed = false): readonly Point[] {
  const count = points.length;
  if (count < 3) return points;
  const at = (k: number): Point => {
    if (closed) return points[((k % count) + count) % count] as Point;
    if (k < 0) return mirrored(points[0] as Point, points[1] as Point);
    return k >= count ? mirrored(points[count - 1] as Point, points[count - 2] as Point) : (points[k] as Point);
  };
  const line: Point[] = [];
  for (let k = 0; k < (closed ? count : count - 1); k++) line.push(...between(at(k - 1), at(k), at(k + 1), at(k + 2)));
  if (!closed) line.push(at(count - 1));
  return line;
}

function mirrored(about: Point, p: Point): Point {
  return { x: 2 * about.x - p.x, y: 2 * about.y - p.y };
}

/** From b to c, c left out. */
function between(a: Point, b: Point, c: Point, d: Point): readonly Point[] {
  const knot = (p: Point, q: Point) => Math.max(1e-6, Math.sqrt(Math.hypot(q.x - p.x, q.y - p.y)));
  const t1 = knot(a, b);
  const t2 = t1 + knot(b, c);
  const t3 = t2 + knot(c, d);
  const mix = (p: Point, q: Point, from: number, to: number, t: number): Point => {
    const s = (t - from) / (to - from);
    return { x: p.x + s * (q.x - p.x), y: p.y + s * (q.y - p.y) };
  };
  return Array.from({ length: STEPS }, (_, k) => {
    const t = t1 + ((t2 - t1) * k) / STEPS;
    const [ab, bc, cd] = [mix(a, b, 0, t1, t), mix(b, c, t1, t2, t), mix(c, d, t2, t3, t)];
    return mix(mix(ab, bc, 0, t2, t), mix(bc, cd, t1, t3, t), t1, t2, t);
  });
}
