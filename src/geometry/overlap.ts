import { arcOf, chord, type Segment } from './segment.ts';

/** The part of `other`, as fractions of its length, that runs along `one` within `tolerance` mm; null when shorter than `least` mm. */
export interface Overlap {
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
