import ellipe from '@stdlib/math-base-special-ellipe';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeE, incompleteE } from './elliptic.ts';

describe('completeE(m)', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 17.1.
  it.each([
    [0, Math.PI / 2],
    [0.1, 1.5307576369],
    [0.25, 1.4674622093],
    [0.5, 1.350643881],
    [0.9, 1.1047747327],
    [1, 1],
  ])('is the tabulated value at m = %d', (m, value) => {
    expect(completeE(m)).toBeCloseTo(value, 9);
  });

  it('agrees with @stdlib/math-base-special-ellipe over the whole range', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (m) => {
        expect(Math.abs(completeE(m) - ellipe(m))).toBeLessThan(1e-14);
      }),
    );
  });

  it.each([-0.001, 1.001, Number.NaN])('refuses m = %d', (m) => {
    expect(() => completeE(m)).toThrow(RangeError);
  });
});

describe('incompleteE(phi, m)', () => {
  it('is the integral of sqrt(1 - m sin²), by Simpson with 2000 steps', () => {
    const simpson = (phi: number, m: number) => {
      const n = 2000;
      const f = (t: number) => Math.sqrt(1 - m * Math.sin(t) ** 2);
      let sum = f(0) + f(phi);
      for (let k = 1; k < n; k++) sum += (k % 2 === 0 ? 2 : 4) * f((k * phi) / n);
      return (sum * phi) / (3 * n);
    };
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), fc.double({ min: 0, max: 0.95, noNaN: true }), (phi, m) => {
        expect(Math.abs(incompleteE(phi, m) - simpson(phi, m))).toBeLessThan(1e-9);
      }),
    );
  });

  it('reaches the complete integral at a quarter turn and adds two of them each half turn', () => {
    expect(incompleteE(Math.PI / 2, 0.3)).toBeCloseTo(completeE(0.3), 13);
    expect(incompleteE(0.7 + Math.PI, 0.3)).toBeCloseTo(incompleteE(0.7, 0.3) + 2 * completeE(0.3), 13);
  });
});
