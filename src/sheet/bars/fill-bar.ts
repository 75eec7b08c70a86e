/** Lengths by kind: distinct whole units from long to short, and how many of each. */
export interface Kinds {
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
}

export function kindsOf(lengths: readonly number[]): Kinds {
  const sorted = Float64Array.from(lengths).sort();
  const kinds: { lengths: number[]; counts: number[] } = { lengths: [], counts: [] };
  for (let i = sorted.length - 1, last = -1; i >= 0; i--) {
    const length = sorted[i] as number;
    if (last >= 0 && kinds.lengths[last] === length) kinds.counts[last] = (kinds.counts[last] as number) + 1;
    else {
      last = kinds.lengths.push(length) - 1;
      kinds.counts.push(1);
    }
  }
  return kinds;
}

/**
 * How many of each kind fill one bar best: the greatest total length within `capacity`, longer pieces first. Search with a limit on its
 * steps; exact when the limit is not met. `must`, if given, is a kind of which one is in the bar.
 */
export function fillBar(kinds: Kinds, capacity: number, must: number | null = null, mostSteps = 3000): readonly number[] {
  const { lengths, counts } = kinds;
  const m = lengths.length;
  const chosen = new Array<number>(m).fill(0);
  const left = [...counts];
  let room = capacity;
  if (must !== null) {
    chosen[must] = 1;
    left[must] = (left[must] as number) - 1;
    room -= lengths[must] as number;
  }
  // What all kinds from i on could still add.
  const rest = new Array<number>(m + 1).fill(0);
  for (let i = m - 1; i >= 0; i--) rest[i] = (rest[i + 1] as number) + (lengths[i] as number) * (left[i] as number);
  let best: number[] = [...chosen];
  let bestRoom = room;
  let steps = 0;
  const search = (from: number, roomNow: number): void => {
    if (roomNow < bestRoom) {
      bestRoom = roomNow;
      best = [...chosen];
    }
    for (let i = from; i < m; i++) {
      if (bestRoom === 0 || ++steps > mostSteps) return;
      if (roomNow - (rest[i] as number) >= bestRoom) return;
      const length = lengths[i] as number;
      if (length > roomNow || (left[i] as number) === 0) continue;
      chosen[i] = (chosen[i] as number) + 1;
      left[i] = (left[i] as number) - 1;
      search(i, roomNow - length);
      chosen[i] = (chosen[i] as number) - 1;
      left[i] = (left[i] as number) + 1;
    }
  };
  search(0, room);
  return best;
}
