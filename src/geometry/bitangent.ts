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
  const quick = byNewton(first, firstSide, second, secondSide, centreLine);
  if (quick !== null) return quick;
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

const NEWTON_STEPS = 12;

/**
 * Newton's method from the centre line. At a root the sine of the angle to that line is the difference of the reaches (their sum, for a crossed tangent)
 * over the distance, and the reach of an ellipse changes by no more than the difference of its axes a radian; where the miss so rises at every root
 * there is but one. Null where that is not sure, or where it has not settled.
 */
function byNewton(first: Body, firstSide: Side, second: Body, secondSide: Side, centreLine: number): number | null {
  const dx = second.center.x - first.center.x;
  const dy = second.center.y - first.center.y;
  const [most1, most2] = [Math.max(first.a, first.b) + first.offset, Math.max(second.a, second.b) + second.offset];
  const [least1, least2] = [Math.min(first.a, first.b) + first.offset, Math.min(second.a, second.b) + second.offset];
  const across = firstSide === secondSide ? Math.max(most1 - least2, most2 - least1) : most1 + most2;
  const uneven = Math.abs(first.a - first.b) + Math.abs(second.a - second.b);
  if (dx * dx + dy * dy - across * across <= uneven * uneven) return null;
  let psi = centreLine;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const nx = -Math.sin(psi);
    const ny = Math.cos(psi);
    const [h1, h2] = [Math.sqrt((first.a * nx) ** 2 + (first.b * ny) ** 2), Math.sqrt((second.a * nx) ** 2 + (second.b * ny) ** 2)];
    const miss = secondSide * (h2 + second.offset) - firstSide * (h1 + first.offset) - nx * dx - ny * dy;
    // Of the reach of an ellipse, by the angle: (a² - b²) sin cos over itself; a point has none.
    const turning = -nx * ny;
    const rise1 = h1 === 0 ? 0 : ((first.a * first.a - first.b * first.b) * turning) / h1;
    const rise2 = h2 === 0 ? 0 : ((second.a * second.a - second.b * second.b) * turning) / h2;
    const rise = secondSide * rise2 - firstSide * rise1 + ny * dx - nx * dy;
    if (!(rise > 0)) return null;
    const move = -miss / rise;
    psi += move;
    if (Math.abs(psi - centreLine) >= Math.PI / 2) return null;
    if (Math.abs(move) <= ANGLE_SOLVED) return psi;
  }
  return null;
}
