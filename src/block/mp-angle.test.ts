import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mpAngle } from './mp-angle.ts';

const deficit = fc.integer({ min: 1, max: 120 });
/** Rounding of a quotient in the judge's own formula, degrees. */
const ROUNDING = 1e-9;

// Plate model, "Angle", and trade facts row 33 (mid position 45; 45 to 90; 0 to 45): common practice, no source.
describe('mpAngle(extensionDeficit, flexionDeficit)', () => {
  it.each([
    [40, 40, 45, [45, 45]],
    [20, 40, 30, [0, 45]],
    [50, 10, 75, [45, 90]],
    [30, 20, 55, [45, 90]],
    [2, 40, 5, [0, 45]],
    [40, 2, 90, [45, 90]],
    [0.1, 0.2, 30, [0, 45]],
    [41, 40, 50, [45, 90]],
    [40, 41, 45, [0, 45]],
  ] as const)('for %d and %d is %d degrees in %o', (e, f, degrees, range) => {
    expect(mpAngle(e, f)).toMatchObject({ degrees, range });
  });

  it('is the formula rounded up to the next 5, inside its range', () => {
    fc.assert(
      fc.property(deficit, deficit, (e, f) => {
        const { degrees, range } = mpAngle(e, f);
        const exact = 45 + (45 * (e - f)) / (e + f);
        expect(degrees % 5).toBe(0);
        expect(degrees).toBeGreaterThanOrEqual(exact - ROUNDING);
        expect(degrees - exact).toBeLessThan(5);
        expect(degrees).toBeGreaterThanOrEqual(range[0]);
        expect(degrees).toBeLessThanOrEqual(range[1]);
      }),
    );
  });

  it('never falls when extension lacks more, never rises when flexion lacks more', () => {
    fc.assert(
      fc.property(deficit, deficit, deficit, (e, f, more) => {
        expect(mpAngle(e + more, f).degrees).toBeGreaterThanOrEqual(mpAngle(e, f).degrees);
        expect(mpAngle(e, f + more).degrees).toBeLessThanOrEqual(mpAngle(e, f).degrees);
      }),
    );
  });

  it('says that the interpolation has no source, and what to try next', () => {
    expect(mpAngle(20, 40).reasoning).toContain('Common practice, no published source for the interpolation');
    expect(mpAngle(20, 40).reasoning).toContain('rounded up');
    expect(mpAngle(40, 40).reasoning).not.toContain('rounded up');
    expect(mpAngle(20, 40).next).toContain('common practice, no source');
  });

  it.each([
    [0, 10],
    [10, 0],
    [-1, 10],
    [Number.NaN, 10],
    [10, Number.POSITIVE_INFINITY],
  ])('throws for %d and %d', (e, f) => {
    expect(() => mpAngle(e, f)).toThrow(RangeError);
  });
});
