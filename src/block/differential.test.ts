import { expect, it } from 'vitest';
import { SURVEYED_DIFFERENTIAL } from './differential.ts';

// Yates et al. 2023.
it('SURVEYED_DIFFERENTIAL is 11 to 30 degrees', () => {
  expect(SURVEYED_DIFFERENTIAL).toEqual({ low: 11, high: 30 });
});
