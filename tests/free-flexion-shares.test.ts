import { describe, expect, it } from 'vitest';
import { blocks } from '../src/block/library.ts';
import type { Hand } from '../src/hand/hand.ts';
import { normHands } from '../src/hand/norm-hands.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { layStrip } from '../src/pattern/strip/lay-strip.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import { seeded, seededNormal } from '../src/units/chance.ts';
import { times, tried } from './by-night.ts';

const COUNT = times(20, 40);

/** A drawn hand made smaller all over, as of a child. */
function scaled(hand: Hand, by: number): Hand | null {
  const digits = Object.fromEntries(
    Object.entries(hand.digits).map(([digit, { width, circumference, palmarRoom, dorsalLength }]) => [
      digit,
      { width: width * by, circumference: circumference * by, palmarRoom: palmarRoom * by, dorsalLength: dorsalLength * by },
    ]),
  );
  const read = readHand({ ...hand.source, child: true, digits });
  // The smallest of the smallest have a little finger under the 8 mm that are read.
  return read.ok ? read.value : null;
}

/** Shares of strips, over all blocks, that leave some digit less than 90 and less than 100 degrees. */
function shares(hands: readonly Hand[]): { readonly refused: number; readonly under90: number; readonly under100: number } {
  const laid = hands.flatMap((hand) => blocks().map((block) => layStrip(hand, block, DEFAULT_STRIP_OPTIONS)));
  const least = laid.flatMap((one) => (one.ok ? [Math.min(...Object.values(one.value.freePip))] : []));
  const share = (limit: number) => least.filter((angle) => angle < limit - 0.05).length / least.length;
  return { refused: laid.length - least.length, under90: share(90), under100: share(100) };
}

/**
 * The shares as they are since a strip keeps its least width when its corners are rounded: before, up to 1.5 mm of it were missing on a
 * quarter to a third of small hands, and the freedom that was promised then (under 100: 3, 10, 20, 60 %) was of strips too narrow to hold.
 */
describe('free PIP flexion on hands drawn from the norms (sources in norm-hands.ts)', () => {
  const groups = [
    ['female', 1, 0, 0.06],
    ['male', 1, 0, 0.03],
    ['female', 0.8, 0.02, 0.12],
    ['female', 0.7, 0.04, 0.27],
    ['female', 0.6, 0.21, 0.72],
  ] as const;
  it.each(tried(groups, ([, by]) => by === 0.7))(
    '%s, times %d: no block is refused for its relief; under 90 degrees at most %d of all strips, under 100 at most %d',
    (group, by, most90, most100) => {
      const { hands } = normHands(group, COUNT, seededNormal(seeded(11)));
      const sized = hands.flatMap(({ hand }) => (by === 1 ? hand : (scaled(hand, by) ?? [])));
      expect(sized.length).toBeGreaterThan(COUNT / 2);
      const found = shares(sized);
      expect(found.refused).toBe(0);
      expect(found.under90).toBeLessThanOrEqual(most90);
      expect(found.under100).toBeLessThanOrEqual(most100);
    },
  );
});
