import type { LineArcPath, Point, Vertex } from './path.ts';

/** A move that keeps sizes: mirror x (if asked), turn by `angle` (radians), then shift. */
export interface Placement {
  readonly mirrorX?: boolean;
  readonly angle?: number;
  readonly dx: number;
  readonly dy: number;
}

export function placePoint(point: Point, placement: Placement): Point {
  const angle = placement.angle ?? 0;
  return placedAt(point, placement, Math.cos(angle), Math.sin(angle));
}

function placedAt(point: Point, { mirrorX, dx, dy }: Placement, c: number, s: number): Point {
  const x = mirrorX ? -point.x : point.x;
  return { x: x * c - point.y * s + dx, y: x * s + point.y * c + dy };
}

/** The path moved; a mirrored one keeps its order of vertices, so its sense of turning is reversed. */
export function placePath(path: LineArcPath, placement: Placement): LineArcPath {
  const sign = placement.mirrorX ? -1 : 1;
  const angle = placement.angle ?? 0;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const vertices = path.vertices.map((v): Vertex => {
    const { x, y } = placedAt(v, placement, c, s);
    return { x, y, bulge: v.bulge === 0 ? 0 : sign * v.bulge };
  });
  return { closed: path.closed, vertices };
}

/** The same path travelled the other way, from the same first vertex when closed. */
export function reversePath(path: LineArcPath): LineArcPath {
  const { vertices, closed } = path;
  const count = vertices.length;
  const backward = Array.from({ length: count }, (_, i): Vertex => {
    const at = closed ? (count - i) % count : count - 1 - i;
    const before = vertices[(at + count - 1) % count] as Vertex;
    const isEnd = !closed && i === count - 1;
    const bulge = isEnd || before.bulge === 0 ? 0 : -before.bulge;
    return { x: (vertices[at] as Vertex).x, y: (vertices[at] as Vertex).y, bulge };
  });
  return { closed, vertices: backward };
}
