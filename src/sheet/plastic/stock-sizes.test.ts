import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../units/chance.ts';
import { type StockSizes, stockSizes } from './stock-sizes.ts';

function chosen(lengths: readonly number[], most: number, cover = 1, step = 1): readonly StockSizes[] {
  const found = stockSizes({ lengths, most, cover, step });
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join());
  return found.value;
}

/** Total cut off with these sizes from those lengths that are to be served; infinite when one is not. */
function wasteWith(sizes: readonly number[], served: readonly number[]): number {
  return served.reduce((sum, length) => sum + Math.min(...sizes.filter((s) => s >= length - 1e-9)) - length, 0);
}

function subsets(items: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return items.flatMap((item, i) => subsets(items.slice(i + 1), count - 1).map((rest) => [item, ...rest]));
}

describe('stockSizes', () => {
  it('wastes as little as the best of all sets of sizes, tried one by one', () => {
    const lengths = fc.array(fc.integer({ min: 1200, max: 1400 }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 1, max: 4 }), fc.constantFrom(0.5, 0.8, 1), (tenths, count, cover) => {
        const needed = tenths.map((t) => t / 10);
        const found = chosen(needed, count, cover);
        const sorted = needed.toSorted((a, b) => a - b);
        const longest = Math.ceil((sorted[Math.ceil(cover * sorted.length - 1e-9) - 1] as number) - 1e-9);
        const served = sorted.filter((length) => length <= longest);
        const candidates = [...new Set(served.map((length) => Math.ceil(length - 1e-9)))];
        for (const [k, answer] of found.entries()) {
          const best = Math.min(
            ...subsets(candidates, k + 1)
              .filter((sizes) => sizes.includes(longest))
              .map((sizes) => wasteWith(sizes, served)),
          );
          expect(answer.sizes).toHaveLength(k + 1);
          expect(answer.meanWaste * served.length).toBeCloseTo(best, 6);
          expect(wasteWith(answer.sizes, served)).toBeCloseTo(best, 6);
          expect(answer.cover).toBeCloseTo(served.length / needed.length, 12);
          expect(answer.served.reduce((a, b) => a + b)).toBe(served.length);
        }
      }),
    );
  });

  it('never wastes more with one size more, and serves the share that was asked for', () => {
    const random = seeded(7);
    const lengths = Array.from({ length: 500 }, () => 140 + 80 * random());
    const all = chosen(lengths, 12, 0.95);
    expect(all).toHaveLength(12);
    for (const [k, answer] of all.entries()) {
      expect(answer.cover).toBeGreaterThanOrEqual(0.95);
      expect(answer.meanWaste).toBeLessThanOrEqual((all[k - 1]?.meanWaste ?? Number.POSITIVE_INFINITY) + 1e-9);
    }
  });

  it('ends with as many sizes as there are different lengths, which waste nothing but the step', () => {
    expect(chosen([150, 160, 160, 170.2], 9).map((a) => a.sizes)).toEqual([[171], [160, 171], [150, 160, 171]]);
    expect(chosen([150, 160], 5).at(-1)?.meanWaste).toBe(0);
  });

  it.each([
    [[], 3, 1, 1],
    [[100, Number.NaN], 3, 1, 1],
    [[100, 0], 3, 1, 1],
    [[100], 0, 1, 1],
    [[100], 2.5, 1, 1],
    [[100], 51, 1, 1],
    [[100], 3, 0, 1],
    [[100], 3, 1.01, 1],
    [[100], 3, 1, 0],
  ])('refuses %j, %d sizes, share %d, step %d', (lengths, most, cover, step) => {
    const found = stockSizes({ lengths, most, cover, step });
    expect(found.ok ? null : found.problems[0]?.code).toBe('SIZES_INPUT');
  });
});
