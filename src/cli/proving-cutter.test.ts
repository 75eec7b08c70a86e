import { describe, expect, it } from 'vitest';
import { triplets } from '../../tests/bar-instances.ts';
import { cutBars } from '../sheet/bars/cut-bars.ts';
import { provingCutter } from './proving-cutter.ts';

const QUICK = { seed: 1, work: 0 };

describe('provingCutter', () => {
  it('finds and proves what the quick rules alone leave open, and loses no piece', async () => {
    const { lengths, capacity, fewest } = triplets(3, 8);
    const quick = cutBars(lengths, capacity, QUICK);
    expect(quick.bars.length).toBeGreaterThan(fewest);
    const cut = (await provingCutter())(lengths, capacity, QUICK);
    expect([cut.bars.length, cut.atLeast]).toEqual([fewest, fewest]);
    expect(cut.bars.flat().toSorted()).toEqual(lengths.toSorted());
    for (const bar of cut.bars) expect(bar.reduce((a, b) => a + b)).toBeLessThanOrEqual(capacity);
  });

  it('raises the bound where fewer are impossible although the sums allow them', async () => {
    // Total 2.8 bars, but no two of the 55s and no three of the 40s go into one.
    const lengths = [55, 55, 50, 50, 46, 46];
    const cut = (await provingCutter())(lengths, 100, QUICK);
    expect([cut.bars.length, cut.atLeast]).toEqual([4, 4]);
  });
});
