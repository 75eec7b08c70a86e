import type { Point } from '../geometry/path.ts';
import { degrees } from '../units/angle.ts';
import { dot, minus, type Point3, size } from './space.ts';

/** What laying a flat sheet into space asks of it at a place. */
export interface Strain {
  /** Greatest principal stretch or squeeze, as a share: 0 where lengths are kept. */
  readonly stretch: number;
  /** By how much a right angle drawn along and across is no longer one. degrees */
  readonly shear: number;
}

/** Side of the small square that is laid into space. mm */
const SIDE = 0.01;

/**
 * Strain of a sheet at p, from where a small square there comes to lie. `into` must treat the three corners alike: a fold that tells sides of
 * a slot apart takes p's side for all of them.
 */
export function strainAt(into: (p: Point) => Point3, p: Point): Strain {
  const origin = into(p);
  const across = minus(into({ x: p.x + SIDE, y: p.y }), origin);
  const along = minus(into({ x: p.x, y: p.y + SIDE }), origin);
  const [xx, yy, xy] = [dot(across, across), dot(along, along), dot(across, along)].map((value) => value / SIDE ** 2) as [
    number,
    number,
    number,
  ];
  const middle = (xx + yy) / 2;
  const radius = Math.hypot((xx - yy) / 2, xy);
  const [most, least] = [Math.sqrt(middle + radius), Math.sqrt(Math.max(0, middle - radius))];
  const cosine = dot(across, along) / (size(across) * size(along));
  return { stretch: Math.max(most - 1, 1 - least), shear: Math.abs(90 - degrees(Math.acos(Math.max(-1, Math.min(1, cosine))))) };
}
