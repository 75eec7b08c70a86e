import { seeded } from '../src/units/chance.ts';

/** Bars to be cut, with the fewest that can do, known by how they were made. Whole units. */
export interface BarInstance {
  readonly name: string;
  readonly capacity: number;
  readonly lengths: readonly number[];
  readonly fewest: number;
}

type Random = () => number;
const whole = (random: Random, from: number, to: number) => from + Math.floor(random() * (to - from + 1));

function shuffled<T>(items: readonly T[], random: Random): T[] {
  const all = [...items];
  for (let i = all.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [all[i], all[j]] = [all[j] as T, all[i] as T];
  }
  return all;
}

/** Full bars cut without waste into 2 to `pieces` pieces of at least `shortest`, shuffled: that many bars are needed, since they are full. */
export function fullBars(seed: number, bars: number, capacity = 1000, pieces = 6, shortest = 40): BarInstance {
  const random = seeded(seed);
  const lengths = Array.from({ length: bars }, () => {
    const count = whole(random, 2, pieces);
    const spare = capacity - count * shortest;
    const cuts = Array.from({ length: count - 1 }, () => whole(random, 0, spare)).sort((a, b) => a - b);
    return [...cuts, spare].map((at, i) => at - (cuts[i - 1] ?? 0) + shortest);
  }).flat();
  return { name: `full bars ${bars}`, capacity, lengths: shuffled(lengths, random), fewest: bars };
}

/** Three pieces fill each bar, one long and two of 250 and more (after Falkenauer, J Heuristics 1996;2:5-30). */
export function triplets(seed: number, bars: number, capacity = 1000): BarInstance {
  const random = seeded(seed);
  const lengths = Array.from({ length: bars }, () => {
    const long = whole(random, 380, 490);
    const second = whole(random, 250, capacity - long - 250);
    return [long, second, capacity - long - second];
  }).flat();
  return { name: `triplets ${3 * bars}`, capacity, lengths: shuffled(lengths, random), fewest: bars };
}

/**
 * Pieces of 150 to 200 in bars of 1000 (after Schwerin & Wäscher, Int Trans Oper Res 1997;4:377-389), made so that the fewest is known: groups
 * of five or six that fit one bar, as many as the total length needs at least.
 */
export function narrowRange(seed: number, bars: number, capacity = 1000): BarInstance {
  const random = seeded(seed);
  const lengths: number[] = [];
  let room = 0;
  for (let k = 0; k < bars; k++) {
    for (;;) {
      const six = Array.from({ length: 6 }, () => whole(random, 150, 200));
      const sum = six.reduce((a, b) => a + b, 0);
      // A small slack in each bar, so that the sum alone shows that no bar can be saved.
      if (sum > capacity || capacity - sum > Math.floor((capacity - 1) / bars)) continue;
      lengths.push(...six);
      room += capacity - sum;
      break;
    }
  }
  if (room >= capacity) throw new RangeError('the slack adds up to a bar');
  return { name: `narrow range ${6 * bars}`, capacity, lengths: shuffled(lengths, random), fewest: bars };
}
