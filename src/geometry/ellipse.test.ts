import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipseArcLength, ellipsePerimeter, parameterOfNormal, semiAxisFromPerimeter } from './ellipse.ts';

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
