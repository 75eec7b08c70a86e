import { describe, expect, it } from 'vitest';
import { chanceOfLacking, LEAST_SIGMA, REAL, readingSpread, SIGMA, SURVEYED_DIFFERENTIAL } from './figures.ts';

describe('figures', () => {
  it('believes a difference of 1.96 x sqrt 2 x sigma, to a whole degree, rounded up where it is more', () => {
    // 9.7 is believed from 10; 12.47 from 13, since 12 could be error.
    expect(Math.ceil(1.96 * Math.SQRT2 * SIGMA.same)).toBe(REAL.same);
    expect(Math.ceil(1.96 * Math.SQRT2 * SIGMA.mixed)).toBe(REAL.mixed);
  });

  // Worked by hand with a table of the normal distribution: 25/0 gives 1.00 and 0.00; 25/9 gives 1.00 and 0.39.
  it.each([
    [25, 1],
    [0, 0],
    [9, 0.39],
    [10, 0.5],
  ])('takes a deficit of %d for one of 10 or more with a chance of %d', (deficit, chance) => {
    expect(chanceOfLacking(deficit)).toBeCloseTo(chance, 2);
  });

  it('is surer with more readings, but not without end', () => {
    expect(readingSpread()).toBe(SIGMA.same);
    expect(readingSpread('mixed', 1)).toBe(SIGMA.mixed);
    expect(readingSpread('mixed', 3)).toBeCloseTo(4.5 / Math.sqrt(3), 12);
    expect(readingSpread('same', 3)).toBe(LEAST_SIGMA);
    expect(readingSpread('mixed', 100)).toBe(LEAST_SIGMA);
  });
});

// Yates et al. 2023.
it('SURVEYED_DIFFERENTIAL is 11 to 30 degrees', () => {
  expect(SURVEYED_DIFFERENTIAL).toEqual({ low: 11, high: 30 });
});
