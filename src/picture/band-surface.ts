import { pointAtNormal } from '../geometry/offset-ellipse.ts';
import type { Point } from '../geometry/path.ts';
import type { Course, CoursePiece } from '../pattern/strip/strip-courses.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import type { StandingSection } from '../pattern/strip/strip-sections.ts';
import type { FingerShape, HandShape, WebName } from './hand-shape.ts';
import type { StandingFinger } from './posed-hand.ts';
import type { Mesh } from './surface-mesh.ts';
import { cross, minus, unit, type Vec } from './vec.ts';

/** Distance between places along the strip at which its surface is taken, mm. */
const STEP = 1.2;
const ROWS = 4;
/** What the distal edge keeps from a PIP crease where the strip runs palmar, mm, and how steeply it comes back. For pictures. */
const OFF_CREASE = 4.4;
const SLOPE = 1.2;

/** A place on the strip's neutral line, seen end-on, with the unit normal to the left of travel. */
interface Sample extends Point {
  readonly u: number;
  readonly course: Course;
  readonly nx: number;
  readonly ny: number;
}

/** The strip in space: its two faces, and the cut edges between them. */
export interface BandSurface {
  readonly faces: Mesh;
  readonly edges: Mesh;
}

/** How the strip's fingers stand, for `posedHand`. */
export function standingFingers(figures: StripFigures, shape: HandShape): ReadonlyMap<StandingSection['digit'], StandingFinger> {
  return new Map(
    figures.path.hand.sections.map((s) => {
      const finger = fingerOf(shape, s);
      return [s.digit, { x: s.x, mp: middleLevel(finger, figures) - s.lever, theta: s.theta }];
    }),
  );
}

/**
 * The strip as it lies round the fingers, following their turns: its path from end to end of the section, its width between the edges that keep clear
 * of webs and palmar PIP creases.
 * @param shift of x, as `posedHand` has it
 * @param from,to part of the path, mm from the seam; `to` may be larger than the path's length
 */
export function bandSurface(
  figures: StripFigures,
  shape: HandShape,
  shift: number,
  { from, to }: { readonly from: number; readonly to: number },
): BandSurface {
  const { pathLength } = figures.path;
  const closed = to - from >= pathLength - 1e-6;
  const line = samplesBetween(figures, from, closed ? from + pathLength : to);
  const proximal = line.map(({ x }) => levelAt(x, figures, shape) + figures.options.proximalGap);
  const distal = distalLevels(line, proximal, figures, shape, closed);
  const half = figures.options.thickness / 2;
  const grid = (side: number) =>
    line.map((p, k) =>
      Array.from({ length: ROWS + 1 }, (_, r): Vec => {
        const z = (proximal[k] as number) + (((distal[k] as number) - (proximal[k] as number)) * r) / ROWS;
        const { theta, middle } = turnAt(p.x, figures, shape);
        return [p.x + side * half * p.nx - shift, p.y + side * half * p.ny - (z - middle) * Math.tan(theta), z];
      }),
    );
  const [outer, inner] = [grid(1), grid(-1)];
  const count = line.length;
  const ring = (k: number) => (closed ? k % count : k);
  const spans = closed ? count : count - 1;
  const faces = new MeshBuilder();
  const edges = new MeshBuilder();
  for (let k = 0; k < spans; k++) {
    const next = ring(k + 1);
    const normal = (p: Sample, side: number): Vec => [side * p.nx, side * p.ny, 0];
    const [here, there] = [line[k] as Sample, line[next] as Sample];
    for (let r = 0; r < ROWS; r++) {
      for (const [side, g] of [
        [1, outer],
        [-1, inner],
      ] as const) {
        const corners = [g[k]?.[r], g[next]?.[r], g[next]?.[r + 1], g[k]?.[r + 1]] as readonly Vec[];
        const normals = [normal(here, side), normal(there, side), normal(there, side), normal(here, side)];
        faces.quad(side > 0 ? corners : corners.toReversed(), side > 0 ? normals : normals.toReversed());
      }
    }
    for (const r of [0, ROWS])
      edges.flat([outer[k]?.[r], outer[next]?.[r], inner[next]?.[r], inner[k]?.[r]] as readonly Vec[], [0, 0, r === 0 ? -1 : 1]);
  }
  if (!closed) {
    for (const k of [0, count - 1]) {
      for (let r = 0; r < ROWS; r++) {
        const corners = [outer[k]?.[r], outer[k]?.[r + 1], inner[k]?.[r + 1], inner[k]?.[r]] as readonly Vec[];
        edges.flat(corners, unit(cross(minus(corners[1] as Vec, corners[0] as Vec), minus(corners[3] as Vec, corners[0] as Vec))));
      }
    }
  }
  return { faces: faces.mesh(), edges: edges.mesh() };
}

/** Collects quads; corners are not shared, so that each keeps its own normal. */
class MeshBuilder {
  private readonly points: Vec[] = [];
  private readonly normals: Vec[] = [];
  private readonly triangles: (readonly [number, number, number])[] = [];

  quad(corners: readonly Vec[], normals: readonly Vec[]): void {
    const at = this.points.length;
    this.points.push(...corners);
    this.normals.push(...normals);
    this.triangles.push([at, at + 1, at + 2], [at, at + 2, at + 3]);
  }

