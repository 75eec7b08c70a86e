import type { Band, BandPoint, Spot } from './modelled-band.ts';
import type { ModelledHand } from './modelled-hand.ts';

export interface PlainProximal {
  readonly level: (u: number) => number;
  /** The same with corners moved away from the web that are too steep to be made round there. */
  readonly moved: (u: number) => number;
}

/**
 * The proximal edge that a hand asks for, computed plainly: a gap beyond the level of each web where the band passes it and beyond that of each
 * digit at its midline, straight between. u along the band from the seam, level along the digits with 0 at the foremost web; mm.
 */
export function plainProximal(hand: ModelledHand, band: Band, gap: number, stretch: number): PlainProximal {
  const { digits, webs } = hand;
  const wanted = [...webs.map(({ x, level }) => ({ x, level })), ...digits.map(({ x, midline }) => ({ x, level: midline }))];
  const knots = wanted
    .flatMap(({ x, level }) => [...passes(band.outer, x), ...passes(band.inner, x)].map((u) => ({ u, level: level + gap })))
    .sort((a, b) => a.u - b.u);
  return { level: straightBetween(knots, band.length), moved: straightBetween(movedOff(knots, band.length, stretch), band.length) };
}

interface Knot {
  readonly u: number;
  readonly level: number;
}

/** The height over u of the closed line that joins the knots. */
function straightBetween(knots: readonly Knot[], length: number): (u: number) => number {
  return (u) => {
    const at = u - length * Math.floor(u / length);
    const k = knots.findIndex((knot) => knot.u > at);
    const [next, before] = [knots[k] ?? knots[0], knots[k < 0 ? knots.length - 1 : k - 1] ?? knots.at(-1)];
    if (!next || !before) return Number.NaN;
    const run = next.u - before.u + (next.u > before.u ? 0 : length);
    const ahead = at - before.u + (at >= before.u ? 0 : length);
    return before.level + ((next.level - before.level) * ahead) / run;
  };
}

/** Radius that no corner of a strip may be under, and what an arc may take off a corner; mm. */
const SMALLEST_RADIUS = 3.05;
const MOST_OFF = 0.6;

/** The knots, those so steep that the smallest arc takes more off than it may moved away from the web until it does not: each is slow, since a corner that is moved gets steeper. */
function movedOff(knots: readonly Knot[], length: number, stretch: number): readonly Knot[] {
  const levels = knots.map((knot) => knot.level);
  const heading = (from: number, to: number) => {
    const [a, b] = [(from + knots.length) % knots.length, (to + knots.length) % knots.length];
    const run = (knots[b]?.u ?? 0) - (knots[a]?.u ?? 0);
    return Math.atan2((levels[b] ?? 0) - (levels[a] ?? 0), (run < 0 ? run + length : run) / (1 + stretch));
  };
  for (let round = 0; round < 200; round++)
    for (const [k, { level }] of knots.entries()) {
      const [before, after] = [heading(k - 1, k), heading(k, k + 1)];
      if (after >= before) continue;
      const off = (SMALLEST_RADIUS * (1 / Math.cos((before - after) / 2) - 1)) / Math.cos((before + after) / 2);
      levels[k] = Math.max(levels[k] ?? level, level + off - MOST_OFF);
    }
  return knots.map((knot, k) => ({ ...knot, level: levels[k] ?? knot.level }));
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
