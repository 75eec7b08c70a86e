import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixed, isWritable, plain, rounded } from './number.ts';

describe('fixed(value, decimals)', () => {
  it('is digits, one point and that many decimals for every number it takes, and throws on every other', () => {
    fc.assert(
      fc.property(fc.double(), fc.integer({ min: 0, max: 12 }), (value, decimals) => {
        if (!isWritable(value)) expect(() => fixed(value, decimals)).toThrow(RangeError);
        else {
          const text = fixed(value, decimals);
          expect(text).toMatch(decimals === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${decimals}}$`));
          expect(text).not.toMatch(/^-0(\.0*)?$/);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + Math.abs(value) * 1e-15);
        }
      }),
    );
  });

  it.each([
    [-0.00001, 4, '0.0000'],
    [-0, 2, '0.00'],
    [1e-9, 4, '0.0000'],
    [1234.5, 0, '1235'],
    [1e11, 1, '100000000000.0'],
  ])('writes %d with %d decimals as %s', (value, decimals, text) => {
    expect(fixed(value, decimals)).toBe(text);
  });
});

describe('plain(value)', () => {
  it.each([
    [20, '20'],
    [84.5, '84.5'],
    [0.005, '0.01'],
    [100, '100'],
    [-0.001, '0'],
  ])('shows %d as %s', (value, text) => {
    expect(plain(value)).toBe(text);
  });
});

it('rounded is the number that fixed writes', () => {
  expect(rounded(1.23456, 3)).toBe(1.235);
});
