import { fillBar, kindsOf } from './fill-bar.ts';
import { type Bar, barOf } from './greedy-bars.ts';

/** Bars that are taken apart at a time. */
const APART = 6;

/**
 * Takes a few bars apart, the emptiest one among them, and fills them anew one after the other as full as possible; keeps what has the
 * larger sum of squared fillings, so that the emptiest bar runs empty in the end. Stops at `atLeast` bars or after `rounds`.
 */
export function repackBars(start: readonly Bar[], capacity: number, atLeast: number, rounds: number, random: () => number): readonly Bar[] {
  const bars = start.map((bar) => ({ bar, filled: total(bar) })).sort((a, b) => a.filled - b.filled);
  for (let round = 0; round < rounds && bars.length > atLeast; round++) {
    const apart = new Set<number>([0]);
    const wanted = Math.min(bars.length, 2 + Math.floor(random() * (APART - 1)));
    while (apart.size < wanted) apart.add(Math.floor(random() ** 2 * bars.length));
    const taken = [...apart].sort((a, b) => b - a).map((i) => bars.splice(i, 1)[0] as (typeof bars)[number]);
    const filled = refill(
      taken.flatMap(({ bar }) => bar),
      capacity,
      random,
    );
    for (const each of score(filled) >= score(taken) && filled.length <= taken.length ? filled : taken) insert(bars, each);
  }
  return bars.map(({ bar }) => bar);
}

type Filled = { readonly bar: Bar; readonly filled: number };

/** Keeps the emptiest first; behind those as full as it. */
function insert(bars: Filled[], bar: Filled): void {
  let at = bars.length;
  while (at > 0 && (bars[at - 1] as Filled).filled > bar.filled) at--;
  bars.splice(at, 0, bar);
}

function total(bar: Bar): number {
  let sum = 0;
  for (const length of bar) sum += length;
  return sum;
}

function score(bars: readonly Filled[]): number {
  return bars.reduce((sum, { filled }) => sum + filled * filled, 0);
}

/** Bar by bar as full as possible, each begun with a piece by chance, and so in another way each time. */
function refill(lengths: readonly number[], capacity: number, random: () => number): readonly Filled[] {
  const kinds = kindsOf(lengths);
  const counts = [...kinds.counts];
  const made: Filled[] = [];
  let left = lengths.length;
  while (left > 0) {
    let nth = Math.floor(random() * left);
    let must = 0;
    while (nth >= (counts[must] as number)) nth -= counts[must++] as number;
    const chosen = fillBar({ lengths: kinds.lengths, counts }, capacity, must, 300);
    for (const [i, count] of chosen.entries()) counts[i] = (counts[i] as number) - count;
    const bar = barOf(kinds.lengths, chosen);
    left -= bar.length;
    made.push({ bar, filled: total(bar) });
  }
  return made;
}
