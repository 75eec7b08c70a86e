import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipsePerimeter } from '../geometry/ellipse.ts';
import { LENGTH_SOLVED } from '../units/tolerance.ts';
import { digitSection } from './section.ts';

/** Published figures are printed to so many mm: the worked hand's depths, Nag's ellipse. */
const WORKED_PRINT = 0.0005;
const NAG_PRINT = 0.005;

function depth(width: number, circumference: number): number {
  const section = digitSection(width, circumference);
  return section.ok ? 2 * section.value.halfDepth : Number.NaN;
}

describe('digitSection(width, circumference)', () => {
  // Worked hand of docs/model.md, computed by an independent program.
  it.each([
    [17.5, 57, 18.776],
    [16.5, 53, 17.237],
    [14.5, 47, 15.414],
  ])('width %d and circumference %d give the worked depth %d', (width, circumference, expected) => {
    expect(Math.abs(depth(width, circumference) - expected)).toBeLessThanOrEqual(WORKED_PRINT);
    expect(digitSection(width, circumference)).toMatchObject({ ok: true, warnings: [], value: { halfWidth: width / 2 } });
  });

  // Ellipse perimeters computed two ways: full axes 20 x 16 mm are 56.723336 round; semi-axes (1.2, 1) are 6.925791195 round.
  it('finds the other axis of an ellipse of known perimeter, from either axis', () => {
    expect(depth(20, 56.723336)).toBeCloseTo(16, 5);
    expect(depth(16, 56.723336)).toBeCloseTo(20, 5);
    expect(depth(24, 69.25791195)).toBeCloseTo(20, 7);
    expect(depth(20, 20 * Math.PI)).toBeCloseTo(20, 8);
  });

  // Nag, Nag, Desai, Indian J Med Res 2003;117:260-269 (second-hand): breadth 13.0 and depth 11.3 beside circumference 57.0.
  it('refuses a published pair that no ellipse near a finger has', () => {
    expect(Math.abs(ellipsePerimeter(13 / 2, 11.3 / 2) - 38.22)).toBeLessThanOrEqual(NAG_PRINT);
    const section = digitSection(13, 57, 'digits.index');
    expect(section).toMatchObject({ ok: false, problems: [{ code: 'SECTION_IMPOSSIBLE', kind: 'refused', where: 'digits.index' }] });
    expect(section.ok ? '' : section.problems[0]?.message).toMatch(
      /width 13 mm and circumference 57 mm contradict each other.*of the width; 0\.5 to 1\.6/,
    );
  });

  it('refuses a circumference of at most two widths, where no ellipse is', () => {
    for (const circumference of [30, 39, 40]) {
      const section = digitSection(20, circumference);
      expect(section.ok ? '' : section.problems[0]?.message).toMatch(/must be more than twice the width, 40 mm/);
    }
  });

  it('warns between the possible and the usual, on both sides', () => {
    const at = (ratio: number) => digitSection(16, ellipsePerimeter(8, 8 * ratio));
    for (const ratio of [0.51, 0.69, 1.26, 1.59]) {
      expect(at(ratio)).toMatchObject({ ok: true, warnings: [{ code: 'DEPTH_RATIO_UNUSUAL', limit: ratio < 1 ? 0.7 : 1.25 }] });
    }
    for (const ratio of [0.71, 1, 1.24]) expect(at(ratio)).toMatchObject({ ok: true, warnings: [] });
    for (const ratio of [0.2, 0.49, 1.61, 3]) expect(at(ratio)).toMatchObject({ ok: false });
  });

  it('shows lengths in the unit asked for', () => {
    const section = digitSection(13, 57, '', 'cm');
    expect(section.ok ? '' : section.problems[0]?.message).toMatch(/^width 1\.3 cm and circumference 5\.7 cm/);
  });

  it('returns an ellipse that has the circumference', () => {
    const width = fc.double({ min: 8, max: 35, noNaN: true });
    fc.assert(
      fc.property(width, fc.double({ min: 2, max: 5, noNaN: true }), (w, times) => {
        const section = digitSection(w, w * times);
        if (section.ok) {
          const { halfWidth, halfDepth } = section.value;
          // The solver stops on the axis; the perimeter grows by at most 4 per unit of an axis.
          expect(Math.abs(ellipsePerimeter(halfWidth, halfDepth) - w * times)).toBeLessThan(4 * LENGTH_SOLVED);
        } else expect(times < 2.43 || times > 4.1).toBe(true);
      }),
    );
  });
});
