import { LENGTH_SOLVED, MINIMUM_FEATURE } from '../units/tolerance.ts';
import type { BrokenLine } from './broken-line.ts';
import type { Point } from './path.ts';
import { rootBetween } from './root.ts';

/** Each straight and each arc keeps a little more than the shortest feature, corners stay far enough apart to be rounded each by itself: in such features. */
const SHORTEST = 1.06;
const NEAREST = 3.05;
/** Steps in which a corner is slid, mm. */
const SLIDE = 0.25;
/** A corner that turns by less is none. radians */
const STRAIGHT = 1e-9;

/**
 * A broken line whose every corner can be rounded with the radius (mm), made so by taking away from what lies under it and never by adding: a
 * peak that is too near to its neighbour is slid along its other edge, so that the slope to it gets flatter, or is left out. The two ends are corners to an
 * upright end, with a radius of their own.
 * @param feature the shortest edge that a rounded outline may have, mm
 */
export function easeCorners(line: BrokenLine, radius: number, endRadius: number, feature = MINIMUM_FEATURE): BrokenLine {
  const room = (of: BrokenLine, i: number) => roomOn(of, i, radius, endRadius, feature);
  let points = line;
  // Each round slides a corner or leaves one out, so that there is an end; the count is a guard.
  for (let round = 0; round < 400; round++) {
    const tight = points.findIndex((_, i) => i + 1 < points.length && room(points, i) < 0);
    if (tight < 0) return points;
    const next = eased(points, tight, NEAREST * feature, room);
    if (next === null) return points;
    points = next;
  }
  return points;
}

/** What the edge from corner i to the next is longer than both its arcs and a straight between need, mm; less than nothing where they have no room. */
type Room = (points: BrokenLine, i: number) => number;

function roomOn(points: BrokenLine, i: number, radius: number, endRadius: number, feature: number): number {
  const from = points[i] as Point;
  const to = points[i + 1] as Point;
  const needed = tangent(points, i, radius, endRadius) + tangent(points, i + 1, radius, endRadius) + SHORTEST * feature;
  return Math.hypot(to.x - from.x, to.y - from.y) - Math.max(NEAREST * feature, needed);
}

/** How much of an edge the arc of a corner takes; the two ends are corners to an upright end. */
function tangent(points: BrokenLine, i: number, radius: number, endRadius: number): number {
  const isEnd = i === 0 || i === points.length - 1;
  if (!isEnd) return radius * Math.tan(Math.abs(turnAt(points, i)) / 2);
  const [from, to] = [points[Math.max(0, i - 1)] as Point, points[Math.max(1, i)] as Point];
  const rise = Math.atan2(to.y - from.y, to.x - from.x);
  return endRadius * Math.tan(Math.PI / 4 + (i === 0 ? -rise : rise) / 2);
}

/** Left turn at a corner travelled toward larger x (radians): negative at a peak. */
function turnAt(points: BrokenLine, i: number): number {
  const [before, here, after] = [points[i - 1] as Point, points[i] as Point, points[i + 1] as Point];
  return Math.atan2(after.y - here.y, after.x - here.x) - Math.atan2(here.y - before.y, here.x - before.x);
}

/** One step toward room on the edge from corner i to the next; null where nothing is left to take away. */
function eased(points: BrokenLine, i: number, nearest: number, room: Room): BrokenLine | null {
  const isInner = (k: number) => k > 0 && k < points.length - 1;
  // Between two reliefs of one level nothing is left of a peak but two points on a line.
  const straight = [i, i + 1].find((k) => isInner(k) && Math.abs(turnAt(points, k)) < STRAIGHT);
  if (straight !== undefined) return points.toSpliced(straight, 1);
  const isPeak = (k: number) => isInner(k) && turnAt(points, k) < 0;
  const candidates = [i, i + 1].filter(isPeak);
  if (candidates.length === 0) return withoutHollow(points, i, nearest, room);
  // Of two peaks the flatter one is left out, which takes least away.
  const peak = candidates.reduce((a, b) => (Math.abs(turnAt(points, b)) < Math.abs(turnAt(points, a)) ? b : a));
  if (candidates.length === 2) return points.toSpliced(peak, 1);
  const other = points[peak === i ? i - 1 : i + 2] as Point;
  const here = points[peak] as Point;
  const length = Math.hypot(other.x - here.x, other.y - here.y);
  if (length < nearest + SLIDE) return points.toSpliced(peak, 1);
  const share = SLIDE / length;
  return points.toSpliced(peak, 1, { x: here.x + share * (other.x - here.x), y: here.y + share * (other.y - here.y) });
}

/**
 * Two hollows too near each other become the one where the edges outside them meet. Of one too near to an end the end is lowered by what makes room; where not
 * even lying on the edge beyond does, or hardly anything is between, the hollow is left out. It is never slid toward that edge, which would get steeper.
 */
function withoutHollow(points: BrokenLine, i: number, nearest: number, room: Room): BrokenLine | null {
  const [before, here, next, after] = [points[i - 1], points[i] as Point, points[i + 1] as Point, points[i + 2]];
  if (before && after) {
    const [fall, rise] = [slope(before, here), slope(next, after)];
    const x = here.x + (next.y - here.y - rise * (next.x - here.x)) / (fall - rise);
    return points.toSpliced(i, 2, { x, y: here.y + fall * (x - here.x) });
  }
  if (!before && !after) return null;
  const [end, hollow, beyond, ofEnd] = after ? [here, next, after, i] : [next, here, before as Point, i + 1];
  const lowest = hollow.y + slope(hollow, beyond) * (end.x - hollow.x);
  const leftOut = points.toSpliced(i, 2, { x: end.x, y: lowest });
  if (Math.abs(hollow.x - end.x) <= nearest) return leftOut;
  const lowered = (by: number) => points.toSpliced(ofEnd, 1, { x: end.x, y: end.y - by });
  const by = rootBetween((lowering) => room(lowered(lowering), i), 0, end.y - lowest, LENGTH_SOLVED);
  return by === null ? leftOut : lowered(by + LENGTH_SOLVED);
}

function slope(from: Point, to: Point): number {
  return (to.y - from.y) / (to.x - from.x);
}
