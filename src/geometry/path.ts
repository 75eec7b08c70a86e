/** A point in mm; y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A corner of a line-arc path. `bulge` = tan(sweep/4) of the segment that leaves it: 0 a line, positive counter-clockwise, at most 1 (half a circle). */
export interface Vertex extends Point {
  readonly bulge: number;
}

/** Lines and arcs joined end to end. A closed path's last vertex joins its first; an open path's last bulge has no meaning and is 0. */
export interface LineArcPath {
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
}

/** Not Math.hypot, which guards against overflow, far from lengths of a hand, and takes ten times as long. */
export function distanceBetween(p: Point, q: Point): number {
  return Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2);
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const vertex = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });

/** An open or closed path of straight lines through the points. */
export function polyline(points: readonly Point[], closed = false): LineArcPath {
  return { closed, vertices: points.map((p) => vertex(p.x, p.y)) };
}

/** A circle as two half circles, counter-clockwise from its right-hand side. */
export function circlePath({ center, radius }: { readonly center: Point; readonly radius: number }): LineArcPath {
  const end = (side: number) => vertex(center.x + side * radius, center.y, 1);
  return { closed: true, vertices: [end(1), end(-1)] };
}

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
  return distanceBetween(from, to);
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
    radius: (chord(segment) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
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
  return pointOn(segment, arcOf(segment), t);
}

/** So many points at even distances along a segment, its start the first of them and its end left out. */
export function pointsAlong(segment: Segment, count: number): readonly Point[] {
  const arc = arcOf(segment);
  return Array.from({ length: count }, (_, k) => pointOn(segment, arc, k / count));
}

function pointOn({ from, to }: Segment, arc: ArcShape | null, t: number): Point {
  if (!arc) return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
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
  const boxes: Box[] = [];
  for (const path of paths) {
    if (path.vertices.length === 0) continue;
    boxes.push(boxOfPoints(path.vertices));
    if (path.vertices.length > 1 && path.vertices.some(({ bulge }) => bulge !== 0)) boxes.push(...segmentsOf(path).map(segmentBox));
  }
  return unionBox(boxes);
}

/** Smallest box round points; at least one is needed. */
export function boxOfPoints(points: readonly Point[]): Box {
  const first = points[0];
  if (!first) throw new RangeError('no box round nothing');
  let [minX, minY, maxX, maxY] = [first.x, first.y, first.x, first.y];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** Smallest box round boxes; at least one is needed. */
export function unionBox(boxes: readonly Box[]): Box {
  const first = boxes[0];
  if (!first) throw new RangeError('no box round nothing');
  let { minX, minY, maxX, maxY } = first;
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** The path with chords instead of arcs, each within `chordError` mm of its arc; the corners stay. Sagitta of a chord: r (1 - cos(step / 2)). */
export function flattened(path: LineArcPath, chordError: number): LineArcPath {
  const points: Point[] = [];
  for (const segment of segmentsOf(path)) {
    const { x, y } = segment.from;
    points.push({ x, y });
    const arc = arcOf(segment);
    if (!arc) continue;
    const step = 2 * Math.acos(Math.max(0, 1 - chordError / arc.radius));
    points.push(...pointsAlong(segment, Math.ceil(Math.abs(arc.sweep) / step - 1e-9)).slice(1));
  }
  const last = path.vertices.at(-1);
  if (!path.closed && last) points.push({ x: last.x, y: last.y });
  return polyline(points, path.closed);
}
