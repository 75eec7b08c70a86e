import { failure, type Result, success } from '../../units/result.ts';

export interface StockSizes {
  /** The sizes, short to long, mm; fewer than asked where fewer already waste nothing. */
  readonly sizes: readonly number[];
  /** How many of the measured lengths each size serves: those longer than the size before it. */
  readonly served: readonly number[];
  /** Share of all lengths that are not longer than the longest size. */
  readonly cover: number;
  /** Length cut off on average from a size that is used, mm. */
  readonly meanWaste: number;
  /** Length cut off, as a share of all that is used. */
  readonly wasteShare: number;
}

export interface StockSizesRequest {
  /** Lengths needed, mm, above 0, in any order. */
  readonly lengths: readonly number[];
  /** Answers for 1, 2, ... this many sizes. */
  readonly most: number;
  /** Share of the lengths that must be served, above 0 to 1. */
  readonly cover: number;
  /** Sizes are whole multiples of this, mm. */
  readonly step: number;
  /** In place of what is cut off: what a blank of a size costs, above 0; of equal costs the one that cuts off less. */
  readonly costOf?: (size: number) => number;
}

/** Sizes between which `costOf` chooses: each pair of them is looked at. */
export const MOST_CANDIDATES = 2000;

export const MOST_SIZES = 50;

/**
 * For each number of sizes up to `most`, the sizes that serve the share `cover` of the lengths with the least cut off. A length is served by the
 * shortest size that is not shorter; the longest lengths beyond the share are left out, to be cut singly. Exact: dynamic programming over the
 * sorted lengths, where each size serves a run of neighbours, with divide and conquer over the runs' starts, which may be used because the cost
 * fulfils the quadrangle inequality (Yao, STOC 1980:429-435). Fails with `SIZES_INPUT`.
 */
export function stockSizes({ lengths, most, cover, step, costOf }: StockSizesRequest): Result<readonly StockSizes[]> {
  const wrong = lengths.find((length) => !(Number.isFinite(length) && length > 0));
  if (wrong !== undefined) return refused(`${wrong} is not a length above 0 mm`);
  if (lengths.length === 0) return refused('there are no lengths to choose sizes for');
  if (!(Number.isInteger(most) && most >= 1 && most <= MOST_SIZES)) return refused(`${most} sizes; 1 to ${MOST_SIZES} can be asked for`);
  if (!(cover > 0 && cover <= 1)) return refused(`a share of ${cover}; above 0 to 1 can be served`);
  if (!(Number.isFinite(step) && step > 0)) return refused(`sizes in steps of ${step} mm; a step is above 0`);
  const runs = sortedRuns(lengths, cover, step);
  if (costOf && runs.size.length > MOST_CANDIDATES)
    return refused(
      `${runs.size.length} sizes to choose between; at most ${MOST_CANDIDATES} can be weighed by sheets, so take larger steps`,
    );
  const count = Math.min(most, runs.size.length);
  const layers = costOf ? cheapestSplits(runs, count, costOf) : bestSplits(runs, count);
  return success(layers.map((ends) => described(ends, runs, lengths.length)));
}

/** The lengths to be served, as candidate sizes with how many need each and how much those are in sum; index 0 is before the first. */
interface Runs {
  readonly size: readonly number[];
  /** Lengths up to and with the k-th size, and their sum. */
  readonly countTo: Float64Array;
  readonly sumTo: Float64Array;
}

/** Rounding of a product such as 0.95 times 20 is not one length more. */
const ROUNDING = 1e-9;

function sortedRuns(lengths: readonly number[], cover: number, step: number): Runs {
  const sorted = lengths.toSorted((a, b) => a - b);
  const least = Math.max(1, Math.ceil(cover * sorted.length - ROUNDING));
  const last = sizeFor(sorted[least - 1] as number, step);
  const size: number[] = [];
  const counts: number[] = [0];
  const sums: number[] = [0];
  for (const length of sorted) {
    const needed = sizeFor(length, step);
    // Whatever the longest size serves without more waste in steps is served.
    if (needed > last) break;
    if (size.at(-1) !== needed) {
      size.push(needed);
      counts.push(counts.at(-1) as number);
      sums.push(sums.at(-1) as number);
    }
    counts[size.length] = (counts[size.length] as number) + 1;
    sums[size.length] = (sums[size.length] as number) + length;
  }
  return { size, countTo: Float64Array.from(counts), sumTo: Float64Array.from(sums) };
}

