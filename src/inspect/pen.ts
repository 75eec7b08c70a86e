import type { Point, Segment } from '../geometry/path.ts';
import { type Budget, FLATTENING } from './drawing.ts';

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
function keepsCircles([a, b, c, d]: Affine): boolean {
  const size = a * a + b * b;
  return Math.abs(size - (c * c + d * d)) <= 1e-6 * size && Math.abs(a * c + b * d) <= 1e-6 * size;
}

/** A run of the pen, mm. */
export interface Run {
  readonly closed: boolean;
  readonly segments: readonly Segment[];
}

/** Takes drawing commands in the file's own units and keeps lines and arcs in mm. Angles in radians. */
export interface Pen {
  move(x: number, y: number): void;
  line(x: number, y: number): void;
  /** An arc of a circle about (cx, cy) from where the pen is, turning by `sweep`. */
  arc(cx: number, cy: number, sweep: number): void;
  /** An arc of an ellipse whose axis `rx` is turned by `turn`, from parameter `start` on by `sweep`. */
  ellipse(cx: number, cy: number, rx: number, ry: number, turn: number, start: number, sweep: number): void;
  quadratic(x1: number, y1: number, x: number, y: number): void;
  cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  /** Moves the end of the last edge to where the file says that it is. */
  settle(x: number, y: number): void;
  close(): void;
  /** Where the pen is, in the file's units. */
  at(): Point;
  /** Where the present run began, in the file's units. */
  start(): Point;
}

interface Drawn {
  readonly runs: Run[];
  /** Curves that were taken as chords. */
  flattened: number;
}

/**
 * A cubic that stays this near to a circle is read as its arc: the usual cubic for a quarter circle lies up to 0.00027 of its radius off
 * (the error of the standard approximation, computed from its formula).
 */
const ARC_FIT = 3e-4;
/** Rounding of the written coordinates on top of it, mm. */
const ARC_ROUNDING = 5e-4;
const MOST_CHORDS = 2000;

