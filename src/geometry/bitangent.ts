import { ANGLE_SOLVED } from '../units/tolerance.ts';
import { type Body, support } from './offset-ellipse.ts';
import { rootBetween } from './root.ts';

/** +1: the body lies on the left of the directed path, -1: on its right. */
export type Side = 1 | -1;

/** Sign changes are looked for in this many steps when the plain bracket has none (bodies that overlap at an odd slant). */
const SCAN_STEPS = 90;

/** Where a line of direction `psi` (radians), tangent to a body on the given side, crosses its own left normal: n·p of the line. */
export function tangentOffset(body: Body, side: Side, psi: number): number {
  const nx = -Math.sin(psi);
  const ny = Math.cos(psi);
  return nx * body.center.x + ny * body.center.y - side * support(body, nx, ny);
}

/**
 * Direction (radians) of the line that leaves `first` and arrives at `second`, tangent to both with each on its side.
 * Null when there is none: one body swallows the other, or a crossed tangent is asked of bodies that overlap.
 */
export function bitangentDirection(first: Body, firstSide: Side, second: Body, secondSide: Side): number | null {
  const centreLine = Math.atan2(second.center.y - first.center.y, second.center.x - first.center.x);
  const miss = (psi: number) => tangentOffset(first, firstSide, psi) - tangentOffset(second, secondSide, psi);
  const low = centreLine - Math.PI / 2;
  const plain = rootBetween(miss, low, low + Math.PI, ANGLE_SOLVED);
  if (plain !== null) return plain;
  const step = Math.PI / SCAN_STEPS;
  for (let k = 0; k < SCAN_STEPS; k++) {
    const from = low + k * step;
    if (miss(from) < 0 && miss(from + step) >= 0) return rootBetween(miss, from, from + step, ANGLE_SOLVED);
  }
  return null;
}
