import { chordPoints } from '../geometry/inside.ts';
import type { Point } from '../geometry/path.ts';
import type { FingerPart, PartDigit } from '../pattern/plate/finger-part.ts';
import { scaledPalm, wrapped } from '../pattern/plate/palm-section.ts';
import { type FaceFrame, WRIST_SHARE } from '../pattern/plate/plate-frame.ts';
import type { PlateFigures } from '../pattern/plate/plate-report.ts';
import { slotBetween } from '../pattern/plate/slot.ts';
import { radians } from '../units/angle.ts';
import { interpolated } from './band-surface.ts';
import { type FlatMesh, flatMesh } from './flat-mesh.ts';
import type { Solid } from './hand-solid.ts';
import type { PosedFinger, PosedHand } from './posed-hand.ts';
import type { Mesh } from './surface-mesh.ts';
import { add, cross, minus, mix, unit, type Vec } from './vec.ts';

/** A sheet in space: its two faces, and the cut edges between them. */
export interface SheetSurface {
  readonly faces: Mesh;
  readonly edges: Mesh;
}

/** Usual size of a sheet's triangles, mm: a slot of 3 stays open. */
const STEP = 1.4;
/** Hand part and finger part run into each other over at least so much, and at least so much before and beyond the bend. mm */
const SOFTENED = 22;
const LEAST_MORE = 3;
/** How far a sheet is laid nearer to the skin or pushed off it, mm, and how often what it is moved by is evened out. */
const IN_SKIN = 1;
const SETTLED = { nearer: 3, off: 12, rounds: 14, pushes: 3, normals: 12 } as const;

/**
 * One face of a plate on the posed hand: hand part round the palm, finger parts over the fingers, the bend between them; then settled onto the skin
 * as a soft sheet is.
 * @param solid of the posed hand, bent at the MP joints by the plate's angle
 */
export function plateOnHand(figures: PlateFigures, k: number, posed: PosedHand, solid: Solid, step = STEP): SheetSurface {
  const frame = figures.frame.faces[k] as FaceFrame;
  const { thickness, skinClearance } = figures.options;
  const flat = flatMesh(chordPoints(figures.outlines[k]?.outline ?? { closed: true, vertices: [] }), step);
  const lay = onHand(figures, frame, posed);
  const outward = frame.face === 'dorsal' ? 1 : -1;
  const laid = flat.points.map(lay);
  const points = settled(flat, laid, solid, skinClearance + thickness / 2, outward);
  return sheetSurface(flat, points, thickness, outward);
}

/** One face of a plate by itself, bent at its bend line by a share of its angle: hand part in the plane y 0, fingers toward z, bent toward -y as on the hand. */
export function loosePlate(figures: PlateFigures, k: number, share: number): SheetSurface {
  const frame = figures.frame.faces[k] as FaceFrame;
  const flat = flatMesh(chordPoints(figures.outlines[k]?.outline ?? { closed: true, vertices: [] }), STEP);
  const partOf = partsBySlot(frame);
  const points = flat.points.map((p) => folded(partOf(p), p, share));
  return sheetSurface(flat, points, figures.options.thickness, 1);
}

/** Which finger part a place of the flat plate belongs to: those on its side of the slot. */
function partsBySlot({ parts }: FaceFrame): (p: Point) => FingerPart {
  const slots = parts.slice(1).map((ulnar, k) => slotBetween(parts[k] as FingerPart, ulnar));
  return (p) => parts[slots.filter((slot) => p.x > slot.middleAt(p.y)).length] as FingerPart;
}

/** A sheet bent about its own line as about a round bar; a kinked line column by column. */
function folded(part: FingerPart, p: Point, share: number): Vec {
  const slope = part.kinked ? 0 : part.bend.slope;
  const size = Math.hypot(1, slope);
  const level = part.kinked ? part.beginAt(p.x) : part.beginAt(0);
  const x = part.kinked ? 0 : p.x;
  const along = (x + (p.y - level) * slope) / size;
  const square = (p.y - level - x * slope) / size;
  const { allowance, turn } = part.bend;
  const angle = radians(turn) * share;
  const beyond = Math.max(0, square - allowance);
  const held = square - beyond;
  let [forward, aside] = [square, 0];
  if (square > 0 && angle > 0) {
    const radius = allowance / angle;
    forward = radius * Math.sin(held / radius) + beyond * Math.cos(held / radius);
    aside = radius * (1 - Math.cos(held / radius)) + beyond * Math.sin(held / radius);
  }
  return [(part.kinked ? p.x : 0) + (along - forward * slope) / size, -aside, level + (along * slope + forward) / size];
}

