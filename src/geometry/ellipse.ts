import { LENGTH_SOLVED } from '../units/tolerance.ts';
import { completeE, incompleteE } from './elliptic.ts';
import { rootBetween } from './root.ts';

/** Perimeter of an ellipse with the semi-axes a and b, in their unit; exact (complete elliptic integral), either axis may be 0. */
export function ellipsePerimeter(a: number, b: number): number {
  const long = Math.max(a, b);
  const short = Math.min(a, b);
  return long === 0 ? 0 : 4 * long * completeE(1 - (short / long) ** 2);
}

/**
 * The other semi-axis of an ellipse with semi-axis `a` and the given perimeter; null when there is none (perimeter <= 4a,
 * where even a flat ellipse is longer round).
 */
export function semiAxisFromPerimeter(a: number, perimeter: number): number | null {
  if (!(a > 0) || !Number.isFinite(perimeter) || perimeter <= 4 * a) return null;
  return rootBetween((b) => ellipsePerimeter(a, b) - perimeter, 0, perimeter / 4, LENGTH_SOLVED);
}

/** Parameter t of the point (a cos t, b sin t) whose outward normal points at `normal`; continuous, so whole turns are kept. Radians. */
export function parameterOfNormal(a: number, b: number, normal: number): number {
  const turns = Math.round(normal / (2 * Math.PI));
  const rest = normal - turns * 2 * Math.PI;
  return Math.atan2(b * Math.sin(rest), a * Math.cos(rest)) + turns * 2 * Math.PI;
}

/** Length of the arc between two outward normals (radians, any whole turns apart), never negative; exact (incomplete elliptic integral). */
export function ellipseArcLength(a: number, b: number, fromNormal: number, toNormal: number): number {
  if (a === 0 && b === 0) return 0;
  return Math.abs(lengthFromAxis(a, b, parameterOfNormal(a, b, toNormal)) - lengthFromAxis(a, b, parameterOfNormal(a, b, fromNormal)));
}

/** Signed length along the ellipse, up to a constant: the integral of sqrt(a² sin² t + b² cos² t). */
function lengthFromAxis(a: number, b: number, t: number): number {
  return a >= b ? a * incompleteE(t - Math.PI / 2, 1 - (b / a) ** 2) : b * incompleteE(t, 1 - (a / b) ** 2);
}
