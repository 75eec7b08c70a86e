import { ellipseArcLength } from './ellipse.ts';
import type { Point } from './path.ts';

/** An axis-parallel ellipse (semi-axes a along x, b along y, mm) grown outward by `offset`: what a digit is to the strip. A point has all three 0. */
export interface Body {
  readonly center: Point;
  readonly a: number;
  readonly b: number;
  readonly offset: number;
}

/** Support function: how far the body reaches from its centre in the unit direction (nx, ny). */
export function support(body: Body, nx: number, ny: number): number {
  // Math.hypot guards against overflow, which lengths of a hand are far from, and takes ten times as long.
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
