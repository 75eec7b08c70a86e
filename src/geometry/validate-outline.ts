import { MINIMUM_FEATURE, SAME_POINT } from '../units/tolerance.ts';
import { intersections } from './intersect.ts';
import {
  angleInSweep,
  arcOf,
  type Box,
  chord,
  distanceBetween,
  type LineArcPath,
  type Point,
  pointAlong,
  type Segment,
  segmentBox,
  segmentLength,
  segmentsOf,
  signedArea,
} from './path.ts';

/** A fault of an outline. `at` is where, mm. */
export interface OutlineFault {
  readonly code:
    | 'NOT_CLOSED'
    | 'NOT_FINITE'
    | 'TOO_FEW_EDGES'
    | 'WRONG_WAY'
    | 'ZERO_EDGE'
    | 'SHORT_EDGE'
    | 'BULGE_TOO_LARGE'
    | 'CROSSES_ITSELF'
    | 'NECK';
  readonly at: Point;
  readonly message: string;
}

/** Points per mm at which necks are looked for. */
const NECK_STEP = 0.5;
/** A neck is narrow compared with the way round it; closer than this along the outline, two edges simply meet in a corner. */
const NECK_WAY_ROUND = 3 * MINIMUM_FEATURE;

/**
 * All faults of a cut outline by output rule 7: closed, finite, turning the right way, no zero-length or doubled edge, no
 * self-crossing, no edge or neck under the minimum feature. An empty list proves it. A kerf's corner arcs are shorter than any feature:
 * for outlines that have them, `minimumFeature` is 0 and only edges and necks without any size are faults.
 */
export function outlineFaults(path: LineArcPath, role: 'outside' | 'hole', minimumFeature = MINIMUM_FEATURE): readonly OutlineFault[] {
  const origin: Point = path.vertices[0] ?? { x: 0, y: 0 };
  const wild = path.vertices.find((v) => ![v.x, v.y, v.bulge].every(Number.isFinite));
  if (wild) return [fault('NOT_FINITE', origin, 'has a coordinate that is not a number')];
  if (!path.closed) return [fault('NOT_CLOSED', origin, 'is open')];
  const segments = segmentsOf(path);
  if (segments.length < 2) return [fault('TOO_FEW_EDGES', origin, 'has fewer than two edges')];
  const faults: OutlineFault[] = [];
  for (const segment of segments) {
    const length = segmentLength(segment);
    if (chord(segment) <= SAME_POINT) faults.push(fault('ZERO_EDGE', segment.from, 'has an edge without length'));
    else if (length < minimumFeature - SAME_POINT)
      faults.push(fault('SHORT_EDGE', segment.from, `has an edge of ${length.toFixed(3)} mm, under ${minimumFeature} mm`));
    if (Math.abs(segment.bulge) > 1 + 1e-12) faults.push(fault('BULGE_TOO_LARGE', segment.from, 'has an arc of more than half a circle'));
  }
  if (faults.length > 0) return faults;
  const area = signedArea(path);
  if (role === 'outside' ? area <= 0 : area >= 0) {
    faults.push(fault('WRONG_WAY', origin, role === 'outside' ? 'must run counter-clockwise' : 'is a hole and must run clockwise'));
  }
  faults.push(...crossings(segments));
  return faults.length > 0 || minimumFeature === 0 ? faults : necks(segments);
}

function fault(code: OutlineFault['code'], at: Point, what: string): OutlineFault {
  return { code, at: { x: at.x, y: at.y }, message: `the outline ${what} (at ${at.x.toFixed(2)}, ${at.y.toFixed(2)})` };
}

/** Points that two edges share although they are no common corner. */
function crossings(segments: readonly Segment[]): readonly OutlineFault[] {
  const faults: OutlineFault[] = [];
  const boxes = segments.map(segmentBox);
  for (let i = 0; i < segments.length; i++) {
    for (let j = i + 1; j < segments.length; j++) {
      const [a, b] = [boxes[i], boxes[j]];
      if (
        !a ||
        !b ||
        a.minX > b.maxX + SAME_POINT ||
        b.minX > a.maxX + SAME_POINT ||
        a.minY > b.maxY + SAME_POINT ||
        b.minY > a.maxY + SAME_POINT
      )
        continue;
      const one = segments[i] as Segment;
      const other = segments[j] as Segment;
      const corners = [...(j === i + 1 ? [one.to] : []), ...(i === 0 && j === segments.length - 1 ? [one.from] : [])];
      const near = 10 * SAME_POINT;
      const shared = intersections(one, other).find((p) => !corners.some((c) => distanceBetween(p, c) <= near + tangentSlack(one, other)));
      if (shared) faults.push(fault('CROSSES_ITSELF', shared, 'touches or crosses itself, or has a doubled edge'));
    }
  }
  return faults;
}

