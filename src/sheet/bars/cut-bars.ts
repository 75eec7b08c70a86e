import { seeded } from '../../units/chance.ts';
import { barsAtLeast } from './bar-bounds.ts';
import { BarProgramme } from './bar-programme.ts';
import { type Kinds, kindsOf } from './fill-bar.ts';
import { type FullSearch, fullSearch, WaySearch } from './full-search.ts';
import { type Bar, bestFitDecreasing, firstFitDecreasing, fullestFirst } from './greedy-bars.ts';
import { repackBars } from './repack-bars.ts';
import { threePieceBars } from './three-piece-bars.ts';

export interface CutBars {
  readonly bars: readonly Bar[];
  /** No fewer bars can do, proven. */
  readonly atLeast: number;
}

export interface CutEffort {
  readonly seed: number;
  /** Multiplications that the improvement may take; a limit on time would not give the same layout on every machine. */
  readonly work: number;
}

/** About a tenth of a second on a machine of 2020. */
export const DEFAULT_EFFORT: CutEffort = { seed: 1, work: 40_000_000 };

/** Beyond this many kinds the programme's inverse no longer pays. */
const MOST_KINDS = 160;
/** With fewer pieces in a bar on average, taking apart finds little and the programme is quick. */
const LONG_BARS = 3.2;
/** Rounds of taking bars apart before the programme is set up. */
const REPACKS = 6000;
/** Of the work, one part in so many goes into the search of ways to fill bars. */
const SEARCH_SHARE = 5;
/** Work of its first run: at least so much, and so much for each entry in the list of ways; each run may take longer than the one before. */
const FIRST_RUN = 60_000;
const FIRST_RUN_EACH = 8;
const RUN_GROWTH = 1.1;
const ROUNDING = 1e-6;

/**
 * Cuts `lengths` (whole units) from as few bars of `capacity` as can be found: first the quick rules, then, while they lie above the lower
 * bound, the linear programme, which both raises the bound and leads a seeded search. Every length must be above 0 and fit.
 */
export function cutBars(lengths: readonly number[], capacity: number, effort: CutEffort = DEFAULT_EFFORT): CutBars {
  const wrong = lengths.find((length) => !(Number.isInteger(length) && length > 0 && length <= capacity));
  if (wrong !== undefined) throw new RangeError(`cannot cut ${wrong} from a bar of ${capacity}`);
  let atLeast = barsAtLeast(lengths, capacity);
  const kinds = kindsOf(lengths);
  let best = firstFitDecreasing(lengths, capacity);
  const keep = (bars: readonly Bar[]) => {
    if (bars.length < best.length) best = bars;
    return best.length <= atLeast;
  };
  if (keep(best) || keep(bestFitDecreasing(lengths, capacity)) || keep(fullestFirst(kinds, capacity))) return { bars: best, atLeast };
  const threes = effort.work > 0 ? threePieceBars(lengths, capacity, atLeast, effort.seed) : null;
  if (threes && keep(threes)) return { bars: best, atLeast };
  const random = seeded(effort.seed);
  if (
    effort.work <= 0 ||
    keep(
      repackBars(
        fullestFirst(kinds, capacity),
        capacity,
        atLeast,
        lengths.length > LONG_BARS * best.length ? REPACKS : REPACKS / 20,
        random,
      ),
    )
  )
    return { bars: best, atLeast };
  // Without the programme, all of the work and as much again is the search's.
  const isSearchOnly = kinds.lengths.length > MOST_KINDS;
  let left = isSearchOnly ? 2 * effort.work : effort.work;
  for (let bars = atLeast; left > 0 && best.length > atLeast; bars++) {
    const searched = searchAgain(kinds, capacity, bars, isSearchOnly ? left : Math.min(left, effort.work / SEARCH_SHARE), random);
    left -= searched.work;
    if (searched.bars) return { bars: searched.bars, atLeast };
    if (!searched.complete) break;
    atLeast++;
  }
  if (keep(best) || isSearchOnly) return { bars: best, atLeast };
  const pool = [...best, ...fullestFirst(kinds, capacity)].map((bar) => patternOf(bar, kinds));
  const relaxed = new BarProgramme(kinds.lengths, kinds.counts, capacity, pool);
  const whole = relaxed.solve(left);
  if (!whole) return { bars: best, atLeast };
  atLeast = Math.max(atLeast, Math.ceil(whole.bound - ROUNDING));
  left -= relaxed.work;
  for (let dive = 0; left > 0 && !keep(best); dive++) {
    const search = new Dive(capacity, best.length, Math.max(left / 4, effort.work / 20), () => shake(dive) * random(), keep);
    search.from(relaxed.copy(), []);
    left -= search.work;
  }
  return { bars: best, atLeast };
}

