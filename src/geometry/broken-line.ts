import type { Point } from './path.ts';

/** Points of a piecewise straight line in the order of x, at least two; it is constant before the first and after the last. */
export type BrokenLine = readonly Point[];

/** Its height at x; where it jumps, the lower of the two. */
export function heightAt(line: BrokenLine, x: number): number {
  let after = 0;
  while (after < line.length && (line[after] as Point).x < x) after++;
  const to = line[after];
  if (!to) return line.at(-1)?.y ?? Number.NaN;
  if (to.x === x) {
    let lowest = to.y;
    for (let k = after + 1; line[k]?.x === x; k++) lowest = Math.min(lowest, (line[k] as Point).y);
    return lowest;
  }
  const from = line[after - 1];
  return from ? from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x) : to.y;
}

/** Least and greatest height between two x, ends included. */
export function heightsBetween(line: BrokenLine, from: number, to: number): { readonly least: number; readonly greatest: number } {
  const inside = line.filter((p) => p.x > from && p.x < to).map((p) => p.y);
  const all = [heightAt(line, from), heightAt(line, to), ...inside];
  return { least: Math.min(...all), greatest: Math.max(...all) };
}

/** The lowest of several lines at every x from `from` to `to`, without points that bend nothing. */
export function lowestOf(lines: readonly BrokenLine[], from: number, to: number): BrokenLine {
  const marks = [from, to, ...lines.flatMap((line) => line.map((p) => p.x))];
  const cuts = [...new Set(marks.filter((x) => x >= from && x <= to))].sort((a, b) => a - b);
  const withCrossings = cuts.flatMap((x, k) => {
    const next = cuts[k + 1];
    return next === undefined ? [x] : [x, ...crossings(lines, x, next)];
  });
  const points = withCrossings.map((x) => ({ x, y: Math.min(...lines.map((line) => heightAt(line, x))) }));
  return withoutFlatPoints(points);
}

/** Where two lines cross between x and next, between which both are straight. */
function crossings(lines: readonly BrokenLine[], x: number, next: number): readonly number[] {
  const ends = lines.map((line) => [heightAt(line, x), heightAt(line, next)] as const);
  const found: number[] = [];
  for (const [i, [a0, a1]] of ends.entries()) {
    for (const [b0, b1] of ends.slice(i + 1)) {
      const before = a0 - b0;
      const after = a1 - b1;
      if (before * after < 0) found.push(x + ((next - x) * before) / (before - after));
    }
  }
  return found.sort((p, q) => p - q);
}

/** Heights that differ by less than this from the straight line are rounding. mm */
const FLAT = 1e-9;

function withoutFlatPoints(points: BrokenLine): BrokenLine {
  const kept: Point[] = [];
  for (const [k, p] of points.entries()) {
    const before = kept.at(-1);
    const next = points[k + 1];
    if (before && next) {
      const straight = before.y + ((next.y - before.y) * (p.x - before.x)) / (next.x - before.x);
      if (Math.abs(straight - p.y) < FLAT) continue;
    }
    kept.push(p);
  }
  return kept;
}

/** Least distance between two broken lines over the same stretch that do not cross; mm. */
export function leastDistance(one: BrokenLine, other: BrokenLine): number {
  const toLine = (p: Point, line: BrokenLine) => Math.min(...line.slice(1).map((to, k) => distanceToSegment(p, line[k] as Point, to)));
  return Math.min(...one.map((p) => toLine(p, other)), ...other.map((p) => toLine(p, one)));
}

/** Distance from a point to a straight piece. */
export function distanceToSegment(p: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const t = Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / (dx * dx + dy * dy || 1)));
  // Not Math.hypot, see `distanceBetween`.
  return Math.sqrt((p.x - from.x - t * dx) ** 2 + (p.y - from.y - t * dy) ** 2);
}

/** The part of a line between two x, with its heights there. */
export function clipped(line: BrokenLine, from: number, to: number): BrokenLine {
  return [{ x: from, y: heightAt(line, from) }, ...line.filter((p) => p.x > from && p.x < to), { x: to, y: heightAt(line, to) }];
}
