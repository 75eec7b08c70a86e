import { type BarWays, waysToFill } from './bar-ways.ts';
import type { Kinds } from './fill-bar.ts';
import { type Bar, barOf } from './greedy-bars.ts';

/** What the search found out, and the work it took (about one comparison each). */
export interface FullSearch {
  readonly bars: readonly Bar[] | null;
  /** True when every way was tried: without bars it is then proven that so few cannot do. */
  readonly complete: boolean;
  readonly work: number;
}

/**
 * Looks for a cutting into exactly `bars` bars where little may be wasted: every way to fill a bar within the waste that is left in all, then
 * kind by kind, the one with the fewest ways first (the rule of exact cover: Knuth, Dancing Links, 2000). Of its ways those come first that
 * waste least and use pieces that are hard to place themselves. Whole when not cut off by `mostWork`.
 */
export function fullSearch(kinds: Kinds, capacity: number, bars: number, mostWork: number): FullSearch {
  const search = WaySearch.of(kinds, capacity, bars, mostWork / 4);
  if (!(search instanceof WaySearch)) return search;
  const found = search.run(mostWork - search.work, null);
  return { ...found, work: search.work };
}

/** How far chance may push the order among ways of equal waste, as a share. */
const SHAKE = 0.5;

/** The same search, to be run more than once: with other orders by chance and cut off early, it often finds what one long run does not. */
export class WaySearch {
  /** Of the list of ways and of all runs. */
  work: number;
  private readonly kinds: Kinds;
  private readonly bars: number;
  private readonly slack: number;
  private readonly ways: BarWays;
  /** Ways that use kind i, the most of it first: `uses[usesFrom[i]]` up to `uses[usesFrom[i + 1]]`. */
  private readonly usesFrom: Int32Array;
  private readonly uses: Int32Array;
  /** How many of kind i the way beside it in `uses` takes. */
  private readonly usesCount: Int32Array;
  private readonly demand: Int32Array;
  /** Ways still open that use each kind. */
  private readonly tally: Int32Array;
  private readonly open: Uint8Array;
  /** Ways closed, in order, to be opened again. */
  private readonly closed: Int32Array;
  private closedCount = 0;
  /** Ways from here on waste more than is left in all, and are closed. */
  private wasteEnd: number;
  private stopAt = 0;
  private random: (() => number) | null = null;
  private readonly chosen: number[] = [];

  /** The search made ready, or its result when there is nothing to search or too much. */
  static of(kinds: Kinds, capacity: number, bars: number, mostWork: number): WaySearch | FullSearch {
    const slack = bars * capacity - kinds.lengths.reduce((sum, length, i) => sum + length * (kinds.counts[i] as number), 0);
    if (slack < 0) return { bars: null, complete: true, work: 0 };
    const { ways, work } = waysToFill(kinds, capacity, slack, mostWork);
    return ways ? new WaySearch(kinds, bars, slack, ways, work) : { bars: null, complete: false, work };
  }

  private constructor(kinds: Kinds, bars: number, slack: number, ways: BarWays, work: number) {
    this.kinds = kinds;
    this.bars = bars;
    this.slack = slack;
    this.ways = ways;
    const m = kinds.lengths.length;
    const size = ways.waste.length;
    this.demand = Int32Array.from(kinds.counts);
    this.tally = new Int32Array(m);
    for (const i of ways.kind) this.tally[i] = (this.tally[i] as number) + 1;
    this.usesFrom = new Int32Array(m + 1);
    for (let i = 0; i < m; i++) this.usesFrom[i + 1] = (this.usesFrom[i] as number) + (this.tally[i] as number);
    this.uses = new Int32Array(ways.kind.length);
    this.usesCount = new Int32Array(ways.kind.length);
    const next = this.usesFrom.slice();
    const most = ways.count.reduce((a, b) => Math.max(a, b), 0);
    for (let count = most; count > 0; count--) {
      for (let w = 0; w < size; w++) {
        for (let k = ways.from[w] as number; k < (ways.from[w + 1] as number); k++) {
          if (ways.count[k] !== count) continue;
          const i = ways.kind[k] as number;
          const at = next[i] as number;
          this.uses[at] = w;
          this.usesCount[at] = count;
          next[i] = at + 1;
        }
      }
    }
    this.open = new Uint8Array(size).fill(1);
    this.closed = new Int32Array(size);
    this.wasteEnd = size;
    this.work = work + (3 + most) * ways.kind.length;
  }

  /** Entries in the list of ways; closing all of them takes about twice that work. */
  get size(): number {
    return this.ways.kind.length;
  }

  /** One run from the start, cut off after `mostWork`; `random` shakes the order. */
  run(mostWork: number, random: (() => number) | null): Omit<FullSearch, 'work'> {
    this.stopAt = this.work + mostWork;
    this.random = random;
    this.chosen.length = 0;
    const answer = this.visit(this.slack, this.bars);
    if (answer !== 'found') return { bars: null, complete: answer === 'none' };
    const { from, kind, count } = this.ways;
    const bars = this.chosen.map((w) => {
      const bar: number[] = [];
      for (let k = from[w] as number; k < (from[w + 1] as number); k++)
        bar.push(...barOf([this.kinds.lengths[kind[k] as number] as number], [count[k] as number]));
      return bar;
    });
    this.undo(0, this.ways.waste.length);
    this.demand.set(this.kinds.counts);
    return { bars, complete: true };
  }

