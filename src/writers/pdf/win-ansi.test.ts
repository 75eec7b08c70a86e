import { describe, expect, it } from 'vitest';
import { notWinAnsi } from './win-ansi.ts';

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
