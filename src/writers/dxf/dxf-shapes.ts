import { arcOf, flattened, type LineArcPath, type Point, type Segment, segmentsOf, type Vertex } from '../../geometry/path.ts';
import type { Circle } from '../../pattern/pattern.ts';
import { degrees } from '../../units/angle.ts';
import { BULGE_DECIMALS, COORDINATE_DECIMALS, fixed, plain, READ_BULGE_DECIMALS, READ_DECIMALS } from '../../units/number.ts';
import type { DrawnItem } from '../draw-order.ts';
import type { DxfSettings } from '../output-settings.ts';

/** A point as it is written: x, y and, where an arc leaves it, the bulge. */
export type DxfPoint = readonly [x: string, y: string, bulge?: string];

/** One entity, its numbers already text. Angles in degrees counter-clockwise. */
export type DxfShape =
  | { readonly kind: 'line'; readonly from: DxfPoint; readonly to: DxfPoint }
  | { readonly kind: 'arc'; readonly center: DxfPoint; readonly radius: string; readonly start: string; readonly end: string }
  | { readonly kind: 'circle'; readonly center: DxfPoint; readonly radius: string }
  | { readonly kind: 'polyline'; readonly closed: boolean; readonly points: readonly DxfPoint[] };

/**
 * What is drawn, as DXF entities. `bulge`: polylines with bulges, circles as CIRCLE, single straight strokes as LINE. `entities`: every edge
 * a LINE or an ARC of its own. `lines`: polylines of chords within `chordError`.
 */
export function dxfShapes(item: DrawnItem, settings: DxfSettings): readonly DxfShape[] {
  const written = item.role === 'label' || item.layer === 'INFO' ? READ : EXACT;
  const circles = item.circles.map((circle) =>
    settings.arcs === 'lines' ? chords(roundPath(circle), settings, written) : circleShape(circle, written),
  );
  return [...item.paths.flatMap((path) => pathShapes(path, settings, written)), ...circles];
}

/** Numbers as text: what a machine follows, and what is only read, letters above all. */
interface Written {
  readonly coordinate: (value: number) => string;
  readonly bulge: (value: number) => string;
}
const EXACT: Written = { coordinate: (value) => fixed(value, COORDINATE_DECIMALS), bulge: (value) => fixed(value, BULGE_DECIMALS) };
const READ: Written = { coordinate: (value) => plain(value, READ_DECIMALS), bulge: (value) => plain(value, READ_BULGE_DECIMALS) };

function pathShapes(path: LineArcPath, settings: DxfSettings, written: Written): readonly DxfShape[] {
  const [from, to] = path.vertices;
  if (!from || !to) return [];
  if (!path.closed && path.vertices.length === 2 && from.bulge === 0)
    return [{ kind: 'line', from: point(from, written), to: point(to, written) }];
  if (settings.arcs === 'lines') return [chords(path, settings, written)];
  const circle = asCircle(path);
  if (circle) return [circleShape(circle, written)];
  return settings.arcs === 'entities' ? segmentsOf(path).map((segment) => segmentShape(segment, written)) : [bulged(path, written)];
}

function bulged(path: LineArcPath, written: Written): DxfShape {
  const last = path.vertices.length - 1;
  const points = path.vertices.map((v, i): DxfPoint => {
    const hasArc = v.bulge !== 0 && (path.closed || i < last);
    return hasArc ? [...point(v, written), written.bulge(v.bulge)] : point(v, written);
  });
  return { kind: 'polyline', closed: path.closed, points };
}

function chords(path: LineArcPath, { chordError }: DxfSettings, written: Written): DxfShape {
  return { kind: 'polyline', closed: path.closed, points: flattened(path, chordError).vertices.map((v) => point(v, written)) };
}

function segmentShape(segment: Segment, written: Written): DxfShape {
  const arc = arcOf(segment);
  if (!arc) return { kind: 'line', from: point(segment.from, written), to: point(segment.to, written) };
  const ends = [arc.startAngle, arc.startAngle + arc.sweep].map((radians) => ((degrees(radians) % 360) + 360) % 360);
  const [start = 0, end = 0] = arc.sweep > 0 ? ends : ends.reverse();
  return {
    kind: 'arc',
    center: point(arc.center, written),
    radius: written.coordinate(arc.radius),
    start: written.bulge(start),
    end: written.bulge(end),
  };
}

function circleShape({ center, radius }: Circle, written: Written): DxfShape {
  return { kind: 'circle', center: point(center, written), radius: written.coordinate(radius) };
}

function roundPath({ center: { x, y }, radius }: Circle): LineArcPath {
  const end = (side: number): Vertex => ({ x: x + side * radius, y, bulge: 1 });
  return { closed: true, vertices: [end(1), end(-1)] };
}

/** Two half circles that close are a circle, which many machines cut better as CIRCLE. */
function asCircle(path: LineArcPath): Circle | null {
  const [a, b] = path.vertices;
  if (!path.closed || path.vertices.length !== 2 || !a || !b || Math.abs(a.bulge) !== 1 || a.bulge !== b.bulge) return null;
  return { center: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, radius: Math.hypot(b.x - a.x, b.y - a.y) / 2 };
}

function point(p: Point, { coordinate }: Written): readonly [x: string, y: string] {
  return [coordinate(p.x), coordinate(p.y)];
}
