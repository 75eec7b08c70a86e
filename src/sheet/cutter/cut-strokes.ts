import { insidePolygon } from '../../geometry/inside.ts';
import { intersections } from '../../geometry/intersect.ts';
import {
  type Box,
  flattened,
  headings,
  type LineArcPath,
  type Point,
  pathLength,
  pointAlong,
  type Segment,
  segmentBox,
  segmentLength,
  segmentsOf,
  signedArea,
  type Vertex,
} from '../../geometry/path.ts';
import { remaining, type Stretch, stretchOf } from '../../geometry/sub-path.ts';
import { ARC_CHORD_ERROR } from '../../units/tolerance.ts';

/** How one contour is cut. Lengths in mm. */
export interface StrokeSettings {
  /** Radius of the quarter arc on which the tool enters; 0 for none. */
  readonly leadIn: number;
  /** Uncut bridges, and how long each interrupts the tool's way (its width in the plastic plus the kerf). */
  readonly bridges: number;
  readonly bridgeGap: number;
  /** Stretches that another part's cut has already made. */
  readonly shared: readonly Stretch[];
}

interface Strokes {
  readonly paths: readonly LineArcPath[];
  /** Strokes that begin without the lead-in that was asked for, since it would cut into something. */
  readonly withoutLeadIn: number;
  /** Bridges that were asked for and do not fit. */
  readonly bridgesLeftOut: number;
}

/** What a lead-in must not touch. */
export interface Obstacle {
  readonly segment: Segment;
  readonly box: Box;
}

export function obstaclesOf(paths: readonly LineArcPath[]): readonly Obstacle[] {
  return paths.flatMap((path) => segmentsOf(path).map((segment) => ({ segment, box: segmentBox(segment) })));
}

/** A closed contour as the strokes of the tool: in one piece, or between bridges and shared edges, each with its lead-in where one fits. */
export function cutStrokes(contour: LineArcPath, settings: StrokeSettings, obstacles: readonly Obstacle[]): Strokes {
  const total = pathLength(contour);
  const bridges = bridgeStretches(contour, total, settings);
  const removed = [...settings.shared, ...bridges];
  const bridgesLeftOut = settings.bridges - bridges.length;
  if (removed.length === 0) return { ...wholeStroke(contour, total, settings.leadIn, obstacles), bridgesLeftOut };
  const inWaste = wasteOf(contour);
  let withoutLeadIn = 0;
  const paths = remaining(total, removed).map((stretch) => {
    const stroke = stretchOf(contour, stretch.from, stretch.to);
    if (settings.leadIn === 0) return stroke;
    const entered = withLeadIn(stroke, settings.leadIn, obstacles, inWaste);
    if (!entered) withoutLeadIn++;
    return entered ?? stroke;
  });
  return { paths, withoutLeadIn, bridgesLeftOut };
}

/** Without bridges the tool may begin anywhere: in the middle of the longest edge where its lead-in is free. */
function wholeStroke(contour: LineArcPath, total: number, radius: number, obstacles: readonly Obstacle[]): Omit<Strokes, 'bridgesLeftOut'> {
  if (radius === 0) return { paths: [contour], withoutLeadIn: 0 };
  const inWaste = wasteOf(contour);
  let passed = 0;
  const middles = segmentsOf(contour).map((segment) => {
    const length = segmentLength(segment);
    passed += length;
    return { length, at: passed - length / 2 };
  });
  for (const { at } of middles.sort((a, b) => b.length - a.length || a.at - b.at)) {
    const entered = withLeadIn(stretchOf(contour, at, at + total), radius, obstacles, inWaste);
    if (entered) return { paths: [entered], withoutLeadIn: 0 };
  }
  return { paths: [contour], withoutLeadIn: 1 };
}

/** Whether a point lies in what falls away: outside a counter-clockwise outline, inside a clockwise hole. */
function wasteOf(contour: LineArcPath): (p: Point) => boolean {
  const polygon = flattened(contour, ARC_CHORD_ERROR).vertices;
  const isHole = signedArea(contour) < 0;
  return (p) => insidePolygon(polygon, p) === isHole;
}

function withLeadIn(
  stroke: LineArcPath,
  radius: number,
  obstacles: readonly Obstacle[],
  inWaste: (p: Point) => boolean,
): LineArcPath | null {
  const [first] = segmentsOf(stroke);
  if (!first) return null;
  const start = leadInStart(first.from, headings(first).start, radius);
  const lead: Segment = { from: start, to: first.from, bulge: start.bulge };
  // On a hole that is narrower than itself the arc would leave into the part at once, without crossing anything more.
  if (!inWaste(pointAlong(lead, 0.5)) || !inWaste(start)) return null;
  return isFree(lead, first.from, obstacles) ? { closed: false, vertices: [start, ...stroke.vertices] } : null;
}

/** A lead-in touches nothing but the point where it enters; there, tangents meet so flatly that rounding moves the common point. */
function isFree(lead: Segment, entry: Point, obstacles: readonly Obstacle[]): boolean {
  const box = segmentBox(lead);
  const slack = 0.01;
  return obstacles.every(({ segment, box: other }) => {
    if (box.minX > other.maxX || other.minX > box.maxX || box.minY > other.maxY || other.minY > box.maxY) return true;
    return intersections(lead, segment).every((p) => Math.hypot(p.x - entry.x, p.y - entry.y) < slack);
  });
}

/** Least of a straight edge that is cut on each side of a bridge, mm: a machine stutters on edges under 0.1 (common practice, no source). */
const BESIDE_BRIDGE = 0.2;

/** Bridges at even distances round the contour, each moved to the nearest straight edge that takes it whole; none over a shared edge or another bridge. */
function bridgeStretches(contour: LineArcPath, total: number, { bridges, bridgeGap, shared }: StrokeSettings): readonly Stretch[] {
  if (bridges === 0) return [];
  let passed = 0;
  const straight = segmentsOf(contour).flatMap((segment) => {
    const from = passed;
    passed += segmentLength(segment);
    const [first, last] = [from + BESIDE_BRIDGE + bridgeGap / 2, passed - BESIDE_BRIDGE - bridgeGap / 2];
    return segment.bulge === 0 && first <= last ? [{ first, last }] : [];
  });
  const placed: Stretch[] = [];
  for (let k = 0; k < bridges; k++) {
    const wanted = ((k + 0.5) * total) / bridges;
    const spots = straight.map(({ first, last }) => Math.min(Math.max(wanted, first), last));
    const free = (at: number) => [...placed, ...shared].every((s) => at + bridgeGap < s.from || at - bridgeGap > s.to);
    const spot = spots.filter(free).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0];
    if (spot !== undefined) placed.push({ from: spot - bridgeGap / 2, to: spot + bridgeGap / 2 });
  }
  return placed;
}

/** Bulge of a clockwise quarter circle: tan(-pi/8). */
const QUARTER_RIGHT = 1 - Math.SQRT2;

/**
 * A quarter circle on which a tool comes in from the right of the travel, which is the waste of a counter-clockwise outline and of a
 * clockwise hole, and joins tangentially at `entry` with the direction `heading` (radians). `radius` in mm. The start's vertex carries the arc.
 */
function leadInStart(entry: Point, heading: number, radius: number): Vertex {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  return { x: entry.x + radius * (s - c), y: entry.y - radius * (c + s), bulge: QUARTER_RIGHT };
}
