import { SAME_POINT } from '../units/tolerance.ts';
import { type LineArcPath, pathLength, pointAlong, segmentLength, segmentsOf, type Vertex } from './path.ts';

/**
 * The open stretch of a closed path from one length along it to another, mm from its first vertex; `to` is above `from` and may run past
 * the path's start (at most once round). Lines stay lines, arcs stay arcs.
 * @throws RangeError when the stretch has no length or is longer than the path
 */
export function stretchOf(path: LineArcPath, from: number, to: number): LineArcPath {
  const total = pathLength(path);
  if (!(to - from > SAME_POINT) || to - from > total + SAME_POINT) throw new RangeError(`no stretch from ${from} to ${to} of ${total} mm`);
  const segments = segmentsOf({ ...path, closed: true });
  const shift = Math.floor(from / total) * total;
  const [start, end] = [from - shift, to - shift];
  const vertices: Vertex[] = [];
  let last: { x: number; y: number } | null = null;
  let passed = 0;
  for (let k = 0; passed < end - SAME_POINT && k < 3 * segments.length; k++) {
    const segment = segments[k % segments.length];
    if (!segment) break;
    const length = segmentLength(segment);
    const t0 = Math.max(0, start - passed) / length;
    const t1 = Math.min(length, end - passed) / length;
    if ((t1 - t0) * length > SAME_POINT) {
      const whole = t0 === 0 && t1 === 1;
      const at = t0 === 0 ? segment.from : pointAlong(segment, t0);
      vertices.push({ x: at.x, y: at.y, bulge: whole ? segment.bulge : Math.tan(Math.atan(segment.bulge) * (t1 - t0)) });
      last = t1 === 1 ? segment.to : pointAlong(segment, t1);
    }
    passed += length;
  }
  if (last) vertices.push({ x: last.x, y: last.y, bulge: 0 });
  return { closed: false, vertices };
}

/** A stretch of a closed path, mm from its first vertex, `from` below `to`; both within 0 and the path's length. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** What is left of a closed path of this length when the stretches are taken out: stretches in order, the one over the start in one piece. */
export function remaining(total: number, removed: readonly Stretch[]): readonly Stretch[] {
  const sorted = [...removed].sort((a, b) => a.from - b.from);
  const merged: { from: number; to: number }[] = [];
  for (const stretch of sorted) {
    const before = merged.at(-1);
    if (before && stretch.from <= before.to + SAME_POINT) before.to = Math.max(before.to, stretch.to);
    else merged.push({ ...stretch });
  }
  const first = merged[0];
  const last = merged.at(-1);
  if (!first || !last) return [{ from: 0, to: total }];
  const between = merged.slice(0, -1).map((stretch, i) => ({ from: stretch.to, to: merged[i + 1]?.from ?? total }));
  return [...between, { from: last.to, to: first.from + total }].filter((stretch) => stretch.to - stretch.from > SAME_POINT);
}
