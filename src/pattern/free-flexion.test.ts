import { describe, expect, it } from 'vitest';
import { freeFlexionOver } from './free-flexion.ts';

/** Worked figures of docs/model.md, rule 12: free space 0.5 and one, two or three layers of 2.4 mm. */
describe('freeFlexionOver(halfDepth, above, toCrease)', () => {
  it.each([
    [9.388, 1, 3, 93.71],
    [9.388, 3, 3, 92.68],
    [7.707, 1, 3, 98.59],
    [7.707, 2, 3, 97.09],
  ])('half depth %d, %d layers, %d mm to the crease: %d degrees', (halfDepth, layers, toCrease, angle) => {
    expect(freeFlexionOver(halfDepth, 0.5 + 2.4 * layers, toCrease)).toBeCloseTo(angle, 2);
  });

  it('is less under a thicker sheet, round a deeper finger and nearer to the crease', () => {
    const usual = freeFlexionOver(9, 2.9, 5);
    expect(freeFlexionOver(9, 4, 5)).toBeLessThan(usual);
    expect(freeFlexionOver(10, 2.9, 5)).toBeLessThan(usual);
    expect(freeFlexionOver(9, 2.9, 4)).toBeLessThan(usual);
  });
});
