import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { boxOf, unionBox } from '../geometry/path.ts';
import { DIGITS } from '../hand/digits.ts';
import { type DrawnHand, drawHand, type HandView } from './draw-hand.ts';
import type { DrawableHand } from './hand-shape.ts';

const HAND: DrawableHand = { digits: demo.digits };
const LEFT_PALM: HandView = { side: 'left', face: 'palm', fan: 0 };

const tipX = (drawn: DrawnHand, digit: (typeof DIGITS)[number]) => drawn.fingers.get(digit)?.tip.x ?? Number.NaN;
const length = (drawn: DrawnHand, place: Parameters<DrawnHand['places']['get']>[0]) => {
  const [a, b] = drawn.places.get(place)?.points ?? [];
  return a && b ? Math.hypot(b.x - a.x, b.y - a.y) : Number.NaN;
};

describe('drawHand: a flat hand in the proportions of its measures', () => {
  it.each([
    ['left', 'palm', 1],
    ['left', 'back', -1],
    ['right', 'palm', -1],
    ['right', 'back', 1],
  ] as const)('%s %s: the thumb is on its side, and on the other with the fingertips down', (side, face, sign) => {
    const up = drawHand(HAND, { side, face });
    expect(Math.sign(tipX(up, 'index') - up.thumbTip.x)).toBe(sign);
    expect(Math.sign(tipX(up, 'little') - tipX(up, 'index'))).toBe(sign);
    const down = drawHand(HAND, { side, face, tips: 'down' });
    expect(Math.sign(tipX(down, 'little') - tipX(down, 'index'))).toBe(-sign);
    expect(down.fingers.get('long')?.tip.y).toBeLessThan(down.wrist.y);
  });

  it('draws every measured length as long as it is', () => {
    const drawn = drawHand(HAND, LEFT_PALM);
    for (const digit of DIGITS) {
      expect(length(drawn, `${digit}.width`)).toBeCloseTo(demo.digits[digit].width, 1);
      expect(length(drawn, `${digit}.palmarRoom`)).toBeCloseTo(demo.digits[digit].palmarRoom, 6);
      expect(length(drawn, `${digit}.dorsalLength`)).toBeCloseTo(demo.digits[digit].dorsalLength, 6);
    }
    const measured = drawHand({ ...HAND, webSetback: { 'index-long': 1, 'long-ring': 0, 'ring-little': 11 } }, LEFT_PALM);
    expect(length(measured, 'webSetback.ring-little')).toBeCloseTo(11, 6);
    expect(length(measured, 'webSetback.long-ring')).toBeCloseTo(0, 6);
    const palm = drawHand({ ...HAND, palm: { metacarpalLength: 88, thumbWebSetback: 30 } }, LEFT_PALM);
    expect(length(palm, 'metacarpalLength')).toBeCloseTo(88, 6);
    expect(length(palm, 'thumbWebSetback')).toBeCloseTo(30, 6);
  });

  it('marks the place that is asked for, and only that', () => {
    const plain = drawHand(HAND, LEFT_PALM).drawing.items;
    expect(plain.some((item) => item.role === 'place')).toBe(false);
    for (const place of drawHand(HAND, LEFT_PALM).places.keys()) {
      const marked = drawHand(HAND, { ...LEFT_PALM, marked: place }).drawing.items.filter((item) => item.role === 'place');
      expect(marked.map((item) => item.kind === 'shape' && item.title)).toEqual([place]);
    }
  });

  it('shows nails on the back only, and one for each finger and the thumb', () => {
    const nails = (face: HandView['face']) =>
      drawHand(HAND, { side: 'left', face }).drawing.items.flatMap((item) =>
        item.kind === 'shape' && item.role === 'nail' ? item.paths : [],
      );
    expect(nails('back')).toHaveLength(5);
    expect(nails('palm')).toHaveLength(0);
  });

  it('stays inside its area, whatever is known of the hand', () => {
    const hands: readonly DrawableHand[] = [
      HAND,
      { digits: {} },
      { digits: { ring: { width: 9 } } },
      { digits: { long: { palmarRoom: 8 }, little: { circumference: 110, width: 35 } }, palm: { handBreadth: 45 } },
      { digits: {}, absent: ['ring'] },
    ];
    for (const hand of hands) {
      for (const face of ['palm', 'back'] as const) {
        const { drawing, fingers } = drawHand(hand, { side: 'right', face, treated: 'long' });
        const ink = unionBox(drawing.items.flatMap((item) => (item.kind === 'shape' ? item.paths.map((path) => boxOf([path])) : [])));
        for (const value of Object.values(ink)) expect(Number.isFinite(value)).toBe(true);
        const { minX, minY, maxX, maxY } = drawing.extents;
        expect([minX, minY]).toEqual([0, 0]);
        expect(ink.minX >= 0 && ink.minY >= 0 && ink.maxX <= maxX && ink.maxY <= maxY).toBe(true);
        expect(fingers.size).toBe(hand.absent ? 3 : 4);
      }
    }
  });

  it('is the same for the same hand', () => {
    expect(drawHand(HAND, LEFT_PALM)).toEqual(drawHand(HAND, LEFT_PALM));
  });
});