/** Runs of the full search, each in another order: one either ends soon or not at all, so many short ones find more than a long one. */
function searchAgain(kinds: Kinds, capacity: number, bars: number, mostWork: number, random: () => number): FullSearch {
  const search = WaySearch.of(kinds, capacity, bars, mostWork / 4);
  if (!(search instanceof WaySearch)) return search;
  let most = Math.max(FIRST_RUN, FIRST_RUN_EACH * search.size);
  for (let run = 0; search.work < mostWork; run++, most *= RUN_GROWTH) {
    const { bars: found, complete } = search.run(most, run === 0 ? null : random);
    if (found || complete) return { bars: found, complete, work: search.work };
  }
  return { bars: null, complete: false, work: search.work };
}

/** What a place of a dive costs beside its programme, in the same measure. */
const NODE_WORK = 5000;
const SHAKE_GROWTH = 0.1;
/** Ways on that are tried from one place of a dive. */
const WAYS_ON = 1;
/** A programme is set up anew when fewer of its kinds are still asked for. */
const WORTH_REDUCING = 0.75;
/** With fewer bars left to find, all ways are searched at every place of a dive, within this work. */
const FULL_SEARCH_BARS = 22;
const FULL_SEARCH_WORK = 400_000;

/** How far chance may push a fraction: not at all at first, further with every dive. */
function shake(dive: number): number {
  return Math.min(1, SHAKE_GROWTH * dive);
}

/** Cuts the patterns that the programme likes best, one after the other, and solves again; goes back where that cannot beat the best. */
class Dive {
  work = 0;
  private readonly capacity: number;
  private readonly toBeat: number;
  private readonly mostWork: number;
  private readonly shaken: () => number;
  private readonly keep: (bars: readonly Bar[]) => boolean;

  constructor(capacity: number, toBeat: number, mostWork: number, shaken: () => number, keep: (bars: readonly Bar[]) => boolean) {
    this.capacity = capacity;
    this.toBeat = toBeat;
    this.mostWork = mostWork;
    this.shaken = shaken;
    this.keep = keep;
  }

  /** True when the bound was reached or the work used up: the dive is over. `cut` are the bars cut so far. */
  from(programme: BarProgramme, cut: readonly Bar[]): boolean {
    const bars = [...cut];
    cutWhole(programme, bars);
    if (programme.demand.every((count) => count <= 0)) return this.keep(bars) || bars.length < this.toBeat;
    const toFind = this.toBeat - bars.length;
    if (toFind <= FULL_SEARCH_BARS || toFind % 5 === 0) {
      const rest: Kinds = { lengths: programme.lengths, counts: programme.demand.map((count) => Math.max(0, count)) };
      const searched = toFind <= FULL_SEARCH_BARS ? fullSearch(rest, this.capacity, toFind - 1, FULL_SEARCH_WORK) : null;
      this.work += searched?.work ?? 0;
      if (searched?.bars) return this.keep([...bars, ...searched.bars]) || true;
      if (searched?.complete) return false;
      const whole = [...bars, ...fullestFirst(rest, this.capacity, 400)];
      this.work += toFind * (400 + rest.lengths.length);
      if (this.keep(whole) || whole.length < this.toBeat) return true;
    }
    for (const row of likeliest(programme, this.shaken).slice(0, WAYS_ON)) {
      if (this.work >= this.mostWork) return true;
      let next = programme.copy();
      const bar = take(next, row);
      if (next.activeShare() < WORTH_REDUCING) next = next.reduced();
      const before = next.work;
      const solved = next.solve(this.mostWork - this.work);
      this.work += next.work - before + programme.lengths.length ** 2 + NODE_WORK;
      if (!solved) return true;
      if (bars.length + 1 + Math.ceil(solved.value - ROUNDING) >= this.toBeat) continue;
      if (this.from(next, [...bars, bar])) return true;
    }
    return false;
  }
}

/** All whole times of all patterns in use. */
function cutWhole(programme: BarProgramme, cut: Bar[]): void {
  for (const { row, amount } of programme.used()) {
    const times = Math.floor(amount + ROUNDING);
    for (let k = 0; k < times; k++) cut.push(take(programme, row));
  }
}

/** Cuts a row's pattern; what is no longer asked for is left out of the bar. */
function take(programme: BarProgramme, row: number): Bar {
  const adds = programme.used().find((u) => u.row === row)?.adds ?? [];
  const bar = adds.flatMap(([i, add]) => {
    const needed = Math.max(0, Math.min(add, programme.demand[i] as number));
    return new Array<number>(needed).fill(programme.lengths[i] as number);
  });
  programme.cut(row, 1);
  return bar;
}

/** Rows of the patterns, the largest fraction first, shaken; those that ask for a piece already cut come late. */
function likeliest(programme: BarProgramme, shaken: () => number): readonly number[] {
  const scored = programme.used().map(({ row, adds, amount }) => {
    const over = adds.some(([i, add]) => add > Math.max(0, programme.demand[i] as number));
    return { row, score: (amount + shaken()) * (over ? 0.1 : 1) };
  });
  return scored.sort((a, b) => b.score - a.score || a.row - b.row).map(({ row }) => row);
}

function patternOf(bar: Bar, kinds: Kinds): readonly (readonly [number, number])[] {
  const counted = kindsOf(bar);
  return counted.lengths.map((length, k) => [kinds.lengths.indexOf(length), counted.counts[k] as number] as const);
}
