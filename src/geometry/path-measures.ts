import type { Box, LineArcPath } from './path.ts';
import { arcOf, segmentBox, segmentLength, segmentsOf } from './segment.ts';

/** Length of a path, mm; arcs exactly. */
export function pathLength(path: LineArcPath): number {
  return segmentsOf(path).reduce((sum, segment) => sum + segmentLength(segment), 0);
}

/** Signed area of a closed path, mm²: positive when counter-clockwise. Polygon of the chords plus the circular segments of the arcs. */
export function signedArea(path: LineArcPath): number {
  let area = 0;
  for (const segment of segmentsOf({ ...path, closed: true })) {
    area += (segment.from.x * segment.to.y - segment.to.x * segment.from.y) / 2;
    const arc = arcOf(segment);
    if (arc) area += (arc.radius * arc.radius * (arc.sweep - Math.sin(arc.sweep))) / 2;
  }
  return area;
}

/** Smallest box round all the paths, arcs exactly. Throws RangeError when there is nothing to enclose. */
export function boxOf(paths: readonly LineArcPath[]): Box {
  const boxes = paths.flatMap((path) => {
    const only = path.vertices[0];
    if (path.vertices.length === 1 && only) return [{ minX: only.x, minY: only.y, maxX: only.x, maxY: only.y }];
    return segmentsOf(path).map(segmentBox);
  });
  if (boxes.length === 0) throw new RangeError('no box round nothing');
  return unionBox(boxes);
}

/** Smallest box round boxes; at least one is needed. */
export function unionBox(boxes: readonly Box[]): Box {
  const first = boxes[0];
  if (!first) throw new RangeError('no box round nothing');
  return boxes.reduce(
    (all, box) => ({
      minX: Math.min(all.minX, box.minX),
      minY: Math.min(all.minY, box.minY),
      maxX: Math.max(all.maxX, box.maxX),
      maxY: Math.max(all.maxY, box.maxY),
    }),
    first,
  );
}
