import { edgeLength, pointAtNormal } from '../../geometry/ellipse.ts';
import type { Point } from '../../geometry/path.ts';
import { rootBetween } from '../../geometry/root.ts';
import type { ArcElement, Contact, PathElement } from '../../geometry/taut-path.ts';
import { ANGLE_SOLVED, LENGTH_COMPARED } from '../../units/tolerance.ts';

/** The inner course lies on the held digits, the outer one over it; they meet at the border digits. */
export type Course = 'outer' | 'inner';

/** A piece of the neutral line on one course, monotone in x. `u` is where it starts; `startsAt` tells the two border turns. */
export interface CoursePiece {
  readonly course: Course;
  readonly u: number;
  readonly element: PathElement;
  readonly startsAt: 'radial' | 'ulnar' | null;
}

/**
 * Splits a taut path into the two courses. A closed one is travelled: outer course radially, radial border, inner course, ulnar
 * border, outer course again; the border arcs are split where their normal is horizontal. An inner one is the inner course alone.
 */
export function splitIntoCourses(elements: readonly PathElement[], shape: 'closed' | 'inner'): readonly CoursePiece[] {
  const pieces: CoursePiece[] = [];
  let course: Course = shape === 'inner' ? 'inner' : 'outer';
  let u = 0;
  const add = (element: PathElement, startsAt: CoursePiece['startsAt'] = null) => {
    pieces.push({ course, u, element, startsAt });
    u += element.length;
  };
  const borders = elements.filter((e) => e.kind === 'arc' && e.contact.hold === 'round');
  for (const element of elements) {
    if (shape === 'closed' && element.kind === 'arc' && element.contact.hold === 'round') {
      const isRadial = element === borders[0];
      const [before, after] = splitArc(element, horizontalNormal(element, isRadial ? Math.PI : 0));
      add(before);
      course = isRadial ? 'inner' : 'outer';
      add(after, isRadial ? 'radial' : 'ulnar');
    } else {
      add(element);
    }
  }
  return pieces;
}

/** The angle that is `target` plus whole turns and lies nearest to the middle of the arc, held within the arc. */
function horizontalNormal(arc: ArcElement, target: number): number {
  const middle = (arc.fromNormal + arc.toNormal) / 2;
  const angle = target + 2 * Math.PI * Math.round((middle - target) / (2 * Math.PI));
  const low = Math.min(arc.fromNormal, arc.toNormal);
  const high = Math.max(arc.fromNormal, arc.toNormal);
  return Math.min(high, Math.max(low, angle));
}

function splitArc(arc: ArcElement, normal: number): [ArcElement, ArcElement] {
  const body = arc.contact.body;
  return [
    { ...arc, toNormal: normal, length: edgeLength(body, arc.fromNormal, normal) },
    { ...arc, fromNormal: normal, length: edgeLength(body, normal, arc.toNormal) },
  ];
}

/** A place on a course: its direction of travel there (radians), and the contact that it lies on, if any. */
export interface OnCourse {
  readonly u: number;
  readonly point: Point;
  readonly direction: number;
  readonly contact: Contact | null;
}

/** Where a course passes a given x; null when it does not. */
export function locateOnCourse(pieces: readonly CoursePiece[], course: Course, x: number): OnCourse | null {
  for (const piece of pieces) {
    if (piece.course !== course) continue;
    const found = piece.element.kind === 'line' ? onLine(piece.element, x) : onArc(piece.element, x);
    if (found) return { u: piece.u + found.distance, ...found };
  }
  return null;
}

interface Found extends Omit<OnCourse, 'u'> {
  readonly distance: number;
}

function onLine({ from, to, length }: PathElement & { kind: 'line' }, x: number): Found | null {
  if (!within(x, from.x, to.x)) return null;
  const t = to.x === from.x ? 0 : Math.min(1, Math.max(0, (x - from.x) / (to.x - from.x)));
  const direction = Math.atan2(to.y - from.y, to.x - from.x);
  return { distance: t * length, point: { x, y: from.y + t * (to.y - from.y) }, direction, contact: null };
}

function onArc(arc: ArcElement, x: number): Found | null {
  const body = arc.contact.body;
  const start = pointAtNormal(body, arc.fromNormal).x;
  const end = pointAtNormal(body, arc.toNormal).x;
  if (!within(x, start, end)) return null;
  const miss = (normal: number) => pointAtNormal(body, normal).x - x;
  const normal =
    rootBetween(miss, arc.fromNormal, arc.toNormal, ANGLE_SOLVED) ??
    (Math.abs(start - x) < Math.abs(end - x) ? arc.fromNormal : arc.toNormal);
  return {
    distance: edgeLength(body, arc.fromNormal, normal),
    point: pointAtNormal(body, normal),
    direction: normal + (arc.contact.side * Math.PI) / 2,
    contact: arc.contact,
  };
}

function within(x: number, one: number, other: number): boolean {
  return x >= Math.min(one, other) - LENGTH_COMPARED && x <= Math.max(one, other) + LENGTH_COMPARED;
}
