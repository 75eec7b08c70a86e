import { heightAt } from '../geometry/broken-line.ts';
import { pointAtNormal } from '../geometry/ellipse.ts';
import type { Point } from '../geometry/path.ts';
import type { Course, CoursePiece } from '../pattern/strip/strip-courses.ts';
import { flattened } from '../pattern/strip/strip-outline.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import type { StandingSection } from '../pattern/strip/strip-sections.ts';
import type { FingerShape, HandShape } from './hand-shape.ts';
import type { StandingFinger } from './posed-hand.ts';
import type { Mesh } from './surface-mesh.ts';
import { cross, minus, unit, type Vec } from './vec.ts';

/** Distance between places along the strip at which its surface is taken, mm. */
const STEP = 1.2;
const ROWS = 4;

/** A place on the strip's neutral line, seen end-on, with the unit normal to the left of travel. */
export interface Sample extends Point {
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
  const { proximal, distal } = edgesOnHand(line, figures);
  const half = figures.options.thickness / 2;
  const { slope, middle } = turnsAlong(line, figures, shape);
  const grid = (side: number) =>
    line.map((p, k) =>
      Array.from({ length: ROWS + 1 }, (_, r): Vec => {
        const z = (proximal[k] as number) + (((distal[k] as number) - (proximal[k] as number)) * r) / ROWS;
        return [p.x + side * half * p.nx - shift, p.y + side * half * p.ny - (z - (middle[k] as number)) * (slope[k] as number), z];
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

/** The slope to which the strip is turned along a line, and about which level: as the finger there, between fingers in between. */
function turnsAlong(line: readonly Sample[], figures: StripFigures, shape: HandShape) {
  const { sections } = figures.path.hand;
  const knots = (value: (s: StandingSection) => number) =>
    sections.flatMap((s) => [[s.x - 0.9 * s.halfWidth, value(s)] as const, [s.x + 0.9 * s.halfWidth, value(s)] as const]);
  const theta = knots((s) => s.theta);
  const level = knots((s) => middleLevel(fingerOf(shape, s), figures));
  return { slope: line.map(({ x }) => Math.tan(interpolated(theta, x))), middle: line.map(({ x }) => interpolated(level, x)) };
}

/** y at x of a line through knots sorted by x, level beyond its ends. */
export function interpolated(knots: readonly (readonly [number, number])[], x: number): number {
  const first = knots[0];
  const last = knots.at(-1);
  if (!first || !last || x <= first[0]) return first?.[1] ?? 0;
  if (x >= last[0]) return last[1];
  const k = knots.findIndex(([at]) => at > x);
  const [a, b] = [knots[k - 1] as readonly [number, number], knots[k] as readonly [number, number]];
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/** Levels of the two edges on the hand at places along the strip: the pattern's own, of a straight strip as it is pulled. */
function edgesOnHand(line: readonly Sample[], { onHand, flat, options, path }: StripFigures) {
  const places = line.map(({ u }) => flattened(u - path.pathLength * Math.floor(u / path.pathLength), options));
  const proximal = places.map((v) => heightAt(onHand, v));
  const distal = places.map((v) => heightAt(onHand, v) + heightAt(flat.distal, v) - heightAt(flat.proximal, v));
  return { proximal, distal };
}

/** Places on the neutral line between two lengths along it. */
export function samplesBetween({ path }: StripFigures, from: number, to: number): readonly Sample[] {
  const { pieces, pathLength } = path;
  const found: Sample[] = [];
  // The piece on which the seam lies began before it.
  for (const lap of [-1, 0, 1]) {
    for (const piece of pieces.toSorted((a, b) => a.u - b.u)) {
      const start = piece.u + lap * pathLength;
      const length = piece.element.length;
      const [a, b] = [Math.max(from, start), Math.min(to, start + length)];
      if (b - a <= 1e-9) continue;
      // A round length may end on half a step but for its last digit.
      const count = Math.max(1, Math.round((b - a) / STEP - 1e-6));
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
