import type { Point } from '../../geometry/path.ts';
import type { Pen } from '../pen.ts';
import { type DxfObject, type DxfTag, value, values } from './dxf-tags.ts';

/** Null: drawn. `unknown`: this kind is not read. Else what is wrong with it. */
export type EntityDrawing = null | 'unknown' | string;

const DEGREE = Math.PI / 180;

/** Draws one entity of a DXF with the pen, in the file's units. Group codes as in the published DXF reference. */
export function drawEntity(object: DxfObject, vertices: readonly DxfObject[], pen: Pen): EntityDrawing {
  switch (object.kind) {
    case 'LINE':
      return line(object, pen);
    case 'CIRCLE':
    case 'ARC':
      return round(object, pen);
    case 'LWPOLYLINE':
      return polyline(lightVertices(object.tags), (Number(value(object, 70) ?? 0) & 1) === 1, pen);
    case 'POLYLINE':
      return heavyPolyline(object, vertices, pen);
    case 'ELLIPSE':
      return ellipse(object, pen);
    case 'SPLINE':
      return spline(object, pen);
    default:
      return 'unknown';
  }
}

function numbers(object: DxfObject, ...codes: readonly number[]): readonly number[] | null {
  const found = codes.map((code) => Number(value(object, code) ?? Number.NaN));
  return found.every(Number.isFinite) ? found : null;
}

function line(object: DxfObject, pen: Pen): EntityDrawing {
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = numbers(object, 10, 20, 11, 21) ?? [Number.NaN];
  if (Number.isNaN(x1)) return 'a coordinate is missing or is no number';
  pen.move(x1, y1);
  pen.line(x2, y2);
  return null;
}

function round(object: DxfObject, pen: Pen): EntityDrawing {
  const isArc = object.kind === 'ARC';
  const found = numbers(object, 10, 20, 40, ...(isArc ? [50, 51] : []));
  if (!found) return 'a number is missing or is none';
  const [x = 0, y = 0, r = 0, from = 0, to = 360] = found;
  if (!(r > 0)) return `its radius is ${r}`;
  const start = isArc ? from * DEGREE : 0;
  const turned = ((((to - from) % 360) + 360) % 360 || 360) * DEGREE;
  pen.move(x + r * Math.cos(start), y + r * Math.sin(start));
  pen.arc(x, y, isArc ? turned : 2 * Math.PI);
  if (!isArc) {
    pen.settle(x + r, y);
    pen.close();
  }
  return null;
}

interface BulgeVertex {
  x: number;
  y: number;
  bulge: number;
}

function lightVertices(tags: readonly DxfTag[]): readonly BulgeVertex[] {
  const found: BulgeVertex[] = [];
  for (const [code, text] of tags) {
    const last = found.at(-1);
    if (code === 10) found.push({ x: Number(text), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = Number(text);
    else if (code === 42 && last) last.bulge = Number(text);
  }
  return found;
}

function heavyPolyline(object: DxfObject, vertices: readonly DxfObject[], pen: Pen): EntityDrawing {
  const flags = Number(value(object, 70) ?? 0);
  if ((flags & (16 | 64)) !== 0) return 'unknown';
  // Flag 16 of a vertex: a control point of the frame of a smoothed polyline, which is not on the curve.
  const on = vertices.filter((v) => (Number(value(v, 70) ?? 0) & 16) === 0);
  const points = on.map((v) => ({ x: Number(value(v, 10)), y: Number(value(v, 20)), bulge: Number(value(v, 42) ?? 0) }));
  return polyline(points, (flags & 1) === 1, pen);
}

function polyline(vertices: readonly BulgeVertex[], closed: boolean, pen: Pen): EntityDrawing {
  const [first] = vertices;
  if (!first || vertices.length < 2) return 'it has fewer than two points';
  if (!vertices.every((v) => [v.x, v.y, v.bulge].every(Number.isFinite))) return 'a coordinate is missing or is no number';
  pen.move(first.x, first.y);
  const count = closed ? vertices.length : vertices.length - 1;
  for (let k = 0; k < count; k++) {
    const from = vertices[k] as BulgeVertex;
    const to = vertices[(k + 1) % vertices.length] as BulgeVertex;
    if (from.bulge === 0) pen.line(to.x, to.y);
    else {
      // Centre from chord and bulge: (1 - bulge²)/(4 bulge) chords left of the chord's middle.
      const k2 = (1 - from.bulge * from.bulge) / (4 * from.bulge);
      const center = { x: (from.x + to.x) / 2 - k2 * (to.y - from.y), y: (from.y + to.y) / 2 + k2 * (to.x - from.x) };
      pen.arc(center.x, center.y, 4 * Math.atan(from.bulge));
      pen.settle(to.x, to.y);
    }
  }
  if (closed) pen.close();
  return null;
}

function ellipse(object: DxfObject, pen: Pen): EntityDrawing {
  const found = numbers(object, 10, 20, 11, 21, 40);
  if (!found) return 'a number is missing or is none';
  const [x = 0, y = 0, mx = 0, my = 0, ratio = 1] = found;
  const long = Math.hypot(mx, my);
  const [start, end] = [Number(value(object, 41) ?? 0), Number(value(object, 42) ?? 2 * Math.PI)];
  if (!(long > 0 && ratio > 0)) return 'it has no size';
  const raw = end - start;
  const sweep = raw > 0 && raw <= 2 * Math.PI + 1e-9 ? raw : raw - 2 * Math.PI * Math.floor(raw / (2 * Math.PI));
  const turn = Math.atan2(my, mx);
  const at = (t: number): readonly [number, number] => [
    x + long * Math.cos(t) * Math.cos(turn) - long * ratio * Math.sin(t) * Math.sin(turn),
    y + long * Math.cos(t) * Math.sin(turn) + long * ratio * Math.sin(t) * Math.cos(turn),
  ];
  pen.move(...at(start));
  pen.ellipse(x, y, long, long * ratio, turn, start, sweep);
  if (Math.abs(sweep - 2 * Math.PI) < 1e-6) {
    pen.settle(...at(start));
    pen.close();
  }
  return null;
}

function spline(object: DxfObject, pen: Pen): EntityDrawing {
  const list = (code: number) => values(object, code).map(Number);
  const [xs, ys, knots, weights] = [list(10), list(20), list(40), list(41)];
  const degree = Number(value(object, 71) ?? 3);
  if (xs.length === 0) return 'it has fit points only, no control points';
  const points = xs.map((x, k) => ({ x, y: ys[k] ?? Number.NaN, weight: weights[k] ?? 1 }));
  return drawSpline(degree, knots, points, (Number(value(object, 70) ?? 0) & 1) === 1, pen);
}

interface ControlPoint extends Point {
  readonly weight: number;
}

/** Degrees above this do not occur in drawings. */
const HIGHEST_DEGREE = 11;

/**
 * Draws a (rational) B-spline, span by span, as cubics through four of its points: exact for non-rational ones of degree 3, and of lower
 * degree; halved twice for the rest. De Boor's algorithm. Returns what is wrong with it, or null.
 */
function drawSpline(degree: number, knots: readonly number[], points: readonly ControlPoint[], closed: boolean, pen: Pen): string | null {
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