export function newPen(matrix: Affine, budget: Budget): { readonly pen: Pen; readonly drawn: Drawn } {
  const runs: { closed: boolean; segments: Segment[] }[] = [];
  const drawn: Drawn = { runs, flattened: 0 };
  const round = keepsCircles(matrix);
  const sense = Math.sign(determinant(matrix));
  const scale = largestScale(matrix);
  let here: Point = { x: 0, y: 0 };
  let first: Point = here;
  let open = false;

  const add = (to: Point, bulge = 0) => {
    budget.segment();
    if (!open) runs.push({ closed: false, segments: [] });
    open = true;
    runs.at(-1)?.segments.push({ from: apply(matrix, here), to: apply(matrix, to), bulge });
    here = to;
  };
  const chords = (count: number, at: (t: number) => Point) => {
    drawn.flattened++;
    for (let k = 1; k <= count; k++) add(at(k / count));
  };
  const arcBy = (center: Point, sweep: number) => {
    const radius = Math.hypot(here.x - center.x, here.y - center.y);
    const begin = Math.atan2(here.y - center.y, here.x - center.x);
    const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-9));
    for (let k = 1; k <= pieces; k++) {
      const angle = begin + (sweep * k) / pieces;
      add({ x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) }, sense * Math.tan(sweep / pieces / 4));
    }
  };
  const ellipse: Pen['ellipse'] = (cx, cy, rx, ry, turn, start, sweep) => {
    if (rx === 0 || ry === 0 || sweep === 0) return;
    const at = (angle: number): Point => {
      const [u, v] = [rx * Math.cos(angle), ry * Math.sin(angle)];
      return { x: cx + u * Math.cos(turn) - v * Math.sin(turn), y: cy + u * Math.sin(turn) + v * Math.cos(turn) };
    };
    if (round && Math.abs(rx - ry) <= 1e-6 * rx) return arcBy({ x: cx, y: cy }, sweep);
    const radius = Math.max(rx, ry) * scale;
    const step = 2 * Math.acos(Math.max(0, 1 - FLATTENING / radius));
    chords(Math.min(MOST_CHORDS, Math.ceil(Math.abs(sweep) / step)), (t) => at(start + sweep * t));
  };
  const settle: Pen['settle'] = (x, y) => {
    const run = runs.at(-1)?.segments;
    const last = run?.pop();
    here = { x, y };
    if (run && last) run.push({ ...last, to: apply(matrix, here) });
  };
  const cubic: Pen['cubic'] = (x1, y1, x2, y2, x, y) => {
    const [p, q, r, s] = [here, { x: x1, y: y1 }, { x: x2, y: y2 }, { x, y }];
    const at = (t: number): Point => {
      const u = 1 - t;
      const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
      return { x: a * p.x + b * q.x + c * r.x + d * s.x, y: a * p.y + b * q.y + c * r.y + d * s.y };
    };
    const flat = Math.max(offLine(q, p, s), offLine(r, p, s)) * scale;
    if (flat < ARC_ROUNDING / 10) return add(s);
    const arc = round ? arcOfCubic(p, s, at, scale) : null;
    if (arc) {
      arcBy(arc.center, arc.sweep);
      return settle(s.x, s.y);
    }
    const bend = Math.max(Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y), Math.hypot(q.x - 2 * r.x + s.x, q.y - 2 * r.y + s.y));
    // A chord over 1/n of the curve lies within |B''| / (8 n²) of it, and |B''| is at most 6 times the larger second difference.
    chords(Math.min(MOST_CHORDS, Math.max(1, Math.ceil(Math.sqrt((6 * bend * scale) / (8 * FLATTENING))))), at);
  };
  const pen: Pen = {
    settle,
    move(x, y) {
      here = { x, y };
      first = here;
      open = false;
    },
    line: (x, y) => add({ x, y }),
    arc: (cx, cy, sweep) => {
      const center = { x: cx, y: cy };
      if (round) return arcBy(center, sweep);
      const radius = Math.hypot(here.x - cx, here.y - cy);
      ellipse(cx, cy, radius, radius, 0, Math.atan2(here.y - cy, here.x - cx), sweep);
    },
    ellipse,
    quadratic: (x1, y1, x, y) =>
      cubic(here.x + (2 / 3) * (x1 - here.x), here.y + (2 / 3) * (y1 - here.y), x + (2 / 3) * (x1 - x), y + (2 / 3) * (y1 - y), x, y),
    cubic,
    close() {
      const run = runs.at(-1);
      if (!open || !run) return;
      if (Math.hypot(here.x - first.x, here.y - first.y) * scale > 1e-6) add(first);
      run.closed = true;
      here = first;
      open = false;
    },
    at: () => here,
    start: () => first,
  };
  return { pen, drawn };
}

/** Distance of a control point from the chord, or from its nearer end where the chord is a point. */
function offLine(p: Point, a: Point, b: Point): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / (length * length);
  if (!(along >= 0 && along <= 1)) return Math.min(Math.hypot(p.x - a.x, p.y - a.y), Math.hypot(p.x - b.x, p.y - b.y));
  return Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length;
}

/** The circular arc that a cubic follows: through its ends and its middle, when all of it lies on that circle. */
function arcOfCubic(
  p: Point,
  s: Point,
  at: (t: number) => Point,
  scale: number,
): { readonly center: Point; readonly sweep: number } | null {
  const m = at(0.5);
  const [ax, ay, bx, by] = [m.x - p.x, m.y - p.y, s.x - p.x, s.y - p.y];
  const cross = 2 * (ax * by - ay * bx);
  if (cross === 0) return null;
  const [aa, bb] = [ax * ax + ay * ay, bx * bx + by * by];
  const center = { x: p.x + (by * aa - ay * bb) / cross, y: p.y + (ax * bb - bx * aa) / cross };
  const radius = Math.hypot(p.x - center.x, p.y - center.y);
  const allowed = ARC_FIT * radius + ARC_ROUNDING / scale;
  for (let k = 1; k < 16; k++) {
    const q = at(k / 16);
    if (Math.abs(Math.hypot(q.x - center.x, q.y - center.y) - radius) > allowed) return null;
  }
  const turn = (from: Point, to: Point) => {
    const angle = Math.atan2(to.y - center.y, to.x - center.x) - Math.atan2(from.y - center.y, from.x - center.x);
    return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
  };
  const sweep = turn(p, m) + turn(m, s);
  return Math.abs(sweep) > 1e-6 ? { center, sweep } : null;
}
