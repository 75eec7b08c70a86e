import { seeded } from '../../units/chance.ts';
import { mostFullBars, mostPieces } from './bar-bounds.ts';
import type { Bar } from './greedy-bars.ts';

/** How many fewer bars of three than can be are tried, and how often each by chance. */
const FEWER = 12;
const FEWER_SHAKEN = 6;
const SHAKES = 30;
/** How far chance may push the sum of a pair, as a share of the capacity. */
const SHAKE = 0.002;

/**
 * For bars that hold three pieces at most: as many bars of three as can be, out of the shortest pieces, the rest in pairs; then fewer of three, and
 * other pairs by chance, until `atLeast` is reached. Null where a bar holds more than three pieces, or fewer.
 */
export function threePieceBars(lengths: readonly number[], capacity: number, atLeast: number, seed: number): readonly Bar[] | null {
  const sorted = lengths.toSorted((a, b) => a - b);
  if (mostPieces(sorted, capacity) !== 3) return null;
  const most = mostFullBars(sorted, capacity, 3);
  const random = seeded(seed);
  const attempts = [
    ...Array.from({ length: FEWER }, (_, k) => ({ threes: most - k, shake: 0 })),
    ...Array.from({ length: FEWER_SHAKEN * SHAKES }, (_, k) => ({ threes: most - (k % FEWER_SHAKEN), shake: SHAKE * capacity })),
  ];
  let best = pairedBehindLongest(sorted, capacity, () => 0);
  for (const { threes, shake } of attempts) {
    if (best.length <= atLeast) break;
    if (threes < 0) continue;
    const pushed = () => shake * random();
    const bars = [
      ...pairedBehindLongest(sorted.slice(0, 3 * threes), capacity, pushed),
      ...pairedBehindLongest(sorted.slice(3 * threes), capacity, pushed),
    ];
    if (bars.length < best.length) best = bars;
  }
  return best;
}

/** Bar by bar: the longest that is left, and with it the pair that fills the bar best, else the longest that fits. `sorted` from short to long. */
function pairedBehindLongest(sorted: readonly number[], capacity: number, pushed: () => number): readonly Bar[] {
  const rest = [...sorted];
  const bars: Bar[] = [];
  for (let long = rest.pop(); long !== undefined; long = rest.pop()) {
    const room = capacity - long;
    let best: { readonly sum: number; readonly shorter: number; readonly longer: number } | null = null;
    for (let shorter = 0, longer = rest.length - 1; shorter < longer; ) {
      const sum = (rest[shorter] as number) + (rest[longer] as number);
      if (sum > room) longer--;
      else {
        const worth = sum + pushed();
        if (best === null || worth >= best.sum) best = { sum: worth, shorter, longer };
        shorter++;
      }
    }
    if (best !== null) bars.push([long, ...rest.splice(best.longer, 1), ...rest.splice(best.shorter, 1)]);
    else {
      const at = rest.findLastIndex((length) => length <= room);
      bars.push(at < 0 ? [long] : [long, ...rest.splice(at, 1)]);
    }
  }
  return bars;
}
