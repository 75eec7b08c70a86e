import { describe, expect, it } from 'vitest';
import { demoPlateHand } from '../../tests/demo-plate.ts';
import { completePalm } from './estimate-palm.ts';
import type { Hand } from './hand.ts';

const measured = demoPlateHand();
const thickness = (breadth: number, circumference: number) => (circumference - 2 * breadth) / (Math.PI - 2);
const bare: Hand = {
  ...measured,
  palm: {},
  digits: Object.fromEntries(Object.entries(measured.digits).map(([d, { mpSetback: _, ...m }]) => [d, m])),
};

describe('completePalm', () => {
  it('leaves a measured hand as it is', () => {
    const { palm, estimated, warnings } = completePalm(measured, thickness);
    expect(palm).toEqual({ ...measured.palm, setbacks: { index: 2, long: 0, ring: 5, little: 12 } });
    expect([estimated, warnings]).toEqual([[], []]);
  });
  it('estimates all that is missing, each with a warning that says how to measure it', () => {
    const { estimated, warnings, problems } = completePalm(bare, thickness);
    const where = [
      'handBreadth',
      'handCircumference',
      'metacarpalLength',
      'mpDepth',
      'mpDorsalRadius',
      'thumbWebSetback',
      ...['index', 'ring', 'little'].map((d) => `digits.${d}.mpSetback`),
    ];
    expect(estimated.map((e) => e.where)).toEqual(where);
    expect(warnings.map((w) => [w.code, w.where])).toEqual(where.map((w) => ['ESTIMATED', w]));
    expect(warnings.every((w) => w.next?.startsWith('Measure it: '))).toBe(true);
    expect(problems).toEqual([]);
  });
  it('keeps circumference over breadth in the band of ANSUR II, P5 of women to P95 of men: 2.31 to 2.49 (Gordon et al. 2014)', () => {
    for (const palm of [{}, { handBreadth: 78.15 }, { handCircumference: 212.28 }]) {
      const { handBreadth, handCircumference } = completePalm({ ...bare, palm }, thickness).palm;
      expect(handCircumference / handBreadth).toBeGreaterThan(2.31);
      expect(handCircumference / handBreadth).toBeLessThan(2.49);
    }
  });
  it('finds the other mean of ANSUR II within half of its standard deviation', () => {
    // Women 78.15 (3.84) and 186.55 (8.82), men 88.26 (4.39) and 212.28 (10.24): trade facts 9 and 10.
    expect(Math.abs(completePalm({ ...bare, palm: { handBreadth: 78.15 } }, thickness).palm.handCircumference - 186.55)).toBeLessThan(4.4);
    expect(Math.abs(completePalm({ ...bare, palm: { handCircumference: 212.28 } }, thickness).palm.handBreadth - 88.26)).toBeLessThan(2.2);
  });
  it('refuses with how to measure where an estimate leaves its range', () => {
    const { problems } = completePalm({ ...bare, palm: { handBreadth: 118 } }, thickness);
    expect(problems.map((p) => p.code)).toContain('NOT_ESTIMABLE');
    expect(problems[0]?.message).toMatch(/Measure it: /);
  });
});
