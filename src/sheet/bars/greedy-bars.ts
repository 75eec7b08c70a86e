import { fillBar, type Kinds } from './fill-bar.ts';

/** A bar as the lengths that it is cut into, whole units. */
export type Bar = readonly number[];

/** First-fit decreasing: each length, from long to short, into the first bar with room (Johnson 1973). */
export function firstFitDecreasing(lengths: readonly number[], capacity: number): readonly Bar[] {
  return decreasing(lengths, (rooms, length) => rooms.findIndex((room) => room >= length), capacity);
}

/** Best-fit decreasing: each length, from long to short, into the bar that it leaves least room in. */
export function bestFitDecreasing(lengths: readonly number[], capacity: number): readonly Bar[] {
  return decreasing(
    lengths,
    (rooms, length) => {
      let best = -1;
      for (const [i, room] of rooms.entries()) if (room >= length && (best < 0 || room < (rooms[best] as number))) best = i;
      return best;
    },
    capacity,
  );
}

function decreasing(
  lengths: readonly number[],
  choose: (rooms: readonly number[], length: number) => number,
  capacity: number,
): readonly Bar[] {
  const bars: number[][] = [];
  const rooms: number[] = [];
  for (const length of lengths.toSorted((a, b) => b - a)) {
    const at = choose(rooms, length);
    if (at < 0) {
      bars.push([length]);
      rooms.push(capacity - length);
    } else {
      bars[at]?.push(length);
      rooms[at] = (rooms[at] as number) - length;
    }
  }
  return bars;
}

/** Bar by bar: the longest that is left, and with it what fills the bar best (minimum bin slack: Gupta & Ho 1999, Fleszar & Hindi 2002). */
export function fullestFirst(kinds: Kinds, capacity: number, mostSteps = 3000): readonly Bar[] {
  const counts = [...kinds.counts];
  const bars: Bar[] = [];
  for (;;) {
    const longest = counts.findIndex((count) => count > 0);
    if (longest < 0) return bars;
    const chosen = fillBar({ lengths: kinds.lengths, counts }, capacity, longest, mostSteps);
    bars.push(barOf(kinds.lengths, chosen));
    for (const [i, count] of chosen.entries()) counts[i] = (counts[i] as number) - count;
  }
}

/** The lengths of a bar from how many it has of each kind. */
export function barOf(lengths: readonly number[], chosen: readonly number[]): Bar {
  const bar: number[] = [];
  for (let i = 0; i < chosen.length; i++) for (let k = chosen[i] as number; k > 0; k--) bar.push(lengths[i] as number);
  return bar;
}
