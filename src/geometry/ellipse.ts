import { LENGTH_SOLVED } from '../units/tolerance.ts';
import { completeE, incompleteE } from './elliptic.ts';
import type { Point } from './path.ts';
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

/** An axis-parallel ellipse (semi-axes a along x, b along y, mm) grown outward by `offset`: what a digit is to the strip. A point has all three 0. */
export interface Body {
  readonly center: Point;
  readonly a: number;
  readonly b: number;
  readonly offset: number;
}

/** Support function: how far the body reaches from its centre in the unit direction (nx, ny). */
export function support(body: Body, nx: number, ny: number): number {
  // Not Math.hypot, see `distanceBetween`.
  return Math.sqrt((body.a * nx) ** 2 + (body.b * ny) ** 2) + body.offset;
}

/** The point of the body's edge whose outward normal has the angle `normal` (radians). */
export function pointAtNormal(body: Body, normal: number): Point {
  const nx = Math.cos(normal);
  const ny = Math.sin(normal);
  const h = Math.sqrt((body.a * nx) ** 2 + (body.b * ny) ** 2);
  const ex = h === 0 ? 0 : (body.a * body.a * nx) / h;
  const ey = h === 0 ? 0 : (body.b * body.b * ny) / h;
  return { x: body.center.x + ex + body.offset * nx, y: body.center.y + ey + body.offset * ny };
}

/** Length of the body's edge between two normals (radians): the ellipse's arc plus offset times the turn (Steiner). */
export function edgeLength(body: Body, fromNormal: number, toNormal: number): number {
  return ellipseArcLength(body.a, body.b, fromNormal, toNormal) + body.offset * Math.abs(toNormal - fromNormal);
}

/** How fast the body's reach grows with the normal's angle (radians), mm a radian: how far the point of that normal lies beside the centre. */
export function reachTurning({ a, b }: Body, normal: number): number {
  const nx = Math.cos(normal);
  const ny = Math.sin(normal);
  const h = Math.sqrt((a * nx) ** 2 + (b * ny) ** 2);
  return h === 0 ? 0 : ((b * b - a * a) * nx * ny) / h;
}

/** Integral of the body's reach over the angle of its normal (radians), signed; exact (incomplete elliptic integral). */
export function reachIntegral({ a, b, offset }: Body, from: number, to: number): number {
  if (a === 0 && b === 0) return offset * (to - from);
  const [long, short, turned] = a >= b ? [a, b, 0] : [b, a, Math.PI / 2];
  const m = 1 - (short / long) ** 2;
  return long * (incompleteE(to - turned, m) - incompleteE(from - turned, m)) + offset * (to - from);
}
