import type { Point } from '../../geometry/path.ts';
import type { Pen } from '../pen.ts';

interface ControlPoint extends Point {
  readonly weight: number;
}

/** Degrees above this do not occur in drawings. */
const HIGHEST_DEGREE = 11;

/**
 * Draws a (rational) B-spline, span by span, as cubics through four of its points: exact for non-rational ones of degree 3, and of lower
 * degree; halved twice for the rest. De Boor's algorithm. Returns what is wrong with it, or null.
 */
export function drawSpline(
  degree: number,
  knots: readonly number[],
  points: readonly ControlPoint[],
  closed: boolean,
  pen: Pen,
): string | null {
  if (!Number.isInteger(degree) || degree < 1 || degree > HIGHEST_DEGREE) return `its degree is ${degree}`;
  if (points.length <= degree || knots.length !== points.length + degree + 1) return 'its knots do not fit its control points';
  const wild = [...knots, ...points.flatMap((p) => [p.x, p.y, p.weight])].some((n) => !Number.isFinite(n));
  if (wild || knots.some((knot, k) => k > 0 && knot < (knots[k - 1] ?? 0))) return 'a number is missing, or its knots do not rise';
  const at = (t: number, span: number) => deBoor(degree, knots, points, t, span);
  let begun = false;
  const exact = degree <= 3 && points.every((p) => p.weight === points[0]?.weight);
  const pieces = exact ? 1 : 4;
  for (let span = degree; span < points.length; span++) {
    const [low = 0, high = 0] = [knots[span], knots[span + 1]];
    if (high <= low) continue;
    if (!begun) pen.move(at(low, span).x, at(low, span).y);
    begun = true;
    for (let k = 0; k < pieces; k++) {
      const t = (share: number) => low + ((high - low) * (k + share)) / pieces;
      const [p, q, r, s] = [at(t(0), span), at(t(1 / 3), span), at(t(2 / 3), span), at(t(1), span)];
      // Control points of the cubic that passes through these four at 0, 1/3, 2/3 and 1.
      const one = (a: number, b: number, c: number, d: number) => (-5 * a + 18 * b - 9 * c + 2 * d) / 6;
      pen.cubic(one(p.x, q.x, r.x, s.x), one(p.y, q.y, r.y, s.y), one(s.x, r.x, q.x, p.x), one(s.y, r.y, q.y, p.y), s.x, s.y);
    }
  }
  if (!begun) return 'its knots leave no curve';
  if (closed) pen.close();
  return null;
}

function deBoor(degree: number, knots: readonly number[], points: readonly ControlPoint[], t: number, span: number): Point {
  const d = Array.from({ length: degree + 1 }, (_, j) => {
    const { x, y, weight } = points[j + span - degree] as ControlPoint;
    return { x: x * weight, y: y * weight, weight };
  });
  for (let r = 1; r <= degree; r++) {
    for (let j = degree; j >= r; j--) {
      const [low = 0, high = 0] = [knots[j + span - degree], knots[j + 1 + span - r]];
      const share = high > low ? (t - low) / (high - low) : 0;
      const [a, b] = [d[j - 1], d[j]];
      if (a && b) d[j] = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), weight: a.weight + share * (b.weight - a.weight) };
    }
  }
  const last = d[degree];
  return last ? { x: last.x / last.weight, y: last.y / last.weight } : { x: Number.NaN, y: Number.NaN };
}
