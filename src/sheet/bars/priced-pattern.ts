/** The most valuable way to cut one bar. */
export interface PricedPattern {
  readonly chosen: readonly number[];
  readonly value: number;
  /** False when the search was cut off: a better one may exist. */
  readonly proven: boolean;
  /** Work done, about one addition each. */
  readonly work: number;
}

/** Steps of the search before the table takes over. */
const QUICK_STEPS = 4000;
/** Largest table, in cells. */
const LARGEST_TABLE = 4_000_000;

/**
 * Bounded knapsack: the pattern worth more than `above`, or an empty one of that value when none is. `values` at least 0; `atMost` how
 * many of each kind. First a short depth-first search (Horowitz & Sahni, J ACM 1974;21:277-292); when that is cut off without a pattern,
 * the table of all capacities (Martello & Toth, Knapsack Problems, 1990, ch. 2), unless it would be too large.
 */
export function pricedPattern(
  lengths: readonly number[],
  values: Float64Array,
  atMost: readonly number[],
  capacity: number,
  above: number,
): PricedPattern {
  const order = lengths
    .map((_, i) => i)
    .filter((i) => (values[i] as number) > 1e-9 && (atMost[i] as number) > 0 && (lengths[i] as number) <= capacity)
    .sort((a, b) => (values[b] as number) / (lengths[b] as number) - (values[a] as number) / (lengths[a] as number) || a - b);
  const length = order.map((i) => lengths[i] as number);
  const value = order.map((i) => values[i] as number);
  const most = order.map((i) => atMost[i] as number);
  const searched = search(length, value, most, capacity, above);
  const cells = capacity * order.length;
  const found =
    searched.proven || searched.best !== null || cells > LARGEST_TABLE
      ? searched
      : { ...table(length, value, most, capacity, above), work: searched.work + 2 * cells };
  const chosen = new Array<number>(lengths.length).fill(0);
  if (found.best) for (const [k, i] of order.entries()) chosen[i] = found.best[k] as number;
  return { chosen, value: found.value, proven: found.proven, work: found.work };
}

interface Found {
  readonly best: Int32Array | null;
  readonly value: number;
  readonly proven: boolean;
  readonly work: number;
}

function search(length: readonly number[], value: readonly number[], most: readonly number[], capacity: number, above: number): Found {
  const n = length.length;
  // Shortest length from each place on: with less room nothing fits any more.
  const shortest = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  for (let i = n - 1; i >= 0; i--) shortest[i] = Math.min(shortest[i + 1] as number, length[i] as number);
  const current = new Int32Array(n);
  let best: Int32Array | null = null;
  let bestValue = above;
  let steps = 0;
  const visit = (at: number, room: number, worth: number): void => {
    if (worth > bestValue + 1e-12) {
      bestValue = worth;
      best = current.slice();
    }
    for (let i = at; i < n; i++) {
      if (room < (shortest[i] as number)) return;
      // The densest kind left bounds all that follows.
      if (worth + (room * (value[i] as number)) / (length[i] as number) <= bestValue + 1e-9) return;
      if (++steps > QUICK_STEPS) return;
      const fits = Math.min(most[i] as number, Math.floor(room / (length[i] as number)));
      for (let count = fits; count > 0; count--) {
        current[i] = count;
        visit(i + 1, room - count * (length[i] as number), worth + count * (value[i] as number));
        if (steps > QUICK_STEPS) break;
      }
      current[i] = 0;
    }
  };
  visit(0, capacity, 0);
  return { best, value: bestValue, proven: steps <= QUICK_STEPS, work: 4 * steps + n };
}

/** Kind by kind, the best value of every capacity; how many of the kind were taken is kept to trace the best one back. */
function table(
  length: readonly number[],
  value: readonly number[],
  most: readonly number[],
  capacity: number,
  above: number,
): Omit<Found, 'work'> {
  const n = length.length;
  const worth = new Float64Array(capacity + 1);
  const taken = new Uint8Array(n * (capacity + 1));
  for (let i = 0; i < n; i++) {
    const l = length[i] as number;
    const v = value[i] as number;
    const times = Math.min(most[i] as number, Math.floor(capacity / l), 255);
    const row = i * (capacity + 1);
    for (let c = capacity; c >= l; c--) {
      let best = worth[c] as number;
      for (let k = 1; k <= times && k * l <= c; k++) {
        const candidate = (worth[c - k * l] as number) + k * v;
        if (candidate > best + 1e-12) {
          best = candidate;
          taken[row + c] = k;
        }
      }
      worth[c] = best;
    }
  }
  const bestValue = worth[capacity] as number;
  if (bestValue <= above) return { best: null, value: above, proven: true };
  const best = new Int32Array(n);
  let room = capacity;
  for (let i = n - 1; i >= 0; i--) {
    const k = taken[i * (capacity + 1) + room] as number;
    best[i] = k;
    room -= k * (length[i] as number);
  }
  return { best, value: bestValue, proven: true };
}
