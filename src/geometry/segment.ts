import type { Box, LineArcPath, Point, Vertex } from './path.ts';

/** One straight or curved edge of a line-arc path. mm; bulge = tan(sweep/4), positive counter-clockwise. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/** The circle an arc segment lies on; sweep in radians, signed, at most pi in size. */
export interface ArcShape {
  readonly center: Point;
  readonly radius: number;
  readonly startAngle: number;
  readonly sweep: number;
}

export function segmentsOf(path: LineArcPath): readonly Segment[] {
  const { vertices, closed } = path;
  const count = closed ? vertices.length : vertices.length - 1;
  return vertices
    .slice(0, Math.max(0, count))
    .map((from, i) => ({ from, to: vertices[(i + 1) % vertices.length] as Vertex, bulge: from.bulge }));
}

export function chord({ from, to }: Segment): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** The arc of a curved segment, null for a line. Centre from chord and bulge: it lies (1 - bulge²)/(4 bulge) chords left of the middle. */
export function arcOf(segment: Segment): ArcShape | null {
  const { from, to, bulge } = segment;
  if (bulge === 0) return null;
  const k = (1 - bulge * bulge) / (4 * bulge);
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const center = { x: (from.x + to.x) / 2 - k * dy, y: (from.y + to.y) / 2 + k * dx };
  return {
    center,
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    startAngle: Math.atan2(from.y - center.y, from.x - center.x),
    sweep: 4 * Math.atan(bulge),
  };
}

export function segmentLength(segment: Segment): number {
  const arc = arcOf(segment);
  return arc ? arc.radius * Math.abs(arc.sweep) : chord(segment);
}

/** Point at the fraction t (0..1) of the segment's length. */
export function pointAlong(segment: Segment, t: number): Point {
  const arc = arcOf(segment);
  if (!arc) return { x: segment.from.x + t * (segment.to.x - segment.from.x), y: segment.from.y + t * (segment.to.y - segment.from.y) };
  const angle = arc.startAngle + t * arc.sweep;
  return { x: arc.center.x + arc.radius * Math.cos(angle), y: arc.center.y + arc.radius * Math.sin(angle) };
}

/** Direction of travel (radians) at the segment's start and end. */
export function headings(segment: Segment): { readonly start: number; readonly end: number } {
  const along = Math.atan2(segment.to.y - segment.from.y, segment.to.x - segment.from.x);
  const half = 2 * Math.atan(segment.bulge);
  return { start: along - half, end: along + half };
}

/** Smallest box round the segment, arcs exactly. */
export function segmentBox(segment: Segment): Box {
  const { from, to } = segment;
  let box: Box = { minX: Math.min(from.x, to.x), minY: Math.min(from.y, to.y), maxX: Math.max(from.x, to.x), maxY: Math.max(from.y, to.y) };
  const arc = arcOf(segment);
  if (!arc) return box;
  for (let quarter = 0; quarter < 4; quarter++) {
    const angle = (quarter * Math.PI) / 2;
    if (!angleInSweep(angle, arc)) continue;
    const x = arc.center.x + arc.radius * Math.cos(angle);
    const y = arc.center.y + arc.radius * Math.sin(angle);
    box = { minX: Math.min(box.minX, x), minY: Math.min(box.minY, y), maxX: Math.max(box.maxX, x), maxY: Math.max(box.maxY, y) };
  }
  return box;
}

/** Whether a direction from the arc's centre (radians) meets the arc; `slack` widens it at both ends. */
export function angleInSweep(angle: number, arc: ArcShape, slack = 0): boolean {
  const full = 2 * Math.PI;
  const raw = arc.sweep >= 0 ? angle - arc.startAngle : arc.startAngle - angle;
  const turned = raw - full * Math.floor(raw / full);
  return turned <= Math.abs(arc.sweep) + slack || turned >= full - slack;
}