  private visit(waste: number, missing: number): 'found' | 'none' | 'cut off' {
    if (missing === 0) return 'found';
    const { demand, tally, ways } = this;
    const m = demand.length;
    this.work += m;
    let rarest = -1;
    // Ways for each piece that is still asked for.
    let fewest = Number.POSITIVE_INFINITY;
    for (let i = 0; i < m; i++) {
      if (demand[i] === 0) continue;
      const share = (tally[i] as number) / (demand[i] as number);
      if (share >= fewest) continue;
      fewest = share;
      rarest = i;
    }
    if (rarest < 0 || fewest === 0) return 'none';
    const mark = this.closedCount;
    const wasteMark = this.wasteEnd;
    let answer: 'found' | 'none' | 'cut off' = 'none';
    for (const w of this.inOrder(rarest)) {
      if (this.work > this.stopAt) {
        answer = 'cut off';
        break;
      }
      const before = this.closedCount;
      const left = waste - (ways.waste[w] as number);
      this.take(w, left);
      this.chosen.push(w);
      answer = this.visit(left, missing - 1);
      if (answer === 'found') return answer;
      this.chosen.pop();
      this.giveBack(w);
      this.undo(before, wasteMark);
      if (answer === 'cut off') break;
      // All with this way has been tried: no later branch needs it.
      this.close(w);
    }
    this.undo(mark, wasteMark);
    return answer;
  }

  /** Open ways that use a kind, in the order in which to try them. */
  private inOrder(kind: number): readonly number[] {
    const { ways, tally, demand, random } = this;
    const found: { way: number; waste: number; rank: number }[] = [];
    const end = this.usesFrom[kind + 1] as number;
    for (let at = this.usesFrom[kind] as number; at < end; at++) {
      const way = this.uses[at] as number;
      if (!this.open[way]) continue;
      // The more pieces that few ways are left for, the sooner.
      let rank = 0;
      for (let k = ways.from[way] as number; k < (ways.from[way + 1] as number); k++) {
        const i = ways.kind[k] as number;
        rank -= (demand[i] as number) / (tally[i] as number);
      }
      if (random) rank *= 1 + SHAKE * random();
      found.push({ way, waste: ways.waste[way] as number, rank });
    }
    this.work += 6 * found.length + end - (this.usesFrom[kind] as number);
    found.sort((a, b) => a.waste - b.waste || a.rank - b.rank || a.way - b.way);
    return found.map(({ way }) => way);
  }

  /** Takes a way's pieces off the demand and closes all ways that want more than is left of a kind, or waste more than `left`. */
  private take(way: number, left: number): void {
    const { ways, demand } = this;
    for (let k = ways.from[way] as number; k < (ways.from[way + 1] as number); k++) {
      const kind = ways.kind[k] as number;
      const rest = (demand[kind] as number) - (ways.count[k] as number);
      demand[kind] = rest;
      let at = this.usesFrom[kind] as number;
      const end = this.usesFrom[kind + 1] as number;
      this.work += 2;
      for (; at < end && (this.usesCount[at] as number) > rest; at++) {
        this.work++;
        this.close(this.uses[at] as number);
      }
    }
    while (this.wasteEnd > 0 && (ways.waste[this.wasteEnd - 1] as number) > left) {
      this.work++;
      this.close(--this.wasteEnd);
    }
  }

  private giveBack(way: number): void {
    const { ways, demand } = this;
    for (let k = ways.from[way] as number; k < (ways.from[way + 1] as number); k++) {
      const kind = ways.kind[k] as number;
      demand[kind] = (demand[kind] as number) + (ways.count[k] as number);
    }
  }

  private close(way: number): void {
    if (!this.open[way]) return;
    const { ways, tally } = this;
    this.open[way] = 0;
    this.closed[this.closedCount++] = way;
    const end = ways.from[way + 1] as number;
    for (let k = ways.from[way] as number; k < end; k++) {
      const kind = ways.kind[k] as number;
      tally[kind] = (tally[kind] as number) - 1;
    }
    this.work += end - (ways.from[way] as number);
  }

  /** Opens again what was closed since. */
  private undo(mark: number, wasteEnd: number): void {
    const { ways, tally } = this;
    while (this.closedCount > mark) {
      const way = this.closed[--this.closedCount] as number;
      this.open[way] = 1;
      const end = ways.from[way + 1] as number;
      for (let k = ways.from[way] as number; k < end; k++) {
        const kind = ways.kind[k] as number;
        tally[kind] = (tally[kind] as number) + 1;
      }
    }
    this.wasteEnd = wasteEnd;
  }
}
