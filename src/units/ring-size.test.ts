import { describe, expect, it } from 'vitest';
import { nearestIsoRingSize, parseRingSize, ukRingCircumference, usRingCircumference } from './ring-size.ts';

describe('ring sizes', () => {
  // ISO 8653: the size number is the inner circumference in mm; published diameters are given to 0.1 mm.
  it.each([
    [54, 17.2],
    [60, 19.1],
    [72, 22.9],
  ])('ISO %d has an inner diameter of %d mm', (size, diameter) => {
    const parsed = parseRingSize(`ring ${size}`);
    expect(parsed).toEqual({ ok: true, mm: size, notation: 'ringIso' });
    expect(Number((size / Math.PI).toFixed(1))).toBe(diameter);
    expect(nearestIsoRingSize(Math.PI * diameter)).toBe(size);
  });

  // Customary US formula: size 0 is 11.63 mm in diameter, one size is 2.5535 mm of circumference.
  it('US sizes follow the customary formula', () => {
    expect((usRingCircumference(0) / Math.PI).toFixed(2)).toBe('11.63');
    expect((usRingCircumference(8) - usRingCircumference(7)).toFixed(4)).toBe('2.5535');
    expect(usRingCircumference(7.5)).toBeCloseTo((usRingCircumference(7) + usRingCircumference(8)) / 2, 10);
  });

  // BS EN 28653, second-hand: C is 40 mm, 1.25 mm a letter.
  it('UK letters count from C', () => {
    expect(ukRingCircumference('C')).toBe(40);
    expect(ukRingCircumference('L')).toBe(51.25);
    expect(ukRingCircumference('l', true)).toBe(51.875);
  });

  it.each([
    ['ISO 54', 54],
    ['EU 54,5', 54.5],
    ['ring54', 54],
    ['US 7', usRingCircumference(7)],
    ['us 7.5', usRingCircumference(7.5)],
    ['US 7 1/2', usRingCircumference(7.5)],
    ['UK L', 51.25],
    ['UK L 1/2', 51.875],
  ])('%s is read', (text, mm) => {
    expect(parseRingSize(text)).toMatchObject({ ok: true, mm });
  });

  it.each(['ring 7', 'ring', 'ISO abc', 'ring 17.2 mm', 'US 54', 'US', 'US -1', 'UK 7', 'UK LL', 'ring 1e2'])('%s is refused', (text) => {
    expect(parseRingSize(text)).toMatchObject({ ok: false });
  });

  it.each(['54', '54 mm', '', 'wring 5'])('%j is no ring size at all', (text) => {
    expect(parseRingSize(text)).toBeNull();
  });

  it('nearestIsoRingSize takes positive numbers only', () => {
    expect(nearestIsoRingSize(54.49)).toBe(54);
    expect(nearestIsoRingSize(54.5)).toBe(55);
    expect(() => nearestIsoRingSize(0)).toThrow(RangeError);
    expect(() => nearestIsoRingSize(Number.NaN)).toThrow(RangeError);
    expect(() => nearestIsoRingSize(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});
