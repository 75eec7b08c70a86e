import { type LineArcPath, type Point, pointsAlong, segmentLength, segmentsOf } from '../../geometry/path.ts';

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
  const points = segmentsOf(outline).flatMap((segment) => pointsAlong(segment, Math.max(1, Math.ceil(segmentLength(segment) / STEP))));
  const xs = points.map((p) => p.x);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const turn = xs.indexOf(to);
  const within = (p: Point) => p.x > from + END && p.x < to - END;
  const distal = points.slice(turn).filter(within).reverse();
  const proximal = points.slice(0, turn).filter(within);
  // Columns of numbers: nearly all of the work is looking along them.
  const [alongs, heights] = columnsOf(proximal);
  const [placedX, placedY] = place ? columnsOf(proximal.map(place)) : [alongs, heights];
  const narrow: WidthAt[] = [];
  // Nothing further along is as near, even where a bend presses the strip together to half.
  const reach = (place ? 2 : 1) * least;
  let first = 0;
  let before = false;
  for (const spot of distal) {
    while (first + 1 < alongs.length && (alongs[first + 1] as number) < spot.x - reach) first++;
    let end = first;
    let highest = Number.NEGATIVE_INFINITY;
    for (; end < alongs.length; end++) {
      highest = Math.max(highest, heights[end] as number);
      if ((alongs[end] as number) >= spot.x + reach) break;
    }
    // What lies so far under it, or so far along, is no nearer than that.
    if (!place && spot.y - highest >= least) {
      before = false;
      continue;
    }
    const p = place ? place(spot) : spot;
    const width = leastDistance(p, placedX, placedY, first, Math.min(end, alongs.length - 1));
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

function columnsOf(points: readonly Point[]): readonly [xs: Float64Array, ys: Float64Array] {
  const [xs, ys] = [new Float64Array(points.length), new Float64Array(points.length)];
  for (const [k, { x, y }] of points.entries()) [xs[k], ys[k]] = [x, y];
  return [xs, ys];
}

/** Least distance from a point to the straight pieces of a line that begin at `first` to before `end`; infinite where there is none. mm */
function leastDistance(p: Point, xs: Float64Array, ys: Float64Array, first: number, end: number): number {
  let square = Number.POSITIVE_INFINITY;
  for (let i = first; i < end; i++) {
    const [x, y] = [xs[i] as number, ys[i] as number];
    const [dx, dy] = [(xs[i + 1] as number) - x, (ys[i + 1] as number) - y];
    const t = Math.min(1, Math.max(0, ((p.x - x) * dx + (p.y - y) * dy) / (dx * dx + dy * dy || 1)));
    square = Math.min(square, (p.x - x - t * dx) ** 2 + (p.y - y - t * dy) ** 2);
  }
  return Math.sqrt(square);
}