  flat(corners: readonly Vec[], normal: Vec): void {
    this.quad(
      corners,
      corners.map(() => normal),
    );
  }

  mesh(): Mesh {
    return { points: this.points, normals: this.normals, triangles: this.triangles };
  }
}

function fingerOf(shape: HandShape, { digit }: Pick<StandingSection, 'digit'>): FingerShape {
  const finger = shape.fingers.find((f) => f.digit === digit);
  if (!finger) throw new Error(`the strip holds a ${digit} finger that the hand has not`);
  return finger;
}

/** Level of the middle of the strip at a finger. */
function middleLevel({ root }: FingerShape, { options }: StripFigures): number {
  return root + options.proximalGap + options.width / 2;
}

/** Level of the skin that the proximal edge keeps clear of: the fingers' roots and the webs between them, straight from one to the next. */
function levelAt(x: number, { path }: StripFigures, shape: HandShape): number {
  const { sections, webs } = path.hand;
  const knots = [
    ...sections.map((s) => ({ x: s.x, level: fingerOf(shape, s).root })),
    ...webs.map((w) => ({ x: w.x, level: shape.webs[w.between.join('-') as WebName] })),
  ].sort((a, b) => a.x - b.x);
  return interpolated(
    knots.map((k) => [k.x, k.level] as const),
    x,
  );
}

/** How the strip is turned at x, and about which level: as the finger there, between fingers in between. */
function turnAt(x: number, figures: StripFigures, shape: HandShape): { readonly theta: number; readonly middle: number } {
  const { sections } = figures.path.hand;
  const knots = (value: (s: StandingSection) => number) =>
    sections.flatMap((s) => [[s.x - 0.9 * s.halfWidth, value(s)] as const, [s.x + 0.9 * s.halfWidth, value(s)] as const]);
  return {
    theta: interpolated(
      knots((s) => s.theta),
      x,
    ),
    middle: interpolated(
      knots((s) => middleLevel(fingerOf(shape, s), figures)),
      x,
    ),
  };
}

function interpolated(knots: readonly (readonly [number, number])[], x: number): number {
  const first = knots[0];
  const last = knots.at(-1);
  if (!first || !last || x <= first[0]) return first?.[1] ?? 0;
  if (x >= last[0]) return last[1];
  const k = knots.findIndex(([at]) => at > x);
  const [a, b] = [knots[k - 1] as readonly [number, number], knots[k] as readonly [number, number]];
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/** The distal edge: the strip's width above the proximal one, cut back palmar to each finger that must bend. */
function distalLevels(
  line: readonly Sample[],
  proximal: readonly number[],
  figures: StripFigures,
  shape: HandShape,
  closed: boolean,
): readonly number[] {
  const { path, options } = figures;
  const levels = line.map((p, k) => {
    const free = (proximal[k] as number) + options.width;
    const under = path.hand.sections.find((s) => Math.abs(p.x - s.x) <= s.halfWidth && runsPalmar(s, p.course, path.held));
    if (!under) return free;
    return Math.min(free, Math.max((proximal[k] as number) + 6, fingerOf(shape, under).pipCrease - OFF_CREASE));
  });
  // Comes back no more steeply than scissors follow.
  const count = levels.length;
  for (let pass = 0; pass < 2; pass++) {
    for (let k = 1; k < count + (closed ? count : 0); k++) {
      const [i, before] = [k % count, (k - 1) % count];
      levels[i] = Math.min(levels[i] as number, (levels[before] as number) + SLOPE * STEP);
    }
    levels.reverse();
  }
  return levels;
}

function runsPalmar(s: StandingSection, course: Course, held: 'raised' | 'lowered'): boolean {
  if (s.place === 'raised') return true;
  if (s.place === 'lowered') return false;
  return (course === 'outer') === (held === 'raised');
}

/** Places on the neutral line between two lengths along it. */
function samplesBetween({ path }: StripFigures, from: number, to: number): readonly Sample[] {
  const { pieces, pathLength } = path;
  const found: Sample[] = [];
  for (const lap of [0, 1]) {
    for (const piece of pieces.toSorted((a, b) => a.u - b.u)) {
      const start = piece.u + lap * pathLength;
      const length = piece.element.length;
      const [a, b] = [Math.max(from, start), Math.min(to, start + length)];
      if (b - a <= 1e-9) continue;
      const count = Math.max(1, Math.round((b - a) / STEP));
      for (let k = 0; k < count; k++) found.push(sampleAt(piece, a + ((b - a) * k) / count - start, a + ((b - a) * k) / count));
      if (b >= to - 1e-9 && to - from < pathLength - 1e-6) found.push(sampleAt(piece, b - start, b));
    }
  }
  return found;
}

function sampleAt({ element, course }: CoursePiece, along: number, u: number): Sample {
  const t = element.length === 0 ? 0 : along / element.length;
  if (element.kind === 'line') {
    const { from, to, length } = element;
    const [nx, ny] = [-(to.y - from.y) / length, (to.x - from.x) / length];
    return { u, course, x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), nx, ny };
  }
  const { contact, fromNormal, toNormal } = element;
  const normal = fromNormal + (toNormal - fromNormal) * t;
  const sign = -contact.side;
  return { u, course, ...pointAtNormal(contact.body, normal), nx: sign * Math.cos(normal), ny: sign * Math.sin(normal) };
}
