import { boxIndex } from '../geometry/box-index.ts';
import { insidePolygon } from '../geometry/inside.ts';
import { type Box, type Point, pointAlong, pointsAlong, type Segment, segmentBox, segmentLength, unionBox } from '../geometry/path.ts';
import type { Contour } from './contours.ts';
import type { Budget } from './drawing.ts';

/** A piece that comes loose: an outline and the holes right inside it. mm */
export interface Part {
  readonly layer: string;
  readonly box: Box;
  readonly holes: number;
  /** Outline and holes together. */
  readonly cutLength: number;
  readonly outline: Contour;
}

/** Points per arc for the question of inside and outside. */
const ARC_POINTS = 12;

/** A contour as a polygon that follows its arcs closely enough to tell inside from outside. */
export interface Area {
  readonly polygon: readonly Point[];
  readonly box: Box;
}

export function areaOf(segments: readonly Segment[]): Area {
  const polygon = segments.flatMap((segment) => (segment.bulge === 0 ? [segment.from] : pointsAlong(segment, ARC_POINTS)));
  return { polygon, box: unionBox(segments.map(segmentBox)) };
}

function isInside(p: Point, { polygon, box }: Area): boolean {
  return p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY && insidePolygon(polygon, p);
}

/** Walking along so many corners takes about as long as comparing a pair of edges. */
export const CORNERS_AS_ONE = 20;

/** Which of the areas a point lies inside, by their places in the list, rising. */
export function areasAround(areas: readonly Area[], budget: Budget): (p: Point) => readonly number[] {
  const index = boxIndex(areas.map(({ box }) => box));
  return (p) =>
    index.meeting({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y }).filter((place) => {
      const area = areas[place] as Area;
      budget.compare(area.polygon.length / CORNERS_AS_ONE);
      return isInside(p, area);
    });
}

/** Parts by nesting: an even number of contours around one makes it an outline, an odd number a hole of the nearest outline around it. */
export function partsOf(contours: readonly Contour[], areas: readonly Area[], budget: Budget): readonly Part[] {
  const inside = areasAround(areas, budget);
  const around = contours.map(({ segments: [first] }, i) => (first ? inside(pointAlong(first, 0.5)).filter((place) => place !== i) : []));
  const length = (contour: Contour) => contour.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
  const holes = new Map<number, Contour[]>();
  for (const [i, hole] of contours.entries()) {
    const depth = around[i]?.length ?? 0;
    if (depth % 2 === 0) continue;
    for (const outline of around[i] ?? []) {
      if (around[outline]?.length !== depth - 1) continue;
      const list = holes.get(outline);
      if (list) list.push(hole);
      else holes.set(outline, [hole]);
    }
  }
  return contours.flatMap((outline, i) => {
    const area = areas[i];
    if ((around[i]?.length ?? 0) % 2 === 1 || !area) return [];
    const own = holes.get(i) ?? [];
    const cutLength = [outline, ...own].reduce((sum, contour) => sum + length(contour), 0);
    return [{ layer: outline.layer, box: area.box, holes: own.length, cutLength, outline }];
  });
}
