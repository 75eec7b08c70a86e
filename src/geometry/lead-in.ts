import type { Point, Vertex } from './path.ts';

/** Bulge of a clockwise quarter circle: tan(-pi/8). */
const QUARTER_RIGHT = 1 - Math.SQRT2;

/**
 * A quarter circle on which a tool comes in from the right of the travel, which is the waste of a counter-clockwise outline and of a
 * clockwise hole, and joins tangentially at `entry` with the direction `heading` (radians). `radius` in mm. The start's vertex carries the arc.
 */
export function leadInStart(entry: Point, heading: number, radius: number): Vertex {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  return { x: entry.x + radius * (s - c), y: entry.y - radius * (c + s), bulge: QUARTER_RIGHT };
}
