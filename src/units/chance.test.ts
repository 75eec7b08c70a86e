import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalDistribution } from './chance.ts';

/** The density summed by Simpson's rule from 0 to z: nothing in common with the series. */
function byQuadrature(z: number): number {
  const steps = 2000;
  const h = z / steps;
  const density = (x: number) => Math.exp(-(x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(0) + density(z);
  for (let k = 1; k < steps; k++) sum += density(k * h) * (k % 2 === 1 ? 4 : 2);
  return 0.5 + (sum * h) / 3;
}

describe('normalDistribution(z)', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, area under the standard normal curve from 0 to z, plus a half.
  it.each([
    [0, 0.5],
    [0.5, 0.69146],
    [1, 0.84134],
    [1.64, 0.9495],
    [1.96, 0.975],
    [2.58, 0.99506],
    [3, 0.99865],
  ])('is the tabled area at %d: %d', (z, area) => {
    expect(normalDistribution(z)).toBeCloseTo(area, 5);
  });

  it('agrees with the density summed step by step', () => {
    for (let z = -6; z <= 6; z += 0.37) expect(Math.abs(normalDistribution(z) - byQuadrature(z))).toBeLessThan(1e-12);
  });

  it('rises, stays within 0 and 1, and mirrors about 0', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0.001, max: 10, noNaN: true }), (z, more) => {
        const p = normalDistribution(z);
        expect(p).toBeGreaterThanOrEqual(0);
        expect(normalDistribution(z + more)).toBeGreaterThanOrEqual(p - 1e-14);
        expect(p + normalDistribution(-z)).toBeCloseTo(1, 13);
      }),
    );
    expect(normalDistribution(Infinity)).toBe(1);
    expect(normalDistribution(-Infinity)).toBe(0);
    expect(() => normalDistribution(Number.NaN)).toThrow(RangeError);
  });
});
