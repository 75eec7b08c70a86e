import ellipe from '@stdlib/math-base-special-ellipe';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipseArcLength, ellipsePerimeter, parameterOfNormal, semiAxisFromPerimeter } from './ellipse.ts';
import { completeE, incompleteE } from './elliptic.ts';

const axis = fc.double({ min: 3, max: 30, noNaN: true });

describe('ellipsePerimeter(a, b)', () => {
  // Mathematics, computed two ways (trade facts, row 27).
  it.each([
    [1.2, 1, 6.925791195],
    [1.5, 1, 7.932719795],
    [2, 1, 9.68844822],
    [3, 1, 13.36489322],
    [10, 8, 56.723336],
    [1, 0, 4],
    [0, 0, 0],
  ])('(%d, %d) is %d', (a, b, perimeter) => {
    expect(ellipsePerimeter(a, b)).toBeCloseTo(perimeter, 6);
    expect(ellipsePerimeter(b, a)).toBe(ellipsePerimeter(a, b));
  });
});

describe('semiAxisFromPerimeter(a, perimeter)', () => {
  it('undoes the perimeter', () => {
    fc.assert(
      fc.property(axis, axis, (a, b) => {
        expect(Math.abs((semiAxisFromPerimeter(a, ellipsePerimeter(a, b)) ?? Number.NaN) - b)).toBeLessThan(1e-8);
      }),
    );
  });

  it('has no solution at or under four semi-axes, nor for what is no length', () => {
    for (const perimeter of [40, 39, 0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(semiAxisFromPerimeter(10, perimeter)).toBeNull();
  });

  it('gives the index PIP joint of Nag et al. 2003 a depth that no finger has: breadth 13.0, circumference 57.0', () => {
    // Nag, Nag, Desai, Indian J Med Res 2003;117:260-269: their depth of 11.3 makes an ellipse 38.22 round.
    expect(ellipsePerimeter(6.5, 11.3 / 2)).toBeCloseTo(38.22, 2);
    expect((semiAxisFromPerimeter(6.5, 57) ?? 0) / 6.5).toBeGreaterThan(1.6);
  });
});

describe('ellipseArcLength', () => {
  it('sums to the perimeter, whichever axis is longer and wherever it starts', () => {
    fc.assert(
      fc.property(
        axis,
        axis,
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (a, b, start, part) => {
          const whole = ellipseArcLength(a, b, start, start + part) + ellipseArcLength(a, b, start + part, start + 2 * Math.PI);
          expect(Math.abs(whole - ellipsePerimeter(a, b))).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('is the length of many short chords', () => {
    const a = 9;
    const b = 7;
    let sum = 0;
    const at = (normal: number) => {
      const t = parameterOfNormal(a, b, normal);
      return { x: a * Math.cos(t), y: b * Math.sin(t) };
    };
    const n = 4000;
    for (let k = 0; k < n; k++) {
      const p = at(0.3 + (k * 2) / n);
      const q = at(0.3 + ((k + 1) * 2) / n);
      sum += Math.hypot(p.x - q.x, p.y - q.y);
    }
    expect(ellipseArcLength(a, b, 0.3, 2.3)).toBeCloseTo(sum, 5);
  });
});

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
