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
