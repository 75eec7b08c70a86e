import type { Point } from '../geometry/path.ts';

/** How the border between two squares is drawn; `none` only parts two tones. */
export type BorderKind = 'none' | 'fine' | 'strong';

export interface Traced {
  /** Closed outlines of each tone's areas, to be filled by the even-odd rule. */
  readonly areas: ReadonlyMap<number, readonly (readonly Point[])[]>;
  readonly lines: readonly { readonly kind: 'fine' | 'strong'; readonly points: readonly Point[]; readonly closed: boolean }[];
}

/** A run of square sides between two corners where borders meet, with what lies on its left and right. */
interface Chain {
  readonly corners: readonly number[];
  readonly left: number;
  readonly right: number;
  readonly kind: BorderKind;
  points: readonly Point[];
}

const SMOOTHINGS = 8;
/** How far a thinned line may lie from the smoothed one, in squares. */
const THINNED = 0.45;
/** A line that begins and ends in the middle of an area and is shorter than this is an accident of a steep surface, in squares. */
const LEAST_LINE = 14;

/**
 * Turns a picture of squares into areas and lines: every border is followed once and smoothed between the corners where borders meet, so that
 * neighbouring areas keep one common border. Points in squares from the lower left corner.
 * @param tone of each square, 0 for nothing
 * @param border how the border between two neighbouring squares is drawn; null where there is none
 */
export function traceAreas(
  width: number,
  height: number,
  tone: Uint8Array,
  border: (one: number, other: number) => BorderKind | null,
): Traced {
  const chains = borderChains(width, height, tone, border);
  for (const chain of chains)
    chain.points = thinned(smoothed(chain.corners.map((c) => ({ x: c % (width + 1), y: Math.floor(c / (width + 1)) }))));
  const tones = [...new Set(chains.flatMap((c) => [c.left, c.right]))].filter((t) => t > 0).sort((a, b) => a - b);
  const areas = new Map(tones.map((t) => [t, loopsOf(chains, t)]));
  const lines = (['fine', 'strong'] as const).flatMap((kind) =>
    joinedLines(chains.filter((c) => c.kind === kind)).map((line) => ({ kind, ...line })),
  );
  return { areas, lines };
}

/** Directions from a corner: right, up, left, down. */
const DIRECTIONS = [0, 1, 2, 3] as const;

