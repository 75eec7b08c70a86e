import { insidePolygon } from '../geometry/inside.ts';
import type { Box, Point } from '../geometry/path.ts';
import { unionBox } from '../geometry/path-measures.ts';
import { pointAlong, type Segment, segmentBox, segmentLength } from '../geometry/segment.ts';
import type { Contour } from './contours.ts';

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
  const polygon = segments.flatMap((segment) =>
    segment.bulge === 0 ? [segment.from] : Array.from({ length: ARC_POINTS }, (_, k) => pointAlong(segment, k / ARC_POINTS)),
  );
  return { polygon, box: unionBox(segments.map(segmentBox)) };
}

export function isInside(p: Point, { polygon, box }: Area): boolean {
  return p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY && insidePolygon(polygon, p);
}

/** Parts by nesting: an even number of contours around one makes it an outline, an odd number a hole of the nearest outline around it. */
export function partsOf(contours: readonly Contour[], areas: readonly Area[]): readonly Part[] {
  const probes = contours.map((contour) => {
    const [first] = contour.segments;
    return first ? pointAlong(first, 0.5) : { x: Number.NaN, y: Number.NaN };
  });
  const around = contours.map((_, i) =>
    contours.flatMap((__, j) => (i !== j && areas[j] && isInside(probes[i] as Point, areas[j]) ? [j] : [])),
  );
  const length = (contour: Contour) => contour.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
  return contours.flatMap((outline, i) => {
    const depth = around[i]?.length ?? 0;
    const area = areas[i];
    if (depth % 2 === 1 || !area) return [];
    const holes = contours.filter((_, j) => around[j]?.length === depth + 1 && around[j]?.includes(i));
    const cutLength = [outline, ...holes].reduce((sum, contour) => sum + length(contour), 0);
    return [{ layer: outline.layer, box: area.box, holes: holes.length, cutLength, outline }];
  });
}
