import { distanceToSegment } from '../../geometry/broken-line.ts';
import {
  type Box,
  boxOfPoints,
  type LineArcPath,
  type Point,
  pointsAlong,
  type Segment,
  segmentBox,
  segmentLength,
  segmentsOf,
} from '../../geometry/path.ts';

/** Points along the outline at which its width is looked at, mm apart. */
const STEP = 0.5;
/** The round corners at both ends are no width. mm */
const END = 4;

/** A place along the strip and its width there, square to the edges; mm. */
export interface WidthAt {
  readonly v: number;
  readonly width: number;
}

/**
 * Where a strip's outline is narrower than `least`, its rounded ends left out: the narrowest place of each stretch that is. The outline runs counter-clockwise from
 * its starting end (least x); `place` is where a point of it lies once it is bent, where it is.
 */
export function narrowPlaces(outline: LineArcPath, least: number, place?: (p: Point) => Point): readonly WidthAt[] {
  const edges = segmentsOf(outline);
  const { minX: from, maxX: to } = boxOfPoints(outline.vertices);
  const turn = edges.findIndex((edge) => edge.from.x === to);
  const pointsOn = (edge: Segment) =>
    pointsAlong(edge, Math.max(1, Math.ceil(segmentLength(edge) / STEP))).filter((p) => p.x > from + END && p.x < to - END);
  const boxes = edges.map(segmentBox);
  // Points whose chords stand for an edge; a line that is not bent is one chord. Most edges are near to none.
  const known: (readonly Point[])[] = [];
  const chordsOf = (k: number) => {
    const found = known[k];
    if (found) return found;
    const points = [...pointsOn(edges[k] as Segment), ...pointsOn(edges[k + 1] as Segment).slice(0, 1)];
    const isOneChord = !place && edges[k]?.bulge === 0;
    const chords = isOneChord ? [...points.slice(0, 1), ...points.slice(-1)] : place ? points.map(place) : points;
    known[k] = chords;
    return chords;
  };
  // An edge whose box lies so far off is no nearer, even where a bend presses the strip together to half.
  const reach = (place ? 2 : 1) * least;
  const narrow: WidthAt[] = [];
  let before = false;
  for (let k = edges.length - 1; k >= turn; k--) {
    const near = boxes.slice(0, turn).flatMap((box, j) => (distanceBetweenBoxes(box, boxes[k] as Box) < reach ? [chordsOf(j)] : []));
    if (near.length === 0) {
      before = false;
      continue;
    }
    for (const spot of pointsOn(edges[k] as Segment).reverse()) {
      const p = place ? place(spot) : spot;
      const width = Math.min(...near.map((chords) => leastDistance(p, chords)));
      const isNarrow = width < least;
      const last = narrow.at(-1);
      if (isNarrow && !(before && last && last.width <= width)) {
        if (before) narrow.pop();
        narrow.push({ v: spot.x, width });
      }
      before = isNarrow;
    }
  }
  return narrow;
}

function distanceBetweenBoxes(a: Box, b: Box): number {
  const [dx, dy] = [Math.max(a.minX - b.maxX, 0, b.minX - a.maxX), Math.max(a.minY - b.maxY, 0, b.minY - a.maxY)];
  return Math.sqrt(dx * dx + dy * dy);
}

/** Least distance from a point to the straight pieces between points; infinite where there is none. mm */
function leastDistance(p: Point, points: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < points.length; k++) least = Math.min(least, distanceToSegment(p, points[k - 1] as Point, points[k] as Point));
  return least;
}
