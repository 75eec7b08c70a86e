import type { Point } from '../geometry/path.ts';
import type { DigitName } from '../hand/digits.ts';
import { radians } from '../units/angle.ts';
import type { FlatPlate, MarkedBend } from './flat-plate.ts';
import type { Point3 } from './space.ts';

/** How far a marked line may be off a straight one that dashes and four decimals draw. mm */
const STRAIGHT = 0.02;

/** A sheet that is folded as its marks say. */
export interface FoldedSheet {
  /** The digits behind the same bend as a place of the flat sheet: those on its side of a slot. */
  readonly sideOf: (p: Point) => Side;
  /** Where a place of the flat sheet comes to lie, mm: the hand part stays in the plane z 0. */
  readonly into: (p: Point, side: Side) => Point3;
}

/** One bend as it is folded. */
export interface Side {
  readonly digits: readonly DigitName[];
  readonly midlines: readonly (readonly Point[])[];
  /** y of the line where the bend begins, at x; and how far beyond it, along the hand, the bend ends. */
  readonly beginAt: (x: number) => number;
  readonly lengthAt: (x: number) => number;
  readonly fold: (p: Point) => Point3;
}

/**
 * Folds a sheet along its own marks: about a straight line as about a round bar, so that nothing stretches; about a line with kinks each column by
 * itself, as somebody does who follows the marks. The sheet turns until the fingers, seen from the side, stand at the angle.
 * @param sense -1 where fingers bend away from the plate (on the back), 1 where they bend toward it
 * @param shortest length along the hand of a bend that is too short to have lines of its own
 */
export function foldSheet(flat: FlatPlate, angle: number, sense: 1 | -1, shortest: number): FoldedSheet {
  const sides = flat.bends.map((bend) => sideOfBend(flat, bend, angle, sense, shortest));
  return {
    sideOf: (p) => (sides.length === 1 ? (sides[0] as Side) : nearestSide(sides, p)),
    into: (p, side) => side.fold(p),
  };
}

function sideOfBend(flat: FlatPlate, bend: MarkedBend, angle: number, sense: 1 | -1, shortest: number): Side {
  const half = bend.begin && bend.end ? 0 : shortest / 2;
  const begin = (bend.begin && bend.end ? bend.begin : bend.middle).map((p) => ({ x: p.x, y: p.y - half }));
  const end = (bend.begin && bend.end ? bend.end : bend.middle).map((p) => ({ x: p.x, y: p.y + half }));
  const beginAt = (x: number) => lineAt(begin, x);
  const lengthAt = (x: number) => lineAt(end, x) - beginAt(x);
  const midlines = bend.digits.flatMap((digit) => flat.midlines.get(digit) ?? []);
  const shared = { digits: bend.digits, midlines: [midlines], beginAt, lengthAt };
  const [first, last] = [begin[0] as Point, begin.at(-1) as Point];
  const slope = (last.y - first.y) / (last.x - first.x);
  const bent = begin.some((p) => Math.abs(p.y - first.y - slope * (p.x - first.x)) > STRAIGHT);
  if (bent) {
    const column = (p: Point): Point3 => {
      const folded = alongBar(p.y - beginAt(p.x), lengthAt(p.x), radians(angle));
      return { x: p.x, y: beginAt(p.x) + folded.forward, z: sense * folded.aside };
    };
    return { ...shared, fold: column };
  }
  const size = Math.hypot(1, slope);
  const [ux, uy] = [1 / size, slope / size];
  // Turned further about an oblique line, so that a finger seen from its side stands at the angle.
  const turn = Math.atan2(Math.sin(radians(angle)), Math.cos(radians(angle)) / size);
  const length = lengthAt((first.x + last.x) / 2) / size;
  const fold = (p: Point): Point3 => {
    const along = (p.x - first.x) * ux + (p.y - first.y) * uy;
    const square = -(p.x - first.x) * uy + (p.y - first.y) * ux;
    const folded = alongBar(square, length, turn);
    return {
      x: first.x + along * ux - folded.forward * uy,
      y: first.y + along * uy + folded.forward * ux,
      z: sense * folded.aside,
    };
  };
  return { ...shared, fold };
}

/** A distance square to a bend's beginning, once the sheet is bent round a bar for `length` and runs straight on: forward, and aside of its plane. */
function alongBar(distance: number, length: number, turn: number): { readonly forward: number; readonly aside: number } {
  if (distance <= 0 || turn === 0) return { forward: distance, aside: 0 };
  const radius = length / turn;
  const turned = Math.min(distance, length) / (radius || 1);
  const beyond = Math.max(0, distance - length);
  const [s, c] = length > 0 ? [Math.sin(turned), Math.cos(turned)] : [Math.sin(turn), Math.cos(turn)];
  return { forward: radius * s + beyond * c, aside: radius * (1 - c) + beyond * s };
}

/** y of a line through points sorted by x; beyond its ends it goes on as its last piece does. */
function lineAt(points: readonly Point[], x: number): number {
  const after = points.findIndex((p) => p.x >= x);
  const k = after < 0 ? points.length - 1 : Math.max(1, after);
  const [a, b] = [points[k - 1] as Point, points[k] as Point];
  return b.x === a.x ? b.y : a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
}

/** The side whose midlines run nearer: a slot lies about half-way between two of them. */
function nearestSide(sides: readonly Side[], p: Point): Side {
  const square = ({ midlines }: Side) => {
    let least = Number.POSITIVE_INFINITY;
    for (const line of midlines) for (let k = 0; k < line.length; k++) least = Math.min(least, squareToLine(line, k, p));
    return least;
  };
  return sides.reduce((a, b) => (square(b) < square(a) ? b : a));
}

/** Square of the distance to a line's piece from its point `k`; asked for each vertex of a sheet, where Math.hypot takes most of the time. */
function squareToLine(line: readonly Point[], k: number, p: Point): number {
  const [a, b] = [line[k] as Point, line[k + 1] ?? (line[k] as Point)];
  const length = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length));
  return (p.x - a.x - t * (b.x - a.x)) ** 2 + (p.y - a.y - t * (b.y - a.y)) ** 2;
}