function sizeFor(length: number, step: number): number {
  return Math.ceil(length / step - ROUNDING) * step;
}

/** Cut off when the size at `to` serves what lies after `from`. */
function wasteOf({ size, countTo, sumTo }: Runs, from: number, to: number): number {
  const count = (countTo[to] as number) - (countTo[from] as number);
  return count * (size[to - 1] as number) - ((sumTo[to] as number) - (sumTo[from] as number));
}

/** For 1, 2, ... sizes, the ends of the runs. */
function bestSplits(runs: Runs, most: number): readonly (readonly number[])[] {
  const n = runs.size.length;
  let cost = Float64Array.from({ length: n + 1 }, (_, j) => (j === 0 ? 0 : wasteOf(runs, 0, j)));
  const starts: Int32Array[] = [new Int32Array(n + 1)];
  for (let k = 2; k <= most; k++) {
    const next = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
    const start = new Int32Array(n + 1);
    const before = cost;
    const solve = (low: number, high: number, from: number, to: number): void => {
      if (low > high) return;
      const j = (low + high) >> 1;
      let bestAt = from;
      for (let i = from; i <= Math.min(to, j - 1); i++) {
        const sum = (before[i] as number) + wasteOf(runs, i, j);
        if (sum < (next[j] as number)) {
          next[j] = sum;
          bestAt = i;
        }
      }
      start[j] = bestAt;
      solve(low, j - 1, from, bestAt);
      solve(j + 1, high, bestAt, to);
    };
    solve(k, n, k - 1, n - 1);
    starts.push(start);
    cost = next;
  }
  return starts.map((_, layer) => endsOf(starts, layer, n));
}

/** What a mm cut off weighs beside the cost of blanks: it only decides between equals. */
export const WASTE_WEIGHT = 1e-9;

/** The same by the cost of the blanks, where nothing bounds the runs' starts: every start is tried. */
function cheapestSplits(runs: Runs, most: number, costOf: (size: number) => number): readonly (readonly number[])[] {
  const n = runs.size.length;
  const costs = runs.size.map(costOf);
  const costed = (from: number, to: number) =>
    ((runs.countTo[to] as number) - (runs.countTo[from] as number)) * (costs[to - 1] as number) + WASTE_WEIGHT * wasteOf(runs, from, to);
  let best = Array.from({ length: n + 1 }, (_, j) => (j === 0 ? 0 : costed(0, j)));
  const starts: number[][] = [new Array<number>(n + 1).fill(0)];
  for (let k = 2; k <= most; k++) {
    const next = new Array<number>(n + 1).fill(Number.POSITIVE_INFINITY);
    const start = new Array<number>(n + 1).fill(0);
    for (let j = k; j <= n; j++) {
      for (let i = k - 1; i < j; i++) {
        const sum = (best[i] as number) + costed(i, j);
        if (sum < (next[j] as number)) {
          next[j] = sum;
          start[j] = i;
        }
      }
    }
    starts.push(start);
    best = next;
  }
  return starts.map((_, layer) => endsOf(starts, layer, n));
}

/** The ends of the runs from where each begins. */
function endsOf(starts: readonly ArrayLike<number>[], layer: number, n: number): readonly number[] {
  const ends: number[] = [];
  let j = n;
  for (let k = layer; k >= 0; k--) {
    ends.unshift(j);
    j = starts[k]?.[j] as number;
  }
  return ends;
}

function described(ends: readonly number[], runs: Runs, all: number): StockSizes {
  const sizes = ends.map((end) => runs.size[end - 1] as number);
  const served = ends.map((end, k) => (runs.countTo[end] as number) - (runs.countTo[ends[k - 1] ?? 0] as number));
  const waste = ends.reduce((sum, end, k) => sum + wasteOf(runs, ends[k - 1] ?? 0, end), 0);
  const count = runs.countTo[ends.at(-1) as number] as number;
  const used = sizes.reduce((sum, size, k) => sum + size * (served[k] as number), 0);
  return { sizes, served, cover: count / all, meanWaste: waste / count, wasteShare: waste / used };
}

function refused(what: string): Result<readonly StockSizes[]> {
  return failure({ code: 'SIZES_INPUT', where: 'sizes', message: `stock sizes: ${what}.`, kind: 'input' });
}
