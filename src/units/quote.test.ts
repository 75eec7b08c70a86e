import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import { quote } from './quote.ts';

describe('quote(value)', () => {
  it.each([
    ['84 mm', '"84 mm"'],
    ['a\nb\u202ec\u200b', '"a\\u{a}b\\u{202e}c\\u{200b}"'],
    [`${'x'.repeat(47)}yz`, `"${'x'.repeat(47)}y…"`],
    [5, '5'],
    [Number.NaN, 'NaN'],
    [null, 'null'],
    [undefined, 'nothing'],
    [[1], 'a list'],
    [{ a: 1 }, 'an object'],
  ])('%o', (value, shown) => {
    expect(quote(value)).toBe(shown);
  });

  it('names what JSON cannot hold', () => {
    expect(quote(5n)).toBe('a bigint');
    expect(quote(quote)).toBe('a function');
  });

  it('never lets a control character or a broken surrogate through', () => {
    fc.assert(
      fc.property(fc.string({ unit: anyCharacter }), (text) => {
        expect(quote(text)).not.toMatch(/[\p{Cc}\p{Cs}\p{Cf}]/u);
      }),
    );
  });
});
