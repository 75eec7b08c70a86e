import { insidePolygon } from '../../geometry/inside.ts';
import { boxOf, flattened, type LineArcPath, type Point } from '../../geometry/path.ts';

/** How far chords may lie off the arcs, mm. */
const CHORD_ERROR = 0.004;

/**
 * Distance of two closed outlines, mm, never more than the true one and at most 0.01 mm less; 0 when they cross or one lies in the other. Beyond `enough`
 * the distance of the boxes is returned, which is no more than the true one either.
 */
export function outlineGap(one: LineArcPath, other: LineArcPath, enough: number): number {
  const [a, b] = [boxOf([one]), boxOf([other])];
  const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
  if (apart >= enough) return apart;
  const [p, q] = [flattened(one, CHORD_ERROR).vertices, flattened(other, CHORD_ERROR).vertices];
  if (insidePolygon(q, p[0] as Point) || insidePolygon(p, q[0] as Point)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, from] of p.entries()) {
    const to = p[(i + 1) % p.length] as Point;
    for (const [j, start] of q.entries()) {
      const end = q[(j + 1) % q.length] as Point;
      if (Math.max(boxApart(from.x, to.x, start.x, end.x), boxApart(from.y, to.y, start.y, end.y)) >= least) continue;
      least = Math.min(least, edgeGap(from, to, start, end));
      if (least === 0) return 0;
    }
  }
  return Math.max(0, least - 2 * CHORD_ERROR);
}

function boxApart(a: number, b: number, c: number, d: number): number {
  return Math.max(Math.min(a, b) - Math.max(c, d), Math.min(c, d) - Math.max(a, b));
}

function edgeGap(a: Point, b: Point, c: Point, d: Point): number {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) > 0 !== side(a, b, d) > 0 && side(c, d, a) > 0 !== side(c, d, b) > 0) return 0;
  return Math.min(pointGap(a, c, d), pointGap(b, c, d), pointGap(c, a, b), pointGap(d, a, b));
}

function pointGap(p: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - from.x) * dx + (p.y - from.y) * dy) / square));
  return Math.hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}
