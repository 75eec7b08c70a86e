import { type LineArcPath, type Point, polyline } from './path.ts';
import { arcOf, pointAlong, segmentsOf } from './segment.ts';

/** The path with chords instead of arcs, each within `chordError` mm of its arc; the corners stay. Sagitta of a chord: r (1 - cos(step / 2)). */
export function flattened(path: LineArcPath, chordError: number): LineArcPath {
  const points: Point[] = [];
  for (const segment of segmentsOf(path)) {
    points.push({ x: segment.from.x, y: segment.from.y });
    const arc = arcOf(segment);
    if (!arc) continue;
    const step = 2 * Math.acos(Math.max(0, 1 - chordError / arc.radius));
    const count = Math.ceil(Math.abs(arc.sweep) / step - 1e-9);
    for (let k = 1; k < count; k++) points.push(pointAlong(segment, k / count));
  }
  const last = path.vertices.at(-1);
  if (!path.closed && last) points.push({ x: last.x, y: last.y });
  return polyline(points, path.closed);
}