function borderChains(width: number, height: number, tone: Uint8Array, border: (one: number, other: number) => BorderKind | null): Chain[] {
  const columns = width + 1;
  const rows = height + 1;
  const kinds: readonly BorderKind[] = ['none', 'fine', 'strong'];
  // Sides that lead right from a corner, and up from it: 0 no border, else 1 + place in `kinds`.
  const right = new Uint8Array(columns * rows);
  const up = new Uint8Array(columns * rows);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const here = y * width + x;
      if (x + 1 < width) {
        const kind = border(here, here + 1);
        if (kind) up[y * columns + x + 1] = 1 + kinds.indexOf(kind);
      }
      if (y + 1 < height) {
        const kind = border(here, here + width);
        if (kind) right[(y + 1) * columns + x] = 1 + kinds.indexOf(kind);
      }
    }
  }
  const stride = [1, columns, -1, -columns] as const;
  const side = (corner: number, d: number): number => {
    const x = corner % columns;
    if (d === 0) return x < width ? (right[corner] as number) : 0;
    if (d === 1) return corner < columns * height ? (up[corner] as number) : 0;
    if (d === 2) return x > 0 ? (right[corner - 1] as number) : 0;
    return corner >= columns ? (up[corner - columns] as number) : 0;
  };
  const square = (x: number, y: number) => (x >= 0 && x < width && y >= 0 && y < height ? (tone[y * width + x] as number) : 0);
  /** Tones left and right of a side when it is travelled from the corner in the direction; the left one times 256. */
  const sides = (corner: number, d: number): number => {
    const x = corner % columns;
    const y = (corner - x) / columns;
    if (d === 0) return 256 * square(x, y) + square(x, y - 1);
    if (d === 1) return 256 * square(x - 1, y) + square(x, y);
    if (d === 2) return 256 * square(x - 1, y - 1) + square(x - 1, y);
    return 256 * square(x, y - 1) + square(x - 1, y - 1);
  };
  const same = (c1: number, d1: number, c2: number, d2: number): boolean =>
    side(c1, d1) === side(c2, d2) && sides(c1, d1) === sides(c2, d2);
  /** The one way on from a corner that was reached in direction d; -1 where borders meet or change. */
  const onward = (corner: number, d: number): number => {
    const back = (d + 2) % 4;
    let found = -1;
    for (const next of DIRECTIONS) {
      if (next === back || side(corner, next) === 0) continue;
      if (found >= 0) return -1;
      found = next;
    }
    if (found < 0) return -1;
    const before = corner - (stride[d] as number);
    return same(before, d, corner, found) ? found : -1;
  };
  const seen = new Uint8Array(columns * rows);
  const take = (corner: number, d: number) => {
    const [at, bit] = d === 0 ? [corner, 1] : d === 1 ? [corner, 2] : d === 2 ? [corner - 1, 1] : [corner - columns, 2];
    const was = (seen[at] as number) & bit;
    seen[at] = (seen[at] as number) | bit;
    return was !== 0;
  };
  const chains: Chain[] = [];
  const follow = (from: number, first: number) => {
    const corners = [from];
    let [corner, d] = [from, first];
    const tones = sides(from, first);
    const kind = kinds[side(from, first) - 1] as BorderKind;
    while (!take(corner, d)) {
      corner += stride[d] as number;
      corners.push(corner);
      const next = onward(corner, d);
      if (next < 0 || corner === from) break;
      d = next;
    }
    chains.push({ corners, left: tones >> 8, right: tones & 255, kind, points: [] });
  };
  const isEnd = (corner: number): boolean => {
    let count = 0;
    let one = 0;
    let other = 0;
    for (const d of DIRECTIONS) {
      if (side(corner, d) === 0) continue;
      if (count++ === 0) one = d;
      else other = d;
    }
    return count === 2 ? !same(corner + (stride[one] as number), (one + 2) % 4, corner, other) : count > 0;
  };
  // First every border that begins or ends where borders meet, then the closed ones.
  const ends: number[] = [];
  const others: number[] = [];
  for (let corner = 0; corner < columns * rows; corner++) {
    const none =
      right[corner] === 0 &&
      up[corner] === 0 &&
      (corner === 0 || right[corner - 1] === 0) &&
      (corner < columns || up[corner - columns] === 0);
    if (!none) (isEnd(corner) ? ends : others).push(corner);
  }
  for (const corner of [...ends, ...others]) {
    for (const d of DIRECTIONS) {
      if (side(corner, d) === 0) continue;
      const at = d < 2 ? corner : d === 2 ? corner - 1 : corner - columns;
      if (((seen[at] as number) & (d % 2 === 0 ? 1 : 2)) === 0) follow(corner, d);
    }
  }
  return chains;
}

function smoothed(points: readonly Point[]): readonly Point[] {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last || points.length < 4) return points;
  const closed = first.x === last.x && first.y === last.y;
  const count = closed ? points.length - 1 : points.length;
  const columns = [new Float64Array(count), new Float64Array(count)] as const;
  for (let k = 0; k < count; k++) {
    columns[0][k] = (points[k] as Point).x;
    columns[1][k] = (points[k] as Point).y;
  }
  const [xs, ys] = columns.map((column) => even(column, closed)) as [Float64Array, Float64Array];
  return points.map((_, k) => ({ x: xs[k % count] as number, y: ys[k % count] as number }));
}

/** Each number is half itself and a quarter of either neighbour, over and over; the ends of what is not closed stay. */
function even(numbers: Float64Array<ArrayBuffer>, closed: boolean): Float64Array {
  const count = numbers.length;
  let now = numbers;
  let next = numbers.slice();
  for (let k = 0; k < SMOOTHINGS; k++) {
    for (let i = closed ? 0 : 1; i < (closed ? count : count - 1); i++)
      next[i] = ((now[i === 0 ? count - 1 : i - 1] as number) + 2 * (now[i] as number) + (now[i + 1 === count ? 0 : i + 1] as number)) / 4;
    [now, next] = [next, now];
  }
  return now;
}

