import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import {
  formatLength,
  LENGTH_UNITS,
  MM_PER,
  nearestIsoRingSize,
  parseLength,
  parseRingSize,
  ukRingCircumference,
  usRingCircumference,
} from './length.ts';

/** Rounding of one multiplication and one division, relative. */
const ROUNDING = 1e-12;

function mm(input: number | string, unit: 'mm' | 'cm' | 'in' = 'mm', options = {}): number {
  const parsed = parseLength(input, unit, options);
  if (!parsed.ok) throw new Error(parsed.reason);
  return parsed.mm;
}

function reason(input: number | string, options = {}): string {
  const parsed = parseLength(input, 'mm', options);
  return parsed.ok ? `read as ${parsed.mm} mm` : parsed.reason;
}

describe('parseLength(input, unit) reads', () => {
  // 1 in = 25.4 mm: CSS Values and Units; ISO 32000 user space.
  it.each([
    [84, 84],
    ['84', 84],
    [' 84 mm ', 84],
    ['84,5', 84.5],
    ['84.5 mm', 84.5],
    ['84.5MM', 84.5],
    ['8,4 cm', 84],
    ['8.4 centimetres', 84],
    ['.5 in', 12.7],
    ['1.5in', 38.1],
    ['1 inch', 25.4],
    ['5/16 in', 7.9375],
    ['3 5/16 in', 84.1375],
    ['3 5/16"', 84.1375],
    ['3-5/16″', 84.1375],
    ["3 5/16''", 84.1375],
    ['3 5 / 16 in.', 84.1375],
    ['½ in', 12.7],
    ['3½ in', 88.9],
    ['3 ¾”', 95.25],
    ['2⅝ in', 66.675],
    ['3 5⁄16 in', 84.1375],
    ['84\u00a0mm', 84],
    ['84\u202fmm', 84],
  ])('%j as %d mm', (input, expected) => {
    expect(mm(input)).toBeCloseTo(expected, 10);
  });

  it('a comma as a decimal comma, never as a thousands separator', () => {
    expect(mm('1,234')).toBe(1.234);
    expect(mm('1.234')).toBe(1.234);
  });

  it('a bare number in the agreed unit, and a unit of its own before that', () => {
    expect(mm(8.4, 'cm')).toBe(84);
    expect(mm('3 1/4', 'in')).toBeCloseTo(82.55, 10);
    expect(mm('84 mm', 'in')).toBe(84);
    expect(parseLength('84', 'mm')).toMatchObject({ notation: 'number' });
    expect(parseLength('84 mm', 'mm')).toMatchObject({ notation: 'length' });
  });

  it('zero only where zero is a length', () => {
    expect(reason(0)).toBe('0 is zero');
    expect(reason('0 mm')).toBe('"0 mm" is zero');
    expect(Object.is(mm(-0, 'mm', { zero: true }), 0)).toBe(true);
    expect(mm('0', 'mm', { zero: true })).toBe(0);
  });

  it('ring sizes only where a circumference is asked for', () => {
    expect(parseLength('ring 54', 'in', { ringSizes: true })).toEqual({ ok: true, mm: 54, notation: 'ringIso' });
    expect(reason('ring 54')).toMatch(/^"ring 54" is a ring size/);
    expect(parseLength('US 7 1/2', 'mm', { ringSizes: true })).toMatchObject({ ok: true, notation: 'ringUs' });
    expect(reason('US 54', { ringSizes: true })).toMatch(/^"US 54" is not a US ring size; those run from 0 to 25/);
  });
});

describe('parseLength(input, unit) refuses', () => {
  it.each([
    ['', /is empty/],
    ['   ', /is empty/],
    ['abc', /is not a number/],
    ['NaN', /is not a number/],
    ['Infinity', /is not a number/],
    ['0x10', /is not a number/],
    ['mm', /is not a number/],
    [Number.NaN, /NaN is not a number/],
    [Number.POSITIVE_INFINITY, /Infinity is not a number/],
    ['1e5', /exponent/],
    ['1.5E+3 mm', /exponent/],
    ['1,234.5', /more than one decimal sign.*1234\.5/],
    ['1.234,5', /more than one decimal sign/],
    ['1.2.3', /more than one decimal sign/],
    ['1 234', /two numbers/],
    ['84.', /ends in a decimal sign/],
    ['84, mm', /ends in a decimal sign/],
    [-5, /is negative/],
    ['-5', /is negative/],
    ['−5 mm', /is negative/],
    ['+5', /plus sign/],
    ['84\u200b', /unknown unit "\\u\{200b\}"/],
    ['8\u200b4', /hidden character/],
    ['５４', /is not a number/],
    ['84 ft', /unknown unit "ft"; use mm, cm or in/],
    ['5/16 ft', /unknown unit "ft"/],
    ['1/0 in', /not a fraction/],
    ['3 21/16 in', /not a fraction/],
    ['1,5/2', /not a fraction/],
    ['84 mm mm', /unknown unit "mm mm"/],
    ['9'.repeat(30), /too large/],
    ['9'.repeat(500), /longer than the 40 characters/],
  ])('%j', (input, why) => {
    expect(reason(input)).toMatch(why);
  });

  it('anything else without throwing, and what it reads is positive and finite', () => {
    const piece = fc.constantFrom('1', '84', '.', ',', '/', ' ', '-', 'mm', 'in', '"', 'ring ', 'US ', 'UK L', '½', 'e', '0', '\u2044');
    const text = fc.oneof(
      fc.string({ unit: anyCharacter }),
      fc.array(piece, { maxLength: 8 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(fc.oneof(text, fc.double()), fc.constantFrom(...LENGTH_UNITS), fc.boolean(), (input, unit, ringSizes) => {
        const parsed = parseLength(input, unit, { ringSizes });
        if (parsed.ok) expect(parsed.mm > 0 && Number.isFinite(parsed.mm)).toBe(true);
        else expect(parsed.reason.length).toBeGreaterThan(5);
      }),
    );
  });
});

describe('formatLength(mm, unit)', () => {
  it('shows a length in the unit asked for, without idle zeros', () => {
    expect(formatLength(84.5, 'mm')).toBe('84.5 mm');
    expect(formatLength(84.5, 'cm')).toBe('8.45 cm');
    expect(formatLength(84.1375, 'in')).toBe('3.3125 in');
  });

  it('is read back as what was shown', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.constantFrom(...LENGTH_UNITS), (hundredths, unit) => {
        const shown = formatLength(hundredths / 100, unit);
        const back = mm(shown, 'mm');
        const lastPlace = { mm: 0.005, cm: 0.005, in: 0.00005 * 25.4 }[unit];
        expect(Math.abs(back - hundredths / 100)).toBeLessThanOrEqual(lastPlace * (1 + ROUNDING) + ROUNDING * back);
        expect(Math.abs(mm(back, unit) / MM_PER[unit] / back - 1)).toBeLessThan(ROUNDING);
      }),
    );
  });
});

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
