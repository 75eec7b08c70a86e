import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MpAngle, mpAngle } from './mp-angle.ts';

const deficit = fc.integer({ min: 1, max: 120 });
/** Rounding of a quotient in the judge's own formula, degrees. */
const ROUNDING = 1e-9;

/** The plate of two deficits where nothing limits the MP joint: there always is one. */
function free(e: number, f: number): MpAngle {
  const angle = mpAngle(e, f);
  if (!angle) throw new Error(`no angle for ${e} and ${f}`);
  return angle;
}

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
        const { degrees, range, wanted } = free(e, f);
        expect(wanted).toBe(degrees);
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
        expect(free(e + more, f).degrees).toBeGreaterThanOrEqual(free(e, f).degrees);
        expect(free(e, f + more).degrees).toBeLessThanOrEqual(free(e, f).degrees);
      }),
    );
  });

  // Kept inside the measured passive MP motion, never across 45: common practice, no source.
  it.each([
    ['moved up to what the joint reaches', 10, 40, { from: 30, to: 90 }, 30, [30, 45]],
    ['moved down to what the joint reaches', 30, 20, { from: 0, to: 50 }, 50, [45, 50]],
    ['in fives where a five lies inside', 40, 10, { from: 0, to: 63 }, 60, [45, 63]],
    ['between two fives where none lies inside', 40, 10, { from: 46, to: 48 }, 48, [46, 48]],
    ['at 45 exactly, the last that favours flexion', 10, 40, { from: 45, to: 90 }, 45, [45, 45]],
    ['as wanted inside the motion', 20, 40, { from: 20, to: 60 }, 30, [20, 45]],
    ['by the bound that is known', 30, 20, { to: 50 }, 50, [45, 50]],
  ] as const)('%s', (_, e, f, motion, degrees, range) => {
    expect(mpAngle(e, f, motion)).toMatchObject({ degrees, range });
  });

  it.each([
    ['10/40 with passive MP 50 to 90 has no plate that favours flexion', 10, 40, { from: 50, to: 90 }],
    ['one degree past 45', 10, 40, { from: 46, to: 90 }],
    ['one degree short of 45', 40, 10, { from: 0, to: 44 }],
    ['equal deficits out of reach of the middle', 30, 30, { from: 50, to: 90 }],
  ] as const)('null where the joint does not reach its side of 45: %s', (_, e, f, motion) => {
    expect(mpAngle(e, f, motion)).toBeNull();
  });

  it('keeps under the most that is allowed', () => {
    expect(mpAngle(40, 10, {}, 45)).toMatchObject({ degrees: 45, wanted: 75 });
  });

  it('lies inside the motion and on its side of 45, whatever is measured', () => {
    fc.assert(
      fc.property(deficit, deficit, fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 90 }), (e, f, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const angle = mpAngle(e, f, { from, to });
        const reaches = e > f ? to >= 45 : f > e ? from <= 45 : from <= 45 && to >= 45;
        expect(angle !== null).toBe(reaches);
        if (!angle) return;
        expect(angle.degrees).toBeGreaterThanOrEqual(from);
        expect(angle.degrees).toBeLessThanOrEqual(to);
        expect(Math.sign(angle.degrees - 45) * Math.sign(e - f)).toBeGreaterThanOrEqual(0);
      }),
    );
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
