import { describe, expect, it } from 'vitest';
import { DIGITS } from './digits.ts';
import { averageDigit, completeDigits, estimatePipCircumference, type MeasuredDigits, type PartlyMeasured } from './estimate.ts';

function average(digit: 'index' | 'long' | 'ring' | 'little', scale = 1): PartlyMeasured {
  const { circumference } = averageDigit(digit);
  return { width: (circumference * scale) / 3.2, circumference: circumference * scale };
}
const averageHand = (scale = 1): MeasuredDigits => Object.fromEntries(DIGITS.map((digit) => [digit, average(digit, scale)]));

describe('completeDigits(digits)', () => {
  it('leaves measured lengths alone', () => {
    const ring = { ...average('ring'), palmarRoom: 25, dorsalLength: 45 };
    expect(completeDigits({ ring })).toEqual({ digits: { ring }, estimated: [], warnings: [], problems: [] });
  });

  it('estimates nothing of a child, and says in one problem all that is to be measured', () => {
    const ring = { ...average('ring'), palmarRoom: 17, dorsalLength: 30 };
    const long = { ...average('long'), dorsalLength: 32 };
    expect(completeDigits({ ring }, 'mm', true)).toMatchObject({ digits: { ring }, estimated: [], problems: [] });
    const { estimated, warnings, problems } = completeDigits({ ring, long, little: average('little') }, 'mm', true);
    expect([estimated, warnings]).toEqual([[], []]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'NO_CHILD_NORMS', where: 'digits.long.palmarRoom', kind: 'input' });
    expect(problems[0]?.message).toMatch(/Measure digits\.long\.palmarRoom, digits\.little\.palmarRoom, digits\.little\.dorsalLength\.$/);
  });

  // Buryanov & Kotiuk 2010 (second-hand): proximal phalanx 39.78 / 44.63 / 41.37 / 32.74.
  it.each([
    ['index', 39.78],
    ['long', 44.63],
    ['ring', 41.37],
    ['little', 32.74],
  ] as const)('a hand of average girth has the published %s phalanx, %d mm', (digit, expected) => {
    expect(completeDigits(averageHand()).digits[digit]?.dorsalLength).toBeCloseTo(expected, 9);
  });

  // Web to PIP crease computed from Greiner 1991 (second-hand), women and men; the ring finger's on its two sides.
  // Bugbee & Botte 1993: 14 to 20 mm and 2 to 3 mm of the length between the joints lie outside the two creases.
  it.each([
    ['index', 25.6, 27.2],
    ['long', 27.4, 29.2],
    ['ring', (19.7 + 32.1) / 2, (21.1 + 34.4) / 2],
    ['little', 17.8, 18.8],
  ] as const)('average %s palmar room is no more than either source gives', (digit, women, men) => {
    const { palmarRoom, dorsalLength } = completeDigits(averageHand()).digits[digit] ?? {
      palmarRoom: Number.NaN,
      dorsalLength: Number.NaN,
    };
    expect(palmarRoom).toBeLessThanOrEqual((women + men) / 2);
    expect(dorsalLength - palmarRoom).toBeGreaterThanOrEqual(14 + 2 - 1e-9);
    expect(palmarRoom).toBeGreaterThanOrEqual(Math.min((women + men) / 2, dorsalLength - 14 - 2) - 1e-9);
  });

  it('scales by the other length of the digit when that is known, not by girth', () => {
    const { dorsalLength, palmarRoom } = averageDigit('long');
    const fat = average('long', 1.4);
    const fromDorsal = completeDigits({ long: { ...fat, dorsalLength: dorsalLength * 1.1 } });
    expect(fromDorsal.digits.long?.palmarRoom).toBeCloseTo(palmarRoom * 1.1, 9);
    const fromPalmar = completeDigits({ long: { ...fat, palmarRoom: palmarRoom * 0.9 } });
    expect(fromPalmar.digits.long?.dorsalLength).toBeCloseTo(dorsalLength * 0.9, 9);
  });

  it('scales with the hand, but not with one swollen digit', () => {
    const child = completeDigits(averageHand(0.75));
    const swollen = completeDigits({ ...averageHand(0.75), ring: average('ring', 1.2) });
    for (const digit of DIGITS) {
      expect(child.digits[digit]?.dorsalLength).toBeCloseTo(averageDigit(digit).dorsalLength * 0.75, 9);
      expect(swollen.digits[digit]?.dorsalLength).toBeCloseTo(averageDigit(digit).dorsalLength * 0.75, 9);
    }
  });

  it('flags and warns of each estimate, with its basis and how to measure', () => {
    const { estimated, warnings } = completeDigits({ ring: { ...average('ring'), dorsalLength: 45 }, little: average('little') });
    expect(estimated.map((e) => e.where)).toEqual(['digits.ring.palmarRoom', 'digits.little.palmarRoom', 'digits.little.dorsalLength']);
    expect(warnings.map((w) => [w.code, w.where, w.value])).toEqual(estimated.map((e) => ['ESTIMATED', e.where, e.mm]));
    expect(estimated[0]?.basis).toMatch(/measured dorsal length/);
    expect(estimated[1]?.basis).toMatch(/circumferences.*from memory/);
    for (const warning of warnings) expect(warning.next).toMatch(/^Measure it: /);
    for (const estimate of estimated) expect(estimate.spread).toBeGreaterThan(0);
  });

  it('refuses an estimate outside the field\u2019s range', () => {
    const { problems, estimated } = completeDigits({ little: { ...average('little'), palmarRoom: 50 } });
    expect(problems).toMatchObject([{ code: 'NOT_ESTIMABLE', where: 'digits.little.dorsalLength', kind: 'input' }]);
    expect(estimated).toEqual([]);
  });
});

// PIP circumferences of Greiner 1991 (second-hand) and hand circumference and breadth of ANSUR II, women and men.
describe('estimatePipCircumference(hand, digit)', () => {
  it.each([
    ['women', { handCircumference: 186.55 }, [61.2, 61.3, 57.4, 50.6]],
    ['women by breadth', { handBreadth: 78.15 }, [61.2, 61.3, 57.4, 50.6]],
    ['men', { handCircumference: 212.28 }, [68.4, 69.6, 64.9, 57.8]],
    ['men by breadth', { handBreadth: 88.26 }, [68.4, 69.6, 64.9, 57.8]],
  ] as const)('gives the published means of %s from their mean hand within 1.2 mm', (_, palm, means) => {
    for (const [k, digit] of DIGITS.entries()) {
      expect(Math.abs((estimatePipCircumference({ palm }, digit)?.mm ?? 0) - (means[k] ?? 0))).toBeLessThan(1.2);
    }
  });

  it('estimates nothing without a measure of the hand, nor for a child', () => {
    expect(estimatePipCircumference({ palm: {} }, 'ring')).toBeNull();
    expect(estimatePipCircumference({ palm: { handCircumference: 140 }, child: true }, 'ring')).toBeNull();
  });
});
