import type { Kinds } from './fill-bar.ts';

/** Ways to fill one bar, the least waste first, as flat lists: way w has the kinds `kind[from[w]]` up to `kind[from[w + 1]]` (not included). */
export interface BarWays {
  readonly from: Int32Array;
  readonly kind: Int32Array;
  /** How many of that kind, beside it. */
  readonly count: Int32Array;
  /** What each way leaves of the bar. */
  readonly waste: Int32Array;
}

/** More ways than these to fill one bar, and the search would not come to an end. */
const MOST_WAYS = 60_000;

/** Every way to fill a bar that wastes at most `slack`; null when there are too many or `mostWork` (about one comparison each) is used up. */
export function waysToFill(
  { lengths, counts }: Kinds,
  capacity: number,
  slack: number,
  mostWork: number,
): { readonly ways: BarWays | null; readonly work: number } {
  const m = lengths.length;
  const kind: number[] = [];
  const count: number[] = [];
  const from = [0];
  const waste: number[] = [];
  const chosen = new Int32Array(m);
  const chosenKinds: number[] = [];
  const most = new Float64Array(m + 1);
  for (let i = m - 1; i >= 0; i--) most[i] = (most[i + 1] as number) + (lengths[i] as number) * (counts[i] as number);
  const shortest = lengths[m - 1] ?? 0;
  const firstThatFits = firstIn(lengths, capacity);
  let work = capacity;
  const visit = (at: number, room: number): boolean => {
    if (++work > mostWork || waste.length > MOST_WAYS) return false;
    if (room <= slack && room < capacity) {
      for (const i of chosenKinds) {
        kind.push(i);
        count.push(chosen[i] as number);
      }
      from.push(kind.length);
      waste.push(room);
    }
    if (room < shortest) return true;
    for (let i = Math.max(at, firstThatFits[room] as number); i < m; i++) {
      work++;
      // Even all that is left does not bring the waste down far enough.
      if (room - (most[i] as number) > slack) return true;
      const length = lengths[i] as number;
      // No two pieces more, so this one must fill the bar by itself.
      if (room - length > slack && room - length < shortest) continue;
      const times = Math.min(counts[i] as number, Math.floor(room / length));
      chosenKinds.push(i);
      for (let n = times; n > 0; n--) {
        chosen[i] = n;
        if (!visit(i + 1, room - n * length)) return false;
      }
      chosenKinds.pop();
    }
    return true;
  };
  if (!visit(0, capacity)) return { ways: null, work };
  return { ways: leastWasteFirst(from, kind, count, waste), work: work + 4 * kind.length };
}

/** For every room the first of the lengths, long to short, that fits it. */
function firstIn(lengths: readonly number[], capacity: number): Int32Array {
  const first = new Int32Array(capacity + 1).fill(lengths.length);
  for (const [i, length] of lengths.entries()) first.fill(i, length, i === 0 ? capacity + 1 : lengths[i - 1]);
  return first;
}

function leastWasteFirst(from: readonly number[], kind: readonly number[], count: readonly number[], waste: readonly number[]): BarWays {
  const order = waste.map((_, w) => w).sort((a, b) => (waste[a] as number) - (waste[b] as number) || a - b);
  const sorted = {
    from: new Int32Array(from.length),
    kind: new Int32Array(kind.length),
    count: new Int32Array(kind.length),
    waste: Int32Array.from(order, (w) => waste[w] as number),
  };
  let at = 0;
  for (const [place, w] of order.entries()) {
    for (let k = from[w] as number; k < (from[w + 1] as number); k++) {
      sorted.kind[at] = kind[k] as number;
      sorted.count[at++] = count[k] as number;
    }
    sorted.from[place + 1] = at;
  }
  return sorted;
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
