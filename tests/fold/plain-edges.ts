import type { Band, BandPoint, ModelledHand, Spot } from './modelled-hand.ts';

export interface PlainProximal {
  readonly level: (u: number) => number;
  readonly corners: readonly PlainCorner[];
}

/**
 * The proximal edge that a hand asks for, computed plainly: a gap beyond the level of each web where the band passes it and beyond the root of each
 * digit at its midline, straight between. u along the band from the seam, level along the digits with 0 at the foremost web; mm.
 */
export function plainProximal(
  hand: ModelledHand,
  band: Band,
  outside: readonly [number | null, number | null],
  gap: number,
): PlainProximal {
  const { digits, webs } = hand;
  const rootOf = (k: number) => {
    const root = digits[k]?.root ?? Number.NaN;
    const beyond = k === 0 ? outside[0] : k === digits.length - 1 ? outside[1] : null;
    // On its outer half a border digit is not to be passed nearer than the web there.
    return Math.max(root, beyond ?? root);
  };
  const wanted = [...webs.map(({ x, level }) => ({ x, level })), ...digits.map(({ x }, k) => ({ x, level: rootOf(k) }))];
  const knots = wanted
    .flatMap(({ x, level }) => [...passes(band.outer, x), ...passes(band.inner, x)].map((u) => ({ u, level: level + gap })))
    .sort((a, b) => a.u - b.u);
  const level = (u: number) => {
    const at = u - band.length * Math.floor(u / band.length);
    const k = knots.findIndex((knot) => knot.u > at);
    const [next, before] = [knots[k] ?? knots[0], knots[k < 0 ? knots.length - 1 : k - 1] ?? knots.at(-1)];
    if (!next || !before) return Number.NaN;
    const run = next.u - before.u + (next.u > before.u ? 0 : band.length);
    const ahead = at - before.u + (at >= before.u ? 0 : band.length);
    return before.level + ((next.level - before.level) * ahead) / run;
  };
  return { level, corners: knots.map((_, k) => cornerOf(knots, k, band.length)) };
}

/** A corner of the edge: where, how far an arc of the smallest radius reaches to each side of it, and how much it takes off there. */
export interface PlainCorner {
  readonly u: number;
  readonly reach: number;
  readonly off: number;
}

/** Radius that no corner of a strip may be under, mm. */
const SMALLEST_RADIUS = 3.05;

function cornerOf(knots: readonly { readonly u: number; readonly level: number }[], k: number, length: number): PlainCorner {
  const knot = (i: number) => knots[(i + knots.length) % knots.length] ?? { u: 0, level: 0 };
  const heading = (from: number, to: number) => {
    const run = knot(to).u - knot(from).u;
    return Math.atan2(knot(to).level - knot(from).level, run < 0 ? run + length : run);
  };
  const [before, after] = [heading(k - 1, k), heading(k, k + 1)];
  const half = Math.abs(after - before) / 2;
  return {
    u: knot(k).u,
    reach: SMALLEST_RADIUS * Math.tan(half),
    off: (SMALLEST_RADIUS * (1 / Math.cos(half) - 1)) / Math.cos((before + after) / 2),
  };
}

/** Where a course passes an x; u of each. */
function passes(course: readonly BandPoint[], x: number): readonly number[] {
  const found: number[] = [];
  for (const [k, p] of course.entries()) {
    const q = course[k + 1];
    if (!q || Math.abs(q.x - p.x) > 1) continue;
    const [from, to] = [Math.min(p.x, q.x) - 1e-9, Math.max(p.x, q.x) + 1e-9];
    if (x < from || x > to) continue;
    const u = p.x === q.x ? p.u : p.u + ((q.u - p.u) * (x - p.x)) / (q.x - p.x);
    if (!found.some((other) => Math.abs(other - u) < 0.05)) found.push(u);
  }
  return found;
}

/** Least distance from a spot to a line of spots. */
export function distanceTo(line: readonly Spot[], { x, y }: Spot): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [k, p] of line.entries()) {
    const q = line[k + 1];
    if (!q) break;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const size = dx * dx + dy * dy;
    const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - p.x) * dx + (y - p.y) * dy) / size));
    least = Math.min(least, Math.hypot(p.x + t * dx - x, p.y + t * dy - y));
  }
  return least;
}
