import { describe, expect, it } from 'vitest';
import { seeded, seededNormal } from '../units/chance.ts';
import { DIGITS } from './digits.ts';
import { NORM_GROUPS, type NormGroup } from './norm-groups.ts';
import { breadthCircumferenceCorrelation, type NormHand, normHands } from './norm-hands.ts';

const COUNT = 4000;
const byGroup = new Map(NORM_GROUPS.map((group) => [group, normHands(group, COUNT, seededNormal(seeded(11)))]));
function drawn(group: NormGroup) {
  const hands = byGroup.get(group);
  if (!hands) throw new Error(`no hands of ${group}`);
  return hands;
}
const quantile = (values: readonly number[], share: number) =>
  values.toSorted((a, b) => a - b)[Math.round(share * (values.length - 1))] ?? 0;
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

/** P5 and P95 of hand breadth, and P5 and P95 of circumference over breadth: ANSUR II, rows 9 and 10 of the trade facts. */
const ANSUR = {
  female: { breadth: [72, 85], ratio: [2.31, 2.48], circumference: 186.55, length: 181.08 },
  male: { breadth: [81, 96], ratio: [2.33, 2.49], circumference: 212.28, length: 193.28 },
} as const;

describe('normHands', () => {
  it.each(['female', 'male'] as const)(
    '%s hands have the percentiles of ANSUR II: those of breadth were not put in, those of the ratio only as a correlation',
    (group) => {
      const { hands } = drawn(group);
      const breadth = hands.map((h) => h.breadth);
      const [p5, p95] = ANSUR[group].breadth;
      // The table gives whole mm.
      expect(Math.abs(quantile(breadth, 0.05) - p5)).toBeLessThan(1);
      expect(Math.abs(quantile(breadth, 0.95) - p95)).toBeLessThan(1);
      const ratio = hands.map((h) => h.circumference / h.breadth);
      expect(Math.abs(quantile(ratio, 0.05) - ANSUR[group].ratio[0])).toBeLessThan(0.02);
      expect(Math.abs(quantile(ratio, 0.95) - ANSUR[group].ratio[1])).toBeLessThan(0.02);
      expect(Math.abs(mean(hands.map((h) => h.circumference)) / ANSUR[group].circumference - 1)).toBeLessThan(0.005);
      expect(Math.abs(mean(hands.map((h) => h.length)) / ANSUR[group].length - 1)).toBeLessThan(0.005);
    },
  );

  it('the hands lie within the sizes 6 to 11 of EN ISO 21420, Annex B, in circumference and length', () => {
    const { hands } = drawn('mixed');
    // Sizes 6 and 11 are made for 152/160 and 279/215; half a size step (about 13/6) reaches beyond them.
    const within = (h: NormHand) => h.circumference > 152 - 13 && h.circumference < 279 + 13 && h.length > 160 - 6 && h.length < 215 + 6;
    expect(hands.filter(within).length / hands.length).toBeGreaterThan(0.98);
    // Mean women's length lies nearest to size 8 (182), mean men's to size 9 (192).
    expect(Math.abs(mean(hands.filter((_, i) => i % 2 === 0).map((h) => h.length)) - 182)).toBeLessThan(5);
    expect(Math.abs(mean(hands.filter((_, i) => i % 2 === 1).map((h) => h.length)) - 192)).toBeLessThan(5);
  });

  it('the order of circumferences is index or long, ring, little on average (Greiner 1991: index > ring > little)', () => {
    const { hands } = drawn('mixed');
    const round = (digit: 'index' | 'ring' | 'little') => mean(hands.map((h) => h.hand.digits[digit]?.circumference ?? Number.NaN));
    expect(round('index')).toBeGreaterThan(round('ring'));
    expect(round('ring')).toBeGreaterThan(round('little'));
  });

  it.each(NORM_GROUPS)('%s: the same seed draws the same hands, another seed others, few are drawn again', (group) => {
    const one = normHands(group, 50, seededNormal(seeded(5)));
    expect(normHands(group, 50, seededNormal(seeded(5)))).toEqual(one);
    expect(normHands(group, 50, seededNormal(seeded(6)))).not.toEqual(one);
    expect(drawn(group).redrawn / COUNT).toBeLessThan(0.02);
  });

  // Web to PIP crease computed from Greiner 1991, women and men; the ring finger's is the mean of its two sides.
  it.each([
    ['female', { index: 25.6, long: 27.4, ring: (19.7 + 32.1) / 2, little: 17.8 }],
    ['male', { index: 27.2, long: 29.2, ring: (21.1 + 34.4) / 2, little: 18.8 }],
  ] as const)('%s: the palmar room averages what its source gives', (group, published) => {
    const { hands } = drawn(group);
    for (const digit of DIGITS) {
      const rooms = hands.map((h) => h.hand.digits[digit]?.palmarRoom ?? Number.NaN);
      expect(Math.abs(mean(rooms) - published[digit])).toBeLessThan(0.1);
    }
  });

  it('breadth and circumference go closely together', () => {
    for (const sex of ['female', 'male'] as const) {
      expect(breadthCircumferenceCorrelation(sex)).toBeGreaterThan(0.85);
      expect(breadthCircumferenceCorrelation(sex)).toBeLessThan(0.95);
    }
  });
});
