import { describe, expect, it } from 'vitest';
import { nearest } from './typed-name.ts';

describe('nearest(text, candidates)', () => {
  const keys = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
  it.each([
    ['widht', 'width'],
    ['Width', 'width'],
    ['circumfrence', 'circumference'],
    ['palmarroom', 'palmarRoom'],
    ['dorsal-length', 'dorsalLength'],
    ['wdth', 'width'],
  ])('%s: %s', (text, meant) => {
    expect(nearest(text, keys)).toBe(meant);
  });

  it.each(['', 'thumb', 'x', 'length', '__proto__', 'w'.repeat(100_000)])('%s: none', (text) => {
    expect(nearest(text, keys)).toBeNull();
  });
});
