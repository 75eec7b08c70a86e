import type { Point } from '../geometry/path.ts';
import { scaledPalm, wrapped } from '../pattern/plate/palm-section.ts';
import { type FaceFrame, heldColumns, WRIST_SHARE } from '../pattern/plate/plate-frame.ts';
import type { PlateFigures } from '../pattern/plate/plate-report.ts';
import type { Solid } from './hand-solid.ts';
import { knuckleLine, type SheetSurface } from './plate-surface.ts';
import type { PosedFinger, PosedHand } from './posed-hand.ts';
import { add, cross, dot, minus, unit, type Vec } from './vec.ts';

/** Distance between places along a strap; how far it lies off skin and plate. mm */
const STEP = 2;
const OFF_SKIN = 2;
const OFF_PLATE = 1.1;
const ROWS = 6;
const MOST_LIFT = 9;

/** A plate's straps as they are closed, over the plates as they lie on the hand: A round the hand through the thumb web, B round the proximal phalanges. */
export function strapsOnHand(
  figures: PlateFigures,
  posed: PosedHand,
  solid: Solid,
  plates: readonly SheetSurface[],
): readonly SheetSurface[] {
  const over = (sheets: readonly SheetSurface[]): Solid => ({ ...solid, distance: withSheets(solid, sheets) });
  const round = handStrap(figures, posed, over(plates));
  // Where they cross, the one round the fingers lies over the one round the hand.
  return [round, fingerStrap(figures, posed, over([...plates, round]))];
}

/** Distance to what a strap lies on: the hand, and sheets as the points of their faces. */
function withSheets({ distance }: Solid, sheets: readonly SheetSurface[]): Solid['distance'] {
  const cell = 4;
  const key = (x: number, y: number, z: number) => `${Math.floor(x / cell)},${Math.floor(y / cell)},${Math.floor(z / cell)}`;
  const cells = new Map<string, Vec[]>();
  for (const p of sheets.flatMap(({ faces }) => faces.points)) {
    const at = key(...p);
    const found = cells.get(at);
    if (found) found.push(p);
    else cells.set(at, [p]);
  }
  return (x, y, z) => {
    let least = distance(x, y, z);
    for (const dx of [-cell, 0, cell]) {
      for (const dy of [-cell, 0, cell]) {
        for (const dz of [-cell, 0, cell]) {
          for (const p of cells.get(key(x + dx, y + dy, z + dz)) ?? []) least = Math.min(least, Math.hypot(p[0] - x, p[1] - y, p[2] - z));
        }
      }
    }
    return least;
  };
}

/** Round a single face a strap runs from hook to hook over the other side; round two faces it runs once round. */
function handStrap(figures: PlateFigures, posed: PosedHand, solid: Solid): SheetSurface {
  const { section, palm, faces } = figures.frame;
  const face = faces[0] as FaceFrame;
  const { bar } = figures.outlines[0] as PlateFigures['outlines'][number];
  const outward = face.face === 'dorsal' ? 1 : -1;
  const plate = figures.options.skinClearance + figures.options.thickness + OFF_PLATE;
  const width = figures.straps.find((s) => s.id === 'A')?.width ?? 0;
  const level = (bar.low + bar.high) / 2;
  const taper = scaledPalm(section, 1 - (1 - WRIST_SHARE) * (-level / palm.metacarpalLength));
  const quarter = taper.circumference / 4 + (Math.PI / 2) * plate;
  const overlap = figures.options.strapOverlap;
  // Along the section from the middle of the plate's side round the ulnar border to its radial one.
  const from = faces.length > 1 ? 0 : Math.max(0, face.midLateral + face.wing - overlap);
  const to = 4 * quarter - (faces.length > 1 ? 0 : Math.max(0, bar.out - overlap));
  const origin = knuckleLine(posed);
  const at = (s: number): readonly [number, number] => {
    const far = s > quarter && s < 3 * quarter;
    const { x, y } = wrapped(taper, plate, far ? 2 * quarter - s : s > 2 * quarter ? s - 4 * quarter : s);
    return [x, far ? -y : y];
  };
  return band(
    from,
    to,
    width,
    (s, across) => {
      const [x, height] = at(s);
      return add(add(add(origin, [1, 0, 0], x), posed.along, level + across), posed.dorsal, outward * height);
    },
    solid,
  );
}

