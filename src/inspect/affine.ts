import type { Point } from '../geometry/path.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the order in which SVG and PDF write it. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0];

/** The move that does `inner` first, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export function apply([a, b, c, d, e, f]: Affine, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** Positive when turning senses are kept. */
export function determinant([a, b, c, d]: Affine): number {
  return a * d - b * c;
}

/** How much lengths grow at most. */
export function largestScale([a, b, c, d]: Affine): number {
  return Math.max(Math.hypot(a, b), Math.hypot(c, d));
}

/** Whether circles stay circles: both axes grow alike and stay square to each other. */
export function keepsCircles([a, b, c, d]: Affine): boolean {
  const size = a * a + b * b;
  return Math.abs(size - (c * c + d * d)) <= 1e-6 * size && Math.abs(a * c + b * d) <= 1e-6 * size;
}
