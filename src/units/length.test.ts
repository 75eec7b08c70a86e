import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, LENGTH_UNITS, MM_PER, parseLength } from './length.ts';

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
      fc.string({ unit: 'binary' }),
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
