import { arcOf, type Box, circlePath, type LineArcPath, type Point, pointAlong, type Segment, segmentsOf } from '../../geometry/path.ts';
import type { Circle } from '../../pattern/pattern.ts';
import { COORDINATE_DECIMALS, fixed } from '../../units/number.ts';

/** Widest arc written in one piece: 106 degrees (4 atan 0.5), so that a half circle makes two quarters. */
const WIDEST_BULGE = 0.5;

/**
 * SVG path data in mm with y down, 0 at the upper left of `extents`: the one place where y turns over. Arcs stay arcs (A).
 * A wide arc is written as two: the centre of a half circle given by its ends and a rounded radius is uncertain by the square root of the
 * rounding (0.03 mm at four decimals), that of a quarter circle only by the rounding itself.
 */
export function svgPathData(paths: readonly LineArcPath[], circles: readonly Circle[], extents: Box): string {
  const point = (p: Point) => `${fixed(p.x - extents.minX, COORDINATE_DECIMALS)} ${fixed(extents.maxY - p.y, COORDINATE_DECIMALS)}`;
  return [...paths, ...circles.map(circlePath)].map((path) => subpath(path, point)).join(' ');
}

function subpath(path: LineArcPath, point: (p: Point) => string): string {
  const segments = segmentsOf(path);
  const [first] = segments;
  if (!first) return '';
  // Z draws the last straight line of a closed path; writing it as well would double the corner.
  const drawn = path.closed && segments.at(-1)?.bulge === 0 ? segments.slice(0, -1) : segments;
  const pieces = [`M ${point(first.from)}`, ...drawn.map((segment) => command(segment, point))];
  return [...pieces, ...(path.closed ? ['Z'] : [])].join(' ');
}

function command(segment: Segment, point: (p: Point) => string): string {
  const arc = arcOf(segment);
  if (!arc) return `L ${point(segment.to)}`;
  const radius = fixed(arc.radius, COORDINATE_DECIMALS);
  const start = `A ${radius} ${radius} 0 0 ${sweepFlag(segment)}`;
  return arcEnds(segment)
    .map((end) => `${start} ${point(end)}`)
    .join(' ');
}

/** SVG's sweep flag: 0 is counter-clockwise on a screen. Turning y over changes the numbers, not what is seen. */
export function sweepFlag({ bulge }: Segment): 0 | 1 {
  return bulge > 0 ? 0 : 1;
}

/** Where the arcs end that a segment is written as: two for a wide one. */
export function arcEnds(segment: Segment): readonly Point[] {
  return Math.abs(segment.bulge) > WIDEST_BULGE ? [pointAlong(segment, 0.5), segment.to] : [segment.to];
}
