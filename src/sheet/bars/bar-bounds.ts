/**
 * Lower bounds on the number of bars of `capacity` that hold all `lengths` (whole units), each by a dual feasible function: a rescaling
 * of lengths under which no bar holds more than one whole. Lueker 1983; Fekete & Schepers, Math Program 2001;91:11-31.
 */

/** A dual feasible function over lengths 0..capacity, as a fraction of the whole; never over 1 for what fits into one bar. */
export type Scale = (length: number) => number;

/** Highest k of the stepped scale that is tried; the gain of higher ones is rare. */
const HIGHEST_STEP = 20;
/** Sums of fractions are off by less than this. */
const ROUNDING = 1e-7;

/** The scales worth trying for these lengths: the plain one, thresholds at each length, and the steps. */
export function scalesFor(lengths: readonly number[], capacity: number): readonly Scale[] {
  const thresholds = [...new Set(lengths.map((l) => Math.min(l, capacity - l + 1)).filter((t) => t > 0 && 2 * t <= capacity))];
  const plain: Scale = (l) => l / capacity;
  // What is longer than the capacity less t counts whole, what is shorter than t not at all: the two cannot share a bar otherwise.
  const threshold =
    (t: number): Scale =>
    (l) =>
      l > capacity - t ? 1 : l < t ? 0 : l / capacity;
  const step =
    (k: number): Scale =>
    (l) =>
      ((k + 1) * l) % capacity === 0 ? l / capacity : Math.floor(((k + 1) * l) / capacity) / k;
  return [plain, ...thresholds.map(threshold), ...Array.from({ length: HIGHEST_STEP }, (_, i) => step(i + 1))];
}

/** The best of the bounds; 0 for no lengths. Every length must fit. */
export function barsAtLeast(lengths: readonly number[], capacity: number): number {
  let best = byNumberOfPieces(lengths, capacity);
  for (const scale of scalesFor(lengths, capacity)) {
    let sum = 0;
    for (const length of lengths) sum += scale(length);
    best = Math.max(best, Math.ceil(sum - ROUNDING));
  }
  return best;
}

/**
 * A bar holds at most t pieces, the t shortest being what fits; and only so many bars hold t of them, k, as their t k shortest pieces fit into k
 * bars. So n pieces need B bars with n <= t k + (t - 1)(B - k).
 */
function byNumberOfPieces(lengths: readonly number[], capacity: number): number {
  const sorted = lengths.toSorted((a, b) => a - b);
  const most = mostPieces(sorted, capacity);
  if (most < 2) return sorted.length;
  const fullBars = mostFullBars(sorted, capacity, most);
  return Math.max(Math.ceil(sorted.length / most), Math.ceil((sorted.length - fullBars) / (most - 1)));
}

/** The most pieces that one bar can hold; lengths from short to long. */
export function mostPieces(sorted: readonly number[], capacity: number): number {
  let [count, sum] = [0, 0];
  while (count < sorted.length && sum + (sorted[count] as number) <= capacity) sum += sorted[count++] as number;
  return count;
}

/** The most bars that can hold `pieces` pieces each, by the sum of the shortest; lengths from short to long. */
export function mostFullBars(sorted: readonly number[], capacity: number, pieces: number): number {
  let [bars, sum] = [0, 0];
  for (; pieces * (bars + 1) <= sorted.length; bars++) {
    for (const length of sorted.slice(pieces * bars, pieces * (bars + 1))) sum += length;
    if (sum > (bars + 1) * capacity) break;
  }
  return bars;
}
