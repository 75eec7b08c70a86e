import { distanceToSegment } from '../../geometry/broken-line.ts';
import { type LineArcPath, type Point, pointAlong, segmentLength, segmentsOf } from '../../geometry/path.ts';

/** Points along the outline at which its width is looked at, mm apart. */
const STEP = 0.5;
/** The round corners at both ends are no width. mm */
const END = 4;
/** No edge is steeper, so that a rounding of two places over each other counts for nothing. */
const STEEP = 2;

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
  const points = segmentsOf(outline).flatMap((segment) => {
    const count = Math.max(1, Math.ceil(segmentLength(segment) / STEP));
    return Array.from({ length: count }, (_, k) => pointAlong(segment, k / count));
  });
  const xs = points.map((p) => p.x);
  const [start, end] = [Math.min(...xs), Math.max(...xs)];
  const turn = xs.indexOf(end);
  const within = (p: Point) => p.x > start + END && p.x < end - END;
  const distal = points.slice(turn).filter(within).reverse();
  const proximal = points.slice(0, turn).filter(within);
  const placed = place ? proximal.map(place) : proximal;
  // A line that rises by so much for each mm is this much nearer than what lies straight below.
  const steepest = Math.max(
    0,
    ...proximal.slice(1).map((p, k) => Math.abs((p.y - (proximal[k] as Point).y) / (p.x - (proximal[k] as Point).x))),
  );
  const clear = least * Math.hypot(1, Math.min(STEEP, steepest));
  let under = 0;
  const narrow: WidthAt[] = [];
  let first = 0;
  let before = false;
  for (const spot of distal) {
    while (under + 1 < proximal.length && (proximal[under + 1] as Point).x <= spot.x) under++;
    if (!place && spot.y - (proximal[under] as Point).y > clear + STEP * steepest) {
      before = false;
      continue;
    }
    // Nothing further along is as near, even where a bend presses the strip together to half.
    const reach = (place ? 2 : 1) * least;
    while (first + 1 < proximal.length && (proximal[first + 1] as Point).x < spot.x - reach) first++;
    const p = place ? place(spot) : spot;
    let width = Number.POSITIVE_INFINITY;
    for (let i = first; i + 1 < proximal.length && (proximal[i] as Point).x < spot.x + reach; i++)
      width = Math.min(width, distanceToSegment(p, placed[i] as Point, placed[i + 1] as Point));
    const isNarrow = width < least;
    const last = narrow.at(-1);
    if (isNarrow && !(before && last && last.width <= width)) {
      if (before) narrow.pop();
      narrow.push({ v: spot.x, width });
    }
    before = isNarrow;
  }
  return narrow;
}