/** Where each place of the flat plate comes to lie over the hand, before it is settled. */
function onHand(figures: PlateFigures, frame: FaceFrame, posed: PosedHand): (p: Point) => Vec {
  const { section, palm } = figures.frame;
  const { thickness, skinClearance } = figures.options;
  const offset = skinClearance + thickness / 2;
  const outward = frame.face === 'dorsal' ? 1 : -1;
  const origin = knuckleLine(posed);
  const overHand = (p: Point): Vec => {
    const taper = scaledPalm(section, 1 - (1 - WRIST_SHARE) * Math.min(1, Math.max(0, -p.y / palm.metacarpalLength)));
    const { x, y: height } = wrapped(taper, offset, p.x);
    return add(add(add(origin, [1, 0, 0], x), posed.along, p.y), posed.dorsal, outward * height);
  };
  const places = new Map(frame.parts.map((part) => [part, overFingers(part, posed, outward)]));
  const partOf = partsBySlot(frame);
  return (p) => {
    const part = partOf(p);
    const over = places.get(part) as OverFingers;
    const more = Math.max(LEAST_MORE, (SOFTENED - part.bend.length) / 2);
    const begin = part.beginAt(p.x) - more;
    if (p.y <= begin) return overHand(p);
    const across = acrossOf(part, p);
    const along = alongOf(part, p);
    const end = part.endAt(across) + more;
    if (along >= end) return over(across, along);
    // Through the bend: leaves the hand along it, arrives at the finger along it (a cubic whose handles are a circle's).
    const [from, to] = [overHand({ x: p.x, y: begin }), over(across, end)];
    const half = posed.bend / 2;
    const chord = Math.hypot(...minus(to, from));
    const handle = half < 0.01 ? chord / 3 : ((2 / 3) * Math.tan(half / 2) * chord) / Math.sin(half);
    const t = end - along < 1e-9 ? 1 : Math.min(1, (p.y - begin) / (p.y - begin + end - along));
    return cubic(from, add(from, posed.along, handle), add(to, [0, 0, 1], -handle), to, t);
  };
}

function cubic(a: Vec, b: Vec, c: Vec, d: Vec, t: number): Vec {
  const [ab, bc, cd] = [mix(a, b, t), mix(b, c, t), mix(c, d, t)];
  return mix(mix(ab, bc, t), mix(bc, cd, t), t);
}

/** The middle of the hand on the long finger's MP joint line. */
export function knuckleLine({ fingers, shape }: PosedHand): Vec {
  const long = fingers.find((f) => f.shape.digit === 'long') ?? fingers[Math.min(1, shape.fingers.length - 1)];
  const [, y, z] = long?.joints[0] ?? [0, 0, 0];
  return [0, y, z];
}

function acrossOf(part: FingerPart, p: Point): number {
  const [from, to] = [part.toFlat(0, 0), part.toFlat(1, 0)];
  return (p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y);
}

function alongOf(part: FingerPart, p: Point): number {
  const [from, to] = [part.toFlat(0, 0), part.toFlat(0, 1)];
  return (p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y);
}

type OverFingers = (across: number, along: number) => Vec;

/** A part's own coordinates over the posed fingers: across along the row's path round them, along from each finger's MP joint. */
function overFingers(part: FingerPart, posed: PosedHand, outward: 1 | -1): OverFingers {
  const held = part.held.map((digit) => ({
    digit,
    finger: posed.fingers.find((f) => f.shape.digit === digit.digit) as PosedFinger,
  }));
  const side = (f: PosedFinger) => f.joints[0][0];
  const knots = (value: (digit: PartDigit, finger: PosedFinger) => number) =>
    held.flatMap(({ digit, finger }) => {
      const reach = 0.8 * digit.row.halfWidth;
      return [[digit.row.x - reach, value(digit, finger)] as const, [digit.row.x + reach, value(digit, finger)] as const];
    });
  const shifts = knots((d, f) => side(f) - d.row.x);
  const heights = knots((d, f) => outward * f.joints[0][1] + f.shape.halfDepth - d.row.height);
  const starts = knots((d, f) => f.joints[0][2] - d.joint);
  return (across, along) => {
    const { x, y } = part.row.pointAt(across - part.rowStart);
    return [x + interpolated(shifts, x), outward * (y + interpolated(heights, x)), along + interpolated(starts, x)];
  };
}

/** Moves a sheet to its distance from the skin: nearer by a little only, off it as far as need be; evened out, as a sheet does not follow every hollow. */
function settled(flat: FlatMesh, points: readonly Vec[], solid: Solid, distance: number, outward: number): readonly Vec[] {
  const even = evener(flat);
  const short = (p: Vec) => distance - solid.distance(...p);
  const normals = unitVectors(even(flattened(normalsOf(flat, points, outward)), 3, SETTLED.normals));
  const off = even(
    Float64Array.from(points, (p) => Math.max(-SETTLED.nearer, Math.min(SETTLED.off, short(p)))),
    1,
    SETTLED.rounds,
  );
  let moved = points.map((p, k) => add(p, normals[k] as Vec, off[k] as number));
  for (let round = 0; round < 2; round++) {
    const more = Float64Array.from(moved, (p) => Math.max(0, Math.min(SETTLED.off, short(p))));
    const soft = even(more, 1, SETTLED.pushes);
    moved = moved.map((p, k) => add(p, normals[k] as Vec, Math.max(soft[k] as number, more[k] as number)));
  }
  // What still stands in the skin (in a fold of it, where the sheet's own way out is long) goes out by the shortest way.
  return moved.map((p) => {
    const more = short(p);
    return more > IN_SKIN ? add(p, gradient(solid, p), Math.min(more, SETTLED.off)) : p;
  });
}