/** Tangent edges meet so flatly that rounding moves their common point along them by about the square root of the tolerance. */
function tangentSlack(one: Segment, other: Segment): number {
  const radius = Math.max(arcOf(one)?.radius ?? 0, arcOf(other)?.radius ?? 0);
  return 2 * Math.sqrt(2 * radius * SAME_POINT);
}

function necks(segments: readonly Segment[]): readonly OutlineFault[] {
  const starts: number[] = [];
  let total = 0;
  for (const segment of segments) {
    starts.push(total);
    total += segmentLength(segment);
  }
  const boxes = segments.map(segmentBox);
  for (const [i, segment] of segments.entries()) {
    const length = segmentLength(segment);
    const steps = Math.max(1, Math.ceil(length / NECK_STEP));
    // Most edges lie far off, and their boxes show it: to the whole edge first, then to each point of it. To itself an edge has no way round.
    for (const [j, box] of boxes.entries()) {
      if (j === i || apart(boxes[i] as Box, box)) continue;
      const other = segments[j] as Segment;
      const near = shareNear(segment, box);
      for (let k = Math.ceil(near.from * steps); k < steps && k <= near.to * steps; k++) {
        const p = pointAlong(segment, k / steps);
        const { distance, along } = nearestOn(other, p);
        if (distance >= MINIMUM_FEATURE - SAME_POINT) continue;
        const here = (starts[i] as number) + (k / steps) * length;
        const there = (starts[j] as number) + along * segmentLength(other);
        const way = Math.abs(here - there);
        if (Math.min(way, total - way) > NECK_WAY_ROUND)
          return [fault('NECK', p, `is only ${distance.toFixed(2)} mm wide here, under ${MINIMUM_FEATURE} mm`)];
      }
    }
  }
  return [];
}

/** The share of an edge, of its length, that can lie nearer to a box than the minimum feature; of an arc all of it. */
function shareNear({ from, to, bulge }: Segment, box: Box): { readonly from: number; readonly to: number } {
  if (bulge !== 0) return { from: 0, to: 1 };
  const far = MINIMUM_FEATURE + SAME_POINT;
  const along = (start: number, end: number, low: number, high: number): readonly [number, number] => {
    if (start === end) return [0, 1];
    const [one, other] = [(low - far - start) / (end - start), (high + far - start) / (end - start)];
    return one < other ? [one, other] : [other, one];
  };
  const [fromX, toX] = along(from.x, to.x, box.minX, box.maxX);
  const [fromY, toY] = along(from.y, to.y, box.minY, box.maxY);
  return { from: Math.max(0, fromX, fromY), to: Math.min(1, toX, toY) };
}

/** Whether boxes lie more than the minimum feature, and rounding, from each other. */
function apart(a: Box, b: Box): boolean {
  const far = MINIMUM_FEATURE + SAME_POINT;
  return a.minX > b.maxX + far || b.minX > a.maxX + far || a.minY > b.maxY + far || b.minY > a.maxY + far;
}

/** Distance from a point to a segment, and where on it the nearest point lies (fraction of its length). */
export function nearestOn(segment: Segment, p: Point): { readonly distance: number; readonly along: number } {
  const toFrom = distanceBetween(p, segment.from);
  const toEnd = distanceBetween(p, segment.to);
  const best = toFrom <= toEnd ? { distance: toFrom, along: 0 } : { distance: toEnd, along: 1 };
  const arc = arcOf(segment);
  if (!arc) {
    const dx = segment.to.x - segment.from.x;
    const dy = segment.to.y - segment.from.y;
    const t = ((p.x - segment.from.x) * dx + (p.y - segment.from.y) * dy) / (dx * dx + dy * dy);
    if (!(t > 0 && t < 1)) return best;
    return { distance: distanceBetween(p, { x: segment.from.x + t * dx, y: segment.from.y + t * dy }), along: t };
  }
  const angle = Math.atan2(p.y - arc.center.y, p.x - arc.center.x);
  if (!angleInSweep(angle, arc)) return best;
  const raw = arc.sweep >= 0 ? angle - arc.startAngle : arc.startAngle - angle;
  const turned = raw - 2 * Math.PI * Math.floor(raw / (2 * Math.PI));
  return {
    distance: Math.abs(distanceBetween(p, arc.center) - arc.radius),
    along: turned > Math.abs(arc.sweep) ? 0 : turned / Math.abs(arc.sweep),
  };
}
