import { describe, expect, it } from 'vitest';
import { demoPlateHand } from '../../../tests/demo-plate.ts';
import type { Hand } from '../../hand/hand.ts';
import { digitRow } from './digit-row.ts';
import { DEFAULT_PLATE_OPTIONS as options } from './plate-options.ts';

const hand = demoPlateHand();
const offset = options.skinClearance + options.thickness / 2;

function row(of: Hand, ...digits: readonly ('index' | 'long' | 'ring' | 'little')[]) {
  const found = digitRow(of, digits, options);
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('\n'));
  return found.value;
}

/** All digits round, 20 mm thick: the path is then a belt over equal discs. */
const round: Hand = {
  ...hand,
  digits: Object.fromEntries(
    Object.entries(hand.digits).map(([digit, measures]) => [digit, { ...measures, width: 20, circumference: 20 * Math.PI * (1 + 1e-12) }]),
  ),
};

describe('digitRow', () => {
  it('over equal discs is half of a circle and the straights between their middles (belt-length formula)', () => {
    const pitch = 20 + options.webGap;
    for (const digits of [['index'], ['index', 'long'], ['index', 'long', 'ring', 'little']] as const) {
      expect(row(round, ...digits).length).toBeCloseTo((digits.length - 1) * pitch + Math.PI * (10 + offset), 5);
    }
  });
  it('over one digit is half of its circumference and pi times the offset (Steiner)', () => {
    expect(row(hand, 'ring').length).toBeCloseTo(53 / 2 + Math.PI * offset, 8);
  });
  it('passes over the digits in order, each midline within its stretch, the stretches without a gap', () => {
    const { digits, length } = row(hand, 'index', 'long', 'ring', 'little');
    let before = 0;
    for (const d of digits) {
      expect(d.from).toBeCloseTo(before, 9);
      expect(d.along).toBeGreaterThan(d.from);
      expect(d.along).toBeLessThan(d.to);
      before = d.to;
    }
    expect(before).toBeCloseTo(length, 9);
  });
  it('has its point at a distance along it, going on round the border digits beyond its ends', () => {
    const { pointAt, length, digits } = row(round, 'index', 'long');
    expect(pointAt(digits[1]?.along ?? 0).x).toBeCloseTo(digits[1]?.x ?? 0, 6);
    expect(pointAt(0)).toMatchObject({ x: expect.closeTo(-10 - offset, 6), y: expect.closeTo(-10, 6) });
    const below = pointAt(length + (Math.PI / 2) * (10 + offset));
    expect(below.x).toBeCloseTo(digits[1]?.x ?? 0, 4);
    expect(below.y).toBeCloseTo(-20 - offset, 4);
  });
});
