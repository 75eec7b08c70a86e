import { SAME_POINT } from '../units/tolerance.ts';
import { intersections } from './intersect.ts';
import { arcOf, headings, type LineArcPath, type Point, pointAlong, type Segment, segmentLength, segmentsOf, type Vertex } from './path.ts';
import { nearestOn, outlineFaults } from './validate-outline.ts';

/** A feature that an offset would lose. `at` is where on the outline that was given, mm; the message names it. */
export interface OffsetFault {
  readonly code: 'ARC_VANISHES' | 'EDGE_VANISHES' | 'GAP_CLOSES';
  readonly at: Point;
  readonly message: string;
}

export type OffsetOutline =
  | { readonly ok: true; readonly path: LineArcPath }
  | { readonly ok: false; readonly faults: readonly OffsetFault[] };

/**
 * The closed line-arc outline moved by `distance` mm to the right of its travel: a counter-clockwise outline grows, a clockwise hole shrinks;
 * a negative distance does the reverse. Exact: lines stay lines, arcs stay arcs about the same centre, a corner that opens gets an arc
 * about itself, one that closes is cut where the two moved edges meet. Every edge must survive: each one that would vanish, and each gap
 * that would close, is a fault, since a cutter's kerf must not change what a part is.
 */
export function offsetOutline(path: LineArcPath, distance: number): OffsetOutline {
  if (distance === 0) return { ok: true, path };
  const segments = segmentsOf(path);
  const faults = segments.flatMap((segment) => arcFault(segment, distance));
  if (faults.length > 0) return { ok: false, faults };
  const moved = segments.map((segment) => movedSegment(segment, distance));
  const trims = moved.map(() => ({ from: 0, to: 1 }));
  const joins: (Segment | null)[] = moved.map(() => null);
  const lost = new Set<number>();
  for (const [i, segment] of segments.entries()) {
    const before = (i + segments.length - 1) % segments.length;
    const [one, other] = [moved[before] as Segment, moved[i] as Segment];
    const turn = turnBetween(segments[before] as Segment, segment);
    if (Math.hypot(one.to.x - other.from.x, one.to.y - other.from.y) <= 10 * SAME_POINT) continue;
    if (turn * distance > 0) joins[i] = { from: one.to, to: other.from, bulge: Math.tan(turn / 4) };
    else if (!trimAt(before, one, i, other, trims)) lost.add(segmentLength(one) < segmentLength(other) ? before : i);
  }
  for (const [i, trim] of trims.entries()) {
    const length = segmentLength(moved[i] as Segment) * (trim.to - trim.from);
    if (length <= 10 * SAME_POINT) lost.add(i);
  }
  if (lost.size > 0) return { ok: false, faults: [...lost].sort((a, b) => a - b).map((i) => edgeFault(segments[i] as Segment, distance)) };
  const result: LineArcPath = { closed: true, vertices: stitched(moved, trims, joins) };
  // Only the crossings are asked for, so it does not matter whether this is an outline or a hole.
  const closing = outlineFaults(result, 'outside', 0).find((f) => f.code === 'CROSSES_ITSELF');
  return closing ? { ok: false, faults: [gapFault(segments, closing.at, distance)] } : { ok: true, path: result };
}

function arcFault(segment: Segment, distance: number): readonly OffsetFault[] {
  const arc = arcOf(segment);
  if (!arc || arc.radius + Math.sign(segment.bulge) * distance > 10 * SAME_POINT) return [];
  const at = pointAlong(segment, 0.5);
  const message = `the arc of radius ${arc.radius.toFixed(3)} mm at ${place(at)} vanishes when its edge moves by ${size(distance)}`;
  return [{ code: 'ARC_VANISHES', at, message }];
}

function edgeFault(segment: Segment, distance: number): OffsetFault {
  const at = pointAlong(segment, 0.5);
  const kind = segment.bulge === 0 ? 'edge' : 'arc';
  const message = `the ${kind} of ${segmentLength(segment).toFixed(3)} mm at ${place(at)} vanishes when the outline moves by ${size(distance)}`;
  return { code: 'EDGE_VANISHES', at, message };
}

/** Named by the two edges of the given outline that come nearest to where the moved one meets itself. */
function gapFault(segments: readonly Segment[], at: Point, distance: number): OffsetFault {
  const ranked = segments.map((segment) => nearestOn(segment, at).distance).sort((a, b) => a - b);
  const width = (ranked[0] ?? 0) + (ranked[1] ?? 0);
  const message = `the gap of about ${width.toFixed(3)} mm at ${place(at)} closes when both its edges move by ${size(distance)}`;
  return { code: 'GAP_CLOSES', at, message };
}

function place(p: Point): string {
  return `${p.x.toFixed(2)}, ${p.y.toFixed(2)}`;
}

function size(distance: number): string {
  return `${Math.abs(distance).toFixed(3)} mm`;
}

function movedSegment(segment: Segment, distance: number): Segment {
  const { start, end } = headings(segment);
  const right = (p: Point, heading: number): Point => ({ x: p.x + distance * Math.sin(heading), y: p.y - distance * Math.cos(heading) });
  return { from: right(segment.from, start), to: right(segment.to, end), bulge: segment.bulge };
}

/** Signed turn (radians, -pi to pi) from the end of one edge to the start of the next. */
function turnBetween(one: Segment, other: Segment): number {
  const turn = headings(other).start - headings(one).end;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

interface Trim {
  from: number;
  to: number;
}

/** Cuts two neighbours where they cross, nearest to their old corner; false when they no longer meet. */
function trimAt(before: number, one: Segment, index: number, other: Segment, trims: Trim[]): boolean {
  const shared = intersections(one, other).map((p) => ({ one: nearestOn(one, p).along, other: nearestOn(other, p).along }));
  const cut = shared.sort((a, b) => 1 - a.one + a.other - (1 - b.one + b.other))[0];
  const [first, second] = [trims[before], trims[index]];
  if (!cut || !first || !second) return false;
  first.to = cut.one;
  second.from = cut.other;
  return true;
}

function stitched(moved: readonly Segment[], trims: readonly Trim[], joins: readonly (Segment | null)[]): readonly Vertex[] {
  return moved.flatMap((segment, i) => {
    const join = joins[i];
    const { from, to } = trims[i] as Trim;
    const start = from === 0 ? segment.from : pointAlong(segment, from);
    const bulge = from === 0 && to === 1 ? segment.bulge : Math.tan(Math.atan(segment.bulge) * (to - from));
    return [...(join ? [{ x: join.from.x, y: join.from.y, bulge: join.bulge }] : []), { x: start.x, y: start.y, bulge }];
  });
}