/** Leaves out points that lie within `THINNED` of the line without them. Douglas & Peucker 1973. */
function thinned(points: readonly Point[]): readonly Point[] {
  if (points.length < 3) return points;
  const kept = new Uint8Array(points.length);
  kept[0] = 1;
  kept[points.length - 1] = 1;
  const first = points[0] as Point;
  const last = points.at(-1) as Point;
  const stack: (readonly [number, number])[] = [];
  if (first.x === last.x && first.y === last.y) {
    // A closed line is parted at its farthest point.
    let far = 1;
    for (let k = 1; k < points.length - 1; k++) if (away(points[k] as Point, first) > away(points[far] as Point, first)) far = k;
    kept[far] = 1;
    stack.push([0, far], [far, points.length - 1]);
  } else stack.push([0, points.length - 1]);
  for (let span = stack.pop(); span; span = stack.pop()) {
    const [i, j] = span;
    const [a, b] = [points[i] as Point, points[j] as Point];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    let [worst, at] = [THINNED, -1];
    for (let k = i + 1; k < j; k++) {
      const p = points[k] as Point;
      const off = long === 0 ? away(p, a) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / long;
      if (off > worst) [worst, at] = [off, k];
    }
    if (at < 0) continue;
    kept[at] = 1;
    stack.push([i, at], [at, j]);
  }
  return points.filter((_, k) => kept[k] === 1);
}

function away(p: Point, q: Point): number {
  return Math.hypot(p.x - q.x, p.y - q.y);
}

function lengthOf(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, p, k) => sum + away(p, points[k] as Point), 0);
}

/** The borders of one tone, joined end to end with the tone on their left. */
function loopsOf(chains: readonly Chain[], tone: number): readonly (readonly Point[])[] {
  const from = new Map<number, { points: readonly Point[]; to: number; used: boolean }[]>();
  const all: { points: readonly Point[]; to: number; used: boolean; start: number }[] = [];
  for (const { left, right, points, corners } of chains) {
    if (left === right || (left !== tone && right !== tone)) continue;
    const [first, last] = [corners[0] as number, corners.at(-1) as number];
    const forward = left === tone;
    const piece = {
      points: forward ? points : points.toReversed(),
      to: forward ? last : first,
      used: false,
      start: forward ? first : last,
    };
    all.push(piece);
    const list = from.get(piece.start);
    if (list) list.push(piece);
    else from.set(piece.start, [piece]);
  }
  const loops: (readonly Point[])[] = [];
  for (const piece of all) {
    if (piece.used) continue;
    const loop: Point[] = [];
    let next: { points: readonly Point[]; to: number; used: boolean } | undefined = piece;
    while (next && !next.used) {
      next.used = true;
      loop.push(...next.points.slice(0, -1));
      next = from.get(next.to)?.find((p) => !p.used);
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
}

/** Borders of one kind joined into lines as long as they run on. */
function joinedLines(chains: readonly Chain[]): readonly { readonly points: readonly Point[]; readonly closed: boolean }[] {
  const ends = new Map<number, number[]>();
  for (const [k, { corners }] of chains.entries()) {
    for (const end of [corners[0] as number, corners.at(-1) as number]) ends.set(end, [...(ends.get(end) ?? []), k]);
  }
  const used = new Uint8Array(chains.length);
  const lines: { points: readonly Point[]; closed: boolean }[] = [];
  for (const [k, chain] of chains.entries()) {
    if (used[k]) continue;
    used[k] = 1;
    let points = [...chain.points];
    const start = chain.corners[0] as number;
    let end = chain.corners.at(-1) as number;
    const extend = (corner: number) => (ends.get(corner) ?? []).find((c) => !used[c]);
    for (let next = extend(end); next !== undefined && end !== start; next = extend(end)) {
      used[next] = 1;
      const { corners, points: more } = chains[next] as Chain;
      const forward = corners[0] === end;
      points.push(...(forward ? more : more.toReversed()).slice(1));
      end = (forward ? corners.at(-1) : corners[0]) as number;
    }
    const isLoose = (corner: number) => ends.get(corner)?.length === 1;
    if (isLoose(start) && isLoose(end) && start !== end && lengthOf(points) < LEAST_LINE) continue;
    const closed = start === end && points.length > 3;
    if (closed) points = points.slice(0, -1);
    lines.push({ points, closed });
  }
  return lines;
}
