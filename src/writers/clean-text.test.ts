import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import { asciiText, cleanText, notWinAnsi } from './clean-text.ts';

describe('cleanText(text)', () => {
  it.each([
    ['ring\r\nmidline\tpalmar', 'ring midline palmar'],
    ['a\u00a0b\u2028c\u0085d', 'a b c d'],
    ['\u0000bell\u0007\u009f', 'bell'],
    ['half \ud800 pair', 'half  pair'],
    ['\u{1d11e} clef, 45°', '\u{1d11e} clef, 45°'],
    ['\ufffe\uffff', ''],
  ])('makes %j one safe line', (text, clean) => {
    expect(cleanText(text)).toBe(clean);
  });

  // XML 1.0, production 2 (Char): what may stand in a document.
  it('leaves only what XML 1.0 allows, on one line', () => {
    fc.assert(
      fc.property(fc.string({ unit: anyCharacter, maxLength: 40 }), (text) => {
        expect(cleanText(text)).toMatch(/^[\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u);
      }),
    );
  });
});

describe('asciiText(text)', () => {
  it('writes what is not ASCII as \\uXXXX, as JSON does', () => {
    expect(asciiText('Länge\n"45°" \u{1d11e}')).toBe('L\\u00e4nge "45\\u00b0" \\ud834\\udd1e');
    expect(JSON.parse(`"${asciiText('45° \u{1d11e}')}"`)).toBe('45° \u{1d11e}');
  });
});

describe('notWinAnsi(text)', () => {
  it('takes Western European text, composed or not, and typographic signs', () => {
    expect(notWinAnsi('Größe 45° – “naïve” €5 … ½ ×')).toEqual([]);
    expect(notWinAnsi('A\u0308')).toEqual([]);
  });

  it('names each other character once', () => {
    expect(notWinAnsi('лад 中 中')).toEqual(['л', 'а', 'д', '中']);
    expect(notWinAnsi('a\u0000b\u00ad≥')).toEqual(['\u0000', '\u00ad', '≥']);
  });
});
