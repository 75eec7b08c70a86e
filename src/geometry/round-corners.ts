import { LENGTH_SOLVED, MINIMUM_FEATURE } from '../units/tolerance.ts';
import { type LineArcPath, type Point, type Vertex, vertex } from './path.ts';
import { rootBetween } from './root.ts';

/** A corner of a closed outline before it is rounded; `radius` is the wanted one, mm. */
export interface Corner extends Point {
  readonly radius: number;
}

/** What a corner became. */
export interface RoundedCorner {
  readonly at: Point;
  /** What it got, and what was asked for. */
  readonly radius: number;
  readonly wanted: number;
  readonly bend: 'convex' | 'concave';
}

export interface RoundedOutline {
  readonly outline: LineArcPath;
  readonly corners: readonly RoundedCorner[];
}

/** Each straight and each arc keeps a little more than the shortest feature: this many of it. */
const SHORTEST = 1.05;
/** A turn under this (radians, 0.1 degrees) is a straight line: its arc would be longer than it is round. */
const NO_TURN = Math.PI / 1800;
/** Corners nearer to each other than this many features cannot both be rounded and are made one. */
const NEAREST = 3;

/**
 * A closed polygon with every corner rounded: straight lines joined by tangent arcs. A corner gets its wanted radius where both of its edges
 * have room, else the largest that fits. Very flat corners get a larger radius, so that no arc is shorter
 * than the shortest feature (mm). Counter-clockwise in, counter-clockwise out; `corners` says what radius each got.
 */
export function roundCorners(wanted: readonly Corner[], feature = MINIMUM_FEATURE): RoundedOutline {
  const corners = simplified(wanted, NEAREST * feature);
  const count = corners.length;
  const edges = corners.map((c, i) => {
    const next = corners[(i + 1) % count] as Corner;
    return { heading: Math.atan2(next.y - c.y, next.x - c.x), length: Math.hypot(next.x - c.x, next.y - c.y) };
  });
  const turns = edges.map((edge, i) => turnBetween((edges[(i + count - 1) % count] as typeof edge).heading, edge.heading));
  const radii = sharedRadii(
    corners,
    edges.map((e) => e.length),
    turns,
    SHORTEST * feature,
  );
  const vertices: Vertex[] = [];
  const rounded: RoundedCorner[] = [];
  for (const [i, corner] of corners.entries()) {
    const before = edges[(i + count - 1) % count] as (typeof edges)[number];
    const after = edges[i] as (typeof edges)[number];
    const turn = turns[i] as number;
    const radius = radii[i] as number;
    const t = radius * Math.tan(Math.abs(turn) / 2);
    vertices.push(
      vertex(corner.x - t * Math.cos(before.heading), corner.y - t * Math.sin(before.heading), Math.tan(turn / 4)),
      vertex(corner.x + t * Math.cos(after.heading), corner.y + t * Math.sin(after.heading)),
    );
    rounded.push({ at: { x: corner.x, y: corner.y }, radius, wanted: corner.radius, bend: turn > 0 ? 'convex' : 'concave' });
  }
  return { outline: { closed: true, vertices }, corners: rounded };
}

/**
 * Radii that fit: all grow together, each until its wanted one or until an edge beside it is used up. So no corner is made sharper than it
 * must be for the sake of another that is rounder.
 */
function sharedRadii(
  corners: readonly Corner[],
  lengths: readonly number[],
  turns: readonly number[],
  shortest: number,
): readonly number[] {
  const count = corners.length;
  const least = turns.map((turn) => shortest / Math.abs(turn));
  const most = corners.map((c, i) => Math.max(c.radius, least[i] as number));
  const slopes = turns.map((turn) => Math.tan(Math.abs(turn) / 2));
  const radii: (number | null)[] = corners.map(() => null);
  const grown = (i: number, radius: number) => radii[i] ?? Math.min(most[i] as number, Math.max(least[i] as number, radius));
  for (;;) {
    const limits = lengths.map((length, i) => {
      const next = (i + 1) % count;
      if (radii[i] !== null && radii[next] !== null) return Number.POSITIVE_INFINITY;
      const used = (radius: number) => grown(i, radius) * (slopes[i] as number) + grown(next, radius) * (slopes[next] as number);
      const room = length - shortest;
      const largest = Math.max(most[i] as number, most[next] as number);
      if (used(largest) <= room) return Number.POSITIVE_INFINITY;
      return rootBetween((radius) => used(radius) - room, 0, largest, LENGTH_SOLVED) ?? 0;
    });
    const tightest = Math.min(...limits);
    if (tightest === Number.POSITIVE_INFINITY) return radii.map((radius, i) => radius ?? (most[i] as number));
    const edge = limits.indexOf(tightest);
    for (const i of [edge, (edge + 1) % count]) radii[i] = grown(i, tightest);
  }
}

/** Corners too near to their neighbour are merged, corners without a turn left out. */
function simplified(wanted: readonly Corner[], nearest: number): readonly Corner[] {
  let corners = [...wanted];
  for (;;) {
    const count = corners.length;
    const near = corners.findIndex((c, i) => {
      const next = corners[(i + 1) % count] as Corner;
      return Math.hypot(next.x - c.x, next.y - c.y) < nearest;
    });
    if (near < 0 || count <= 3) break;
    const one = corners[near] as Corner;
    const other = corners[(near + 1) % count] as Corner;
    const merged = { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2, radius: Math.max(one.radius, other.radius) };
    corners = near + 1 < count ? corners.toSpliced(near, 2, merged) : [...corners.slice(1, -1), merged];
  }
  for (;;) {
    const count = corners.length;
    const flat = corners.findIndex((c, i) => {
      const before = corners[(i + count - 1) % count] as Corner;
      const after = corners[(i + 1) % count] as Corner;
      const turn = turnBetween(Math.atan2(c.y - before.y, c.x - before.x), Math.atan2(after.y - c.y, after.x - c.x));
      return Math.abs(turn) < NO_TURN;
    });
    if (flat < 0 || count <= 3) return corners;
    corners = corners.toSpliced(flat, 1);
  }
}

/** Left turn from one heading to another, -pi to pi. */
function turnBetween(from: number, to: number): number {
  const raw = to - from;
  return raw - 2 * Math.PI * Math.round(raw / (2 * Math.PI));
}