/** The way out of a solid: unit. */
function gradient({ distance }: Solid, [x, y, z]: Vec): Vec {
  const reach = 1.5;
  return unit([
    distance(x + reach, y, z) - distance(x - reach, y, z),
    distance(x, y + reach, z) - distance(x, y - reach, z),
    distance(x, y, z + reach) - distance(x, y, z - reach),
  ]);
}

/** Makes each value the mean of its own and its neighbours', some times over; `size` values a point. */
function evener({ points, triangles }: FlatMesh): (values: Float64Array, size: number, rounds: number) => Float64Array {
  const sides = new Int32Array(6 * triangles.length);
  let at = 0;
  const shares = new Float64Array(points.length).fill(1);
  for (const [a, b, c] of triangles) {
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      sides[at++] = p;
      sides[at++] = q;
      shares[p] = (shares[p] as number) + 1;
      shares[q] = (shares[q] as number) + 1;
    }
  }
  return (values, size, rounds) => {
    let from = values;
    for (let round = 0; round < rounds; round++) {
      const to = new Float64Array(from);
      for (let k = 0; k < sides.length; k += 2) {
        const [p, q] = [(sides[k] as number) * size, (sides[k + 1] as number) * size];
        for (let d = 0; d < size; d++) {
          to[p + d] = (to[p + d] as number) + (from[q + d] as number);
          to[q + d] = (to[q + d] as number) + (from[p + d] as number);
        }
      }
      for (let k = 0; k < to.length; k++) to[k] = (to[k] as number) / (shares[Math.floor(k / size)] as number);
      from = to;
    }
    return from;
  };
}

function flattened(vectors: readonly Vec[]): Float64Array {
  const found = new Float64Array(3 * vectors.length);
  for (const [k, v] of vectors.entries()) found.set(v, 3 * k);
  return found;
}

function unitVectors(values: Float64Array): readonly Vec[] {
  return Array.from({ length: values.length / 3 }, (_, k) => unit([values[3 * k], values[3 * k + 1], values[3 * k + 2]] as unknown as Vec));
}

/** Unit normals at the points, away from the skin. */
function normalsOf({ triangles }: FlatMesh, points: readonly Vec[], outward: number): readonly Vec[] {
  const sums: Vec[] = points.map(() => [0, 0, 0]);
  for (const [a, b, c] of triangles) {
    const [p, q, r] = [points[a] as Vec, points[b] as Vec, points[c] as Vec];
    // Seen with the radial side at the left and the fingers up, a triangle runs counter-clockwise: its normal is away from the back.
    const n = cross(minus(r, p), minus(q, p));
    for (const k of [a, b, c]) sums[k] = add(sums[k] as Vec, n, outward);
  }
  return sums.map(unit);
}

/** A sheet's two faces, half its thickness to either side, and its rim. */
export function sheetSurface(flat: FlatMesh, points: readonly Vec[], thickness: number, outward: number): SheetSurface {
  const normals = normalsOf(flat, points, outward);
  const count = points.length;
  const face = (side: number) => points.map((p, k) => add(p, normals[k] as Vec, (side * thickness) / 2));
  const [outer, inner] = [face(1), face(-1)];
  const faces: Mesh = {
    points: [...outer, ...inner],
    normals: [...normals, ...normals.map((n): Vec => [-n[0], -n[1], -n[2]])],
    triangles: [...flat.triangles, ...flat.triangles.map(([a, b, c]) => [a + count, c + count, b + count] as const)],
  };
  const rim: { points: Vec[]; normals: Vec[]; triangles: (readonly [number, number, number])[] } = {
    points: [],
    normals: [],
    triangles: [],
  };
  for (const [a, b] of flat.rim) {
    const at = rim.points.length;
    const corners = [outer[a], outer[b], inner[b], inner[a]] as readonly Vec[];
    const way = minus(points[b] as Vec, points[a] as Vec);
    const out = unit(cross(way, normals[a] as Vec));
    rim.points.push(...corners);
    rim.normals.push(out, out, out, out);
    rim.triangles.push([at, at + 1, at + 2], [at, at + 2, at + 3]);
  }
  return { faces, edges: rim };
}