function fingerStrap(figures: PlateFigures, posed: PosedHand, solid: Solid): SheetSurface {
  const { faces } = figures.frame;
  const face = faces[0] as FaceFrame;
  const outline = figures.outlines[0] as PlateFigures['outlines'][number];
  const outward = face.face === 'dorsal' ? 1 : -1;
  const plate = figures.options.skinClearance + figures.options.thickness + OFF_PLATE;
  const width = figures.straps.find((s) => s.id === 'B')?.width ?? 0;
  const held = heldColumns(face).map(({ digit, held: h }) => {
    const finger = posed.fingers.find((f) => f.shape.digit === digit) as PosedFinger;
    const end = outline.distal.find((d) => d.digit === digit)?.along ?? h.edge;
    return { finger, middle: (h.bendEnd + end) / 2 - h.joint + finger.joints[0][2] };
  });
  const [first, last] = [held[0], held.at(-1)];
  const x = (k: typeof first) => k?.finger.joints[0][0] ?? 0;
  const slope = x(last) === x(first) ? 0 : ((last?.middle ?? 0) - (first?.middle ?? 0)) / (x(last) - x(first));
  const round = hull(
    held.flatMap(({ finger }) => {
      const [jx, jy] = finger.joints[0];
      const { width: wide, halfDepth } = finger.shape;
      return Array.from({ length: 40 }, (_, k) => {
        const t = (k * Math.PI) / 20;
        return { x: jx + (wide / 2 + plate) * Math.cos(t), y: outward * jy + (halfDepth + plate) * Math.sin(t) };
      });
    }),
  );
  // Counter-clockwise from the middle of the plate's side; from there radial first.
  const middle = (x(first) + x(last)) / 2;
  const start = round.findIndex((p, k) => p.x >= middle && (round[(k + 1) % round.length] as Point).x < middle);
  const turned = [...round.slice(start + 1), ...round.slice(0, start + 1)];
  const line = resampled([...turned, turned[0] as Point]);
  const length = (line.length - 1) * STEP;
  const covered = Math.max(0, (figures.frame.row.length + outline.walls.radial + outline.walls.ulnar) / 2 - figures.options.strapOverlap);
  const [from, to] = faces.length > 1 ? [0, length] : [covered, length - covered];
  return band(
    from,
    to,
    width,
    (s, across) => {
      const k = Math.min(line.length - 2, Math.max(0, Math.floor(s / STEP)));
      const [a, b, t] = [line[k] as Point, line[k + 1] as Point, s / STEP - k];
      const p = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
      return [p.x, outward * p.y, (first?.middle ?? 0) + slope * (p.x - x(first)) + across];
    },
    solid,
  );
}

/** A band along a curve: places by the length along it and across its width, lifted outward until nothing is above it. */
function band(from: number, to: number, width: number, place: (s: number, across: number) => Vec, under: Solid): SheetSurface {
  const count = Math.max(2, Math.round((to - from) / STEP));
  const lines = Array.from({ length: count + 1 }, (_, k) => {
    const s = from + ((to - from) * k) / count;
    const at = (r: number) => place(s, (r / ROWS - 0.5) * width);
    // Away from what it goes round: square to the way and to the width.
    const way = minus(place(s + 0.5, 0), place(s - 0.5, 0));
    const out = unit(cross(way, minus(at(ROWS), at(0))));
    return { points: Array.from({ length: ROWS + 1 }, (_, r) => at(r)), out };
  });
  // Which side is out: away from the middle of the loop.
  const all = lines.flatMap((l) => l.points);
  const centre = all.reduce<Vec>((sum, p) => add(sum, p, 1 / all.length), [0, 0, 0]);
  const facing = lines.reduce((sum, { points, out }) => sum + dot(out, minus(points[0] as Vec, centre)), 0) < 0 ? -1 : 1;
  const lifts = lines.map(({ points, out }) => Math.max(...points.map((p) => liftOf(p, out, facing, under))));
  const normals = lines.flatMap(({ points, out }) => points.map((): Vec => [facing * out[0], facing * out[1], facing * out[2]]));
  const lifted = lines.flatMap(({ points, out }, k) => {
    const near = lifts.slice(Math.max(0, k - 2), k + 3);
    const lift = Math.max(lifts[k] as number, near.reduce((sum, l) => sum + l, 0) / near.length);
    return points.map((p) => add(p, out, facing * lift));
  });
  const triangles: (readonly [number, number, number])[] = [];
  for (let k = 0; k < count; k++) {
    for (let r = 0; r < ROWS; r++) {
      const a = k * (ROWS + 1) + r;
      const b = a + ROWS + 1;
      triangles.push([a, b, b + 1], [a, b + 1, a + 1]);
    }
  }
  return { faces: { points: lifted, normals, triangles }, edges: { points: [], normals: [], triangles: [] } };
}

/** How far out a place must go, in small steps, to be clear. mm */
function liftOf(p: Vec, out: Vec, facing: number, under: Solid): number {
  let clear = 0;
  for (let lift = 0; lift <= MOST_LIFT; lift += 0.7) {
    if (under.distance(...add(p, out, facing * lift)) < OFF_SKIN) clear = lift + 0.7;
  }
  return clear;
}

/** The convex hull of points, counter-clockwise (monotone chain, Andrew, Inf Process Lett 1979). */
function hull(points: readonly Point[]): readonly Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const chain = (from: readonly Point[]) => {
    const kept: Point[] = [];
    for (const p of from) {
      while (kept.length > 1) {
        const [a, b] = [kept.at(-2) as Point, kept.at(-1) as Point];
        if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

/** Points a step apart along a line. */
function resampled(line: readonly Point[]): readonly Point[] {
  const found: Point[] = [];
  let left = 0;
  for (const [k, a] of line.slice(0, -1).entries()) {
    const b = line[k + 1] as Point;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    while (left <= length) {
      found.push({ x: a.x + ((b.x - a.x) * left) / length, y: a.y + ((b.y - a.y) * left) / length });
      left += STEP;
    }
    left -= length;
  }
  return found;
}
