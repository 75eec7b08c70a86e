import { type Body, pointAtNormal } from '../../geometry/ellipse.ts';
import { type LineArcPath, type Point, type Vertex, vertex } from '../../geometry/path.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import type { CoursePiece } from './strip-courses.ts';

/** Each drawn arc spans at most this turn of the normal (radians): then it lies within 0.01 mm of a finger's ellipse. */
const ARC_TURN = Math.PI / 16;

/** Arcs along a body's edge between two normals (radians), each through its true start, middle and end. The last vertex is the end. */
export function edgeArcs(body: Body, fromNormal: number, toNormal: number): readonly Vertex[] {
  const count = Math.max(1, Math.ceil(Math.abs(toNormal - fromNormal) / ARC_TURN));
  const normal = (k: number) => fromNormal + ((toNormal - fromNormal) * k) / count;
  const vertices: Vertex[] = [];
  for (let k = 0; k < count; k++) {
    const start = pointAtNormal(body, normal(k));
    const end = pointAtNormal(body, normal(k + 1));
    vertices.push(vertex(start.x, start.y, bulgeThrough(start, pointAtNormal(body, normal(k + 0.5)), end)));
  }
  const end = pointAtNormal(body, toNormal);
  return [...vertices, vertex(end.x, end.y)];
}

/** Bulge of the arc from start to end through a point near its middle: sagitta over half the chord. */
export function bulgeThrough(start: Point, middle: Point, end: Point): number {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const chord = Math.hypot(dx, dy);
  if (chord < SAME_POINT) return 0;
  const sagitta = ((middle.x - start.x) * dy - (middle.y - start.y) * dx) / chord;
  return sagitta / (chord / 2);
}

/** The whole edge of a body, closed and counter-clockwise. */
export function bodyEdge(body: Body): LineArcPath {
  return { closed: true, vertices: edgeArcs(body, 0, 2 * Math.PI).slice(0, -1) };
}

/** The band's neutral line moved to its left by `shift` mm (to the right when negative): its two faces are at half the thickness. */
export function bandLine(pieces: readonly CoursePiece[], shift: number): LineArcPath {
  const vertices: Vertex[] = [];
  const add = (list: readonly Vertex[]) => {
    for (const v of list) {
      const last = vertices.at(-1);
      if (last && last.bulge === 0 && Math.hypot(last.x - v.x, last.y - v.y) < SAME_POINT) vertices.pop();
      vertices.push(v);
    }
  };
  for (const { element } of pieces) {
    if (element.kind === 'line') {
      if (element.length < SAME_POINT) continue;
      const nx = -(element.to.y - element.from.y) / element.length;
      const ny = (element.to.x - element.from.x) / element.length;
      add([vertex(element.from.x + shift * nx, element.from.y + shift * ny), vertex(element.to.x + shift * nx, element.to.y + shift * ny)]);
    } else if (element.length > SAME_POINT) {
      const body = element.contact.body;
      add(edgeArcs({ ...body, offset: body.offset - element.contact.side * shift }, element.fromNormal, element.toNormal));
    }
  }
  const first = vertices[0];
  const last = vertices.at(-1);
  if (first && last && Math.hypot(first.x - last.x, first.y - last.y) < SAME_POINT) vertices.pop();
  return { closed: true, vertices };
}
