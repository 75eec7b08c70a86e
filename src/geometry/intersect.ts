import { SAME_POINT } from '../units/tolerance.ts';
import { type ArcShape, angleInSweep, arcOf, chord, type Point, type Segment } from './path.ts';

/** Points that two segments share; overlapping collinear or concentric pieces give the ends of the overlap. mm. */
export function intersections(one: Segment, other: Segment): readonly Point[] {
  const arcOne = arcOf(one);
  const arcOther = arcOf(other);
  if (arcOne && arcOther) return arcArc(one, arcOne, other, arcOther);
  if (arcOne) return lineArc(other, arcOne);
  if (arcOther) return lineArc(one, arcOther);
  return lineLine(one, other);
}

function lineLine(one: Segment, other: Segment): readonly Point[] {
  const ax = one.to.x - one.from.x;
  const ay = one.to.y - one.from.y;
  const bx = other.to.x - other.from.x;
  const by = other.to.y - other.from.y;
  const cross = ax * by - ay * bx;
  const dx = other.from.x - one.from.x;
  const dy = other.from.y - one.from.y;
  const lengths = Math.hypot(ax, ay) * Math.hypot(bx, by);
  if (Math.abs(cross) <= 1e-12 * lengths) return sharedEnds(one, other);
  const t = (dx * by - dy * bx) / cross;
  const point = { x: one.from.x + t * ax, y: one.from.y + t * ay };
  return onLine(point, one) && onLine(point, other) ? [point] : [];
}

function lineArc(line: Segment, arc: ArcShape): readonly Point[] {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const along = ((arc.center.x - line.from.x) * dx + (arc.center.y - line.from.y) * dy) / length;
  const foot = { x: line.from.x + (along * dx) / length, y: line.from.y + (along * dy) / length };
  const away = Math.hypot(arc.center.x - foot.x, arc.center.y - foot.y);
  if (away > arc.radius + SAME_POINT) return [];
  const half = Math.sqrt(Math.max(0, arc.radius * arc.radius - away * away));
  const points = [-half, half].map((h) => ({ x: foot.x + (h * dx) / length, y: foot.y + (h * dy) / length }));
  return points.filter((p) => onLine(p, line) && onArc(p, arc));
}

function arcArc(one: Segment, a: ArcShape, other: Segment, b: ArcShape): readonly Point[] {
  const dx = b.center.x - a.center.x;
  const dy = b.center.y - a.center.y;
  const distance = Math.hypot(dx, dy);
  if (distance < SAME_POINT) return Math.abs(a.radius - b.radius) < SAME_POINT ? sharedEnds(one, other) : [];
  if (distance > a.radius + b.radius + SAME_POINT || distance < Math.abs(a.radius - b.radius) - SAME_POINT) return [];
  const along = (distance * distance + a.radius * a.radius - b.radius * b.radius) / (2 * distance);
  const half = Math.sqrt(Math.max(0, a.radius * a.radius - along * along));
  const points = [-half, half].map((h) => ({
    x: a.center.x + (along * dx - h * dy) / distance,
    y: a.center.y + (along * dy + h * dx) / distance,
  }));
  return points.filter((p) => onArc(p, a) && onArc(p, b));
}

function sharedEnds(one: Segment, other: Segment): readonly Point[] {
  const on = (p: Point, segment: Segment) => {
    const arc = arcOf(segment);
    return arc
      ? Math.abs(Math.hypot(p.x - arc.center.x, p.y - arc.center.y) - arc.radius) < SAME_POINT && onArc(p, arc)
      : onLine(p, segment);
  };
  return [one.from, one.to].filter((p) => on(p, other)).concat([other.from, other.to].filter((p) => on(p, one)));
}

function onLine(p: Point, { from, to }: Segment): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return false;
  const along = ((p.x - from.x) * dx + (p.y - from.y) * dy) / length;
  const away = Math.abs((p.x - from.x) * dy - (p.y - from.y) * dx) / length;
  return along >= -SAME_POINT && along <= length + SAME_POINT && away <= SAME_POINT;
}

function onArc(p: Point, arc: ArcShape): boolean {
  return angleInSweep(Math.atan2(p.y - arc.center.y, p.x - arc.center.x), arc, SAME_POINT / Math.max(arc.radius, SAME_POINT));
}

/** The part of `other`, as fractions of its length, that runs along `one` within `tolerance` mm; null when shorter than `least` mm. */
interface Overlap {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** Whether two edges are drawn over each other, for lines and for arcs of the same circle, in either direction. A line never lies along an arc. */
export function overlapOf(one: Segment, other: Segment, tolerance: number, least: number): Overlap | null {
  const found = one.bulge === 0 && other.bulge === 0 ? lines(one, other, tolerance) : arcs(one, other, tolerance);
  return found && found.length >= least ? found : null;
}

/** Short lines at a flatter slant than this (sine) may be one edge; above it they only meet in a flat corner, as chords of a tangent arc do. */
const FLATTEST_CORNER = 0.01;

function lines(one: Segment, other: Segment, tolerance: number): Overlap | null {
  const length = chord(one);
  const otherLength = chord(other);
  if (length === 0 || otherLength === 0) return null;
  const ux = (one.to.x - one.from.x) / length;
  const uy = (one.to.y - one.from.y) / length;
  const slant = Math.abs(ux * (other.to.y - other.from.y) - uy * (other.to.x - other.from.x)) / otherLength;
  if (slant > FLATTEST_CORNER) return null;
  const along = (p: { x: number; y: number }) => (p.x - one.from.x) * ux + (p.y - one.from.y) * uy;
  const away = (t: number) => {
    const x = other.from.x + t * (other.to.x - other.from.x) - one.from.x;
    const y = other.from.y + t * (other.to.y - other.from.y) - one.from.y;
    return Math.abs(x * uy - y * ux);
  };
  const start = along(other.from);
  const span = along(other.to) - start;
  if (Math.abs(span) < 0.5 * otherLength) return null;
  const ends = [-start / span, (length - start) / span].sort((a, b) => a - b);
  const from = Math.max(0, ends[0] ?? 0);
  const to = Math.min(1, ends[1] ?? 0);
  if (to <= from || away(from) > tolerance || away(to) > tolerance) return null;
  return { from, to, length: (to - from) * otherLength };
}

function arcs(one: Segment, other: Segment, tolerance: number): Overlap | null {
  const a = arcOf(one);
  const b = arcOf(other);
  if (!a || !b || Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y) > tolerance) return null;
  if (Math.abs(a.radius - b.radius) > tolerance) return null;
  const full = 2 * Math.PI;
  // Where `one` begins and ends, counted along `other`'s own travel from its start.
  const sense = Math.sign(b.sweep);
  const turned = (angle: number) => {
    const raw = sense * (angle - b.startAngle);
    return raw - full * Math.floor(raw / full);
  };
  const span = Math.abs(a.sweep);
  const start = turned(Math.sign(a.sweep) === sense ? a.startAngle : a.startAngle + a.sweep);
  const sweep = Math.abs(b.sweep);
  const pieces = [
    { from: start, to: Math.min(start + span, sweep) },
    { from: start - full, to: Math.min(start - full + span, sweep) },
  ].map(({ from, to }) => ({ from: Math.max(0, from), to }));
  const best = pieces.sort((p, q) => q.to - q.from - (p.to - p.from))[0];
  if (!best || best.to <= best.from) return null;
  return { from: best.from / sweep, to: best.to / sweep, length: (best.to - best.from) * b.radius };
}
