import type { Kinds } from './fill-bar.ts';
import { type Bar, barOf } from './greedy-bars.ts';

/** What the search found out, and the work it took (about one comparison each). */
export interface FullSearch {
  readonly bars: readonly Bar[] | null;
  /** True when every way was tried: without bars it is then proven that so few cannot do. */
  readonly complete: boolean;
  readonly work: number;
}

interface Way {
  readonly adds: readonly (readonly [kind: number, count: number])[];
  readonly waste: number;
  /** Order among ways of equal waste. */
  readonly rank: number;
}

/** More ways than these to fill one bar, and the search would not come to an end. */
const MOST_WAYS = 20_000;

/**
 * Looks for a cutting into exactly `bars` bars where little may be wasted: every way to fill a bar within the waste that is left in all, then
 * kind by kind, the one with the fewest ways first (the rule of exact cover: Knuth, Dancing Links, 2000). Whole when not cut off by `mostWork`; `random`
 * shuffles what is tried first among equals.
 */
export function fullSearch(
  kinds: Kinds,
  capacity: number,
  bars: number,
  mostWork: number,
  random: (() => number) | null = null,
): FullSearch {
  const { lengths, counts } = kinds;
  const slack = bars * capacity - lengths.reduce((sum, length, i) => sum + length * (counts[i] as number), 0);
  if (slack < 0) return { bars: null, complete: true, work: 0 };
  const listed = waysToFill(kinds, capacity, slack, mostWork, random);
  if (!listed.ways) return { bars: null, complete: false, work: listed.work };
  let work = listed.work;
  let cutOff = false;
  const demand = [...counts];
  const visit = (ways: readonly Way[], waste: number, missing: number): readonly Bar[] | null => {
    if (missing === 0) return [];
    const tally = new Int32Array(demand.length);
    for (const { adds } of ways) for (const [kind] of adds) tally[kind] = (tally[kind] as number) + 1;
    work += 4 * ways.length + demand.length;
    let rarest = -1;
    for (const [kind, wanted] of demand.entries()) {
      if (wanted > 0 && (rarest < 0 || (tally[kind] as number) < (tally[rarest] as number))) rarest = kind;
    }
    if (rarest < 0 || tally[rarest] === 0) return null;
    let rest = ways;
    for (const way of ways) {
      if (!way.adds.some(([kind]) => kind === rarest)) continue;
      if (work > mostWork) {
        cutOff = true;
        return null;
      }
      for (const [kind, count] of way.adds) demand[kind] = (demand[kind] as number) - count;
      const left = waste - way.waste;
      const open = rest.filter((w) => w.waste <= left && w.adds.every(([kind, count]) => count <= (demand[kind] as number)));
      work += 3 * rest.length;
      const found = visit(open, left, missing - 1);
      for (const [kind, count] of way.adds) demand[kind] = (demand[kind] as number) + count;
      if (found) return [bar(lengths, way), ...found];
      if (cutOff) return null;
      // All with this way has been tried: no later branch needs it.
      rest = rest.filter((w) => w !== way);
    }
    return null;
  };
  const found = visit(listed.ways, slack, bars);
  return { bars: found, complete: found !== null || !cutOff, work };
}

/** Every way to fill a bar that wastes at most `slack`, the least waste first; null when there are too many. */
function waysToFill(
  { lengths, counts }: Kinds,
  capacity: number,
  slack: number,
  mostWork: number,
  random: (() => number) | null,
): { ways: Way[] | null; work: number } {
  const m = lengths.length;
  const ways: Way[] = [];
  const chosen = new Array<number>(m).fill(0);
  const most = new Array<number>(m + 1).fill(0);
  for (let i = m - 1; i >= 0; i--) most[i] = (most[i + 1] as number) + (lengths[i] as number) * (counts[i] as number);
  let work = 0;
  const visit = (at: number, room: number): boolean => {
    if (++work > mostWork / 4 || ways.length > MOST_WAYS) return false;
    if (room <= slack && room < capacity)
      ways.push({
        adds: chosen.flatMap((count, i) => (count > 0 ? [[i, count] as const] : [])),
        waste: room,
        rank: random ? random() : ways.length,
      });
    for (let i = at; i < m; i++) {
      work++;
      // Even all that is left does not bring the waste down far enough.
      if (room - (most[i] as number) > slack) return true;
      const length = lengths[i] as number;
      if (length > room) continue;
      const times = Math.min(counts[i] as number, Math.floor(room / length));
      for (let count = times; count > 0; count--) {
        chosen[i] = count;
        if (!visit(i + 1, room - count * length)) return false;
      }
      chosen[i] = 0;
    }
    return true;
  };
  const all = visit(0, capacity);
  return { ways: all ? ways.sort((a, b) => a.waste - b.waste || a.rank - b.rank) : null, work };
}

function bar(lengths: readonly number[], { adds }: Way): Bar {
  return adds.flatMap(([kind, count]) => barOf([lengths[kind] as number], [count]));
}

/** Every way to fill one bar so that no further piece fits, as pairs of kind and count; null when there are more than `most`. */
export function fullWays(
  kinds: Kinds,
  capacity: number,
  most: number,
): readonly (readonly (readonly [kind: number, count: number])[])[] | null {
  const { lengths, counts } = kinds;
  const ways: [number, number][][] = [];
  const chosen = new Array<number>(lengths.length).fill(0);
  const visit = (at: number, room: number): boolean => {
    if (ways.length > most) return false;
    if (at === lengths.length) {
      const full = lengths.every((length, i) => length > room || chosen[i] === counts[i]);
      if (full) ways.push(chosen.flatMap((count, i) => (count > 0 ? [[i, count] as [number, number]] : [])));
      return true;
    }
    const length = lengths[at] as number;
    const times = Math.min(counts[at] as number, Math.floor(room / length));
    for (let count = times; count >= 0; count--) {
      chosen[at] = count;
      if (!visit(at + 1, room - count * length)) return false;
    }
    chosen[at] = 0;
    return true;
  };
  return visit(0, capacity) ? ways : null;
}
