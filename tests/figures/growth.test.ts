import { expect, it } from 'vitest';
import { exponentOf } from './growth.ts';

it.each([0.5, 1, 2])('the exponent of a time that grows with the power %d is found, whatever one hand takes', (power) => {
  const batches = [10, 100, 1000, 10_000].map((hands) => ({ hands, cpuSeconds: 0.003 * hands ** power }));
  expect(exponentOf(batches)).toBeCloseTo(power, 12);
});

it('a start that is the same for all makes the exponent less, and one long batch more', () => {
  const batches = [10, 100, 1000, 10_000].map((hands) => ({ hands, cpuSeconds: 0.5 + 0.005 * hands }));
  expect(exponentOf(batches)).toBeLessThan(0.9);
  expect(exponentOf(batches.slice(-2))).toBeGreaterThan(0.95);
  expect(exponentOf([...batches.slice(0, -1), { hands: 10_000, cpuSeconds: 500 }])).toBeGreaterThan(exponentOf(batches));
});
