import { describe, expect, it } from 'vitest';
import { SURVEYED_DIFFERENTIAL, whatNext } from './differential.ts';

// Merritt & Jarrell 2020; Yates et al. 2023.
it('SURVEYED_DIFFERENTIAL is 11 to 30 degrees', () => {
  expect(SURVEYED_DIFFERENTIAL).toEqual({ low: 11, high: 30 });
});

// Steps of 5 degrees, then the next block: common practice, no source.
describe('whatNext(differential, following)', () => {
  it.each([
    [20, 'b', 'first a differential of 25 degrees, then b.'],
    [12.5, 'b', 'first a differential of 17.5 degrees, then b.'],
    [28, 'b', 'first a differential of 30 degrees, then b.'],
    [30, 'b', 'no larger differential (30 degrees is the most that surveyed therapists use), then b.'],
    [35, undefined, 'no larger differential (30 degrees is the most that surveyed therapists use), then measure again and talk it over'],
  ])('for %d degrees and %s', (differential, following, expected) => {
    expect(whatNext(differential, following)).toContain(expected);
  });
});
