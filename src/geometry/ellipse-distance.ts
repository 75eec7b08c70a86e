import { LENGTH_SOLVED } from '../units/tolerance.ts';
import type { Point } from './path.ts';
import { rootBetween } from './root.ts';

/**
 * Distance from a point to the nearest point of an axis-parallel ellipse round the origin, mm; negative inside. `a` and `b` are its
 * semi-axes, both positive. Nearest point by the root of its one equation (Eberly, Distance from a Point to an Ellipse, 2013).
 */
export function distanceToEllipse(a: number, b: number, point: Point): number {
  const x = Math.abs(point.x);
  const y = Math.abs(point.y);
  const inside = (x / a) ** 2 + (y / b) ** 2 <= 1;
  const short = Math.min(a, b);
  // (a x / (t + a²))² + (b y / (t + b²))² = 1 has one root above -short².
  const miss = (t: number) => ((a * x) / (t + a * a)) ** 2 + ((b * y) / (t + b * b)) ** 2 - 1;
  const high = a * x + b * y;
  const low = -short * short + short * (short === b ? y : x);
  const t = rootBetween(miss, low, high, LENGTH_SOLVED);
  // On the long axis, near the centre, no root: the nearest point lies off the axis, where the short axis' term fills what is missing.
  if (t === null) return offAxis(a, b, x, y) * (inside ? -1 : 1);
  const [nearX, nearY] = [(a * a * x) / (t + a * a), (b * b * y) / (t + b * b)];
  return Math.hypot(x - nearX, y - nearY) * (inside ? -1 : 1);
}

function offAxis(a: number, b: number, x: number, y: number): number {
  const [long, short, along] = a >= b ? [a, b, x] : [b, a, y];
  if (long === short) return Math.abs(long - Math.hypot(x, y));
  const share = Math.min(1, (long * along) / (long * long - short * short));
  return Math.hypot(along - long * share, short * Math.sqrt(1 - share * share));
}
