import type { Point } from './path.ts';

/** Whether a point lies inside a polygon, by the even-odd rule; on the edge it may be either. */
export function isInsidePolygon({ x, y }: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  for (const [k, a] of polygon.entries()) {
    const b = polygon[(k + 1) % polygon.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}
