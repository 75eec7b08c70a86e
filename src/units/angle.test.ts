import { describe, expect, it } from 'vitest';
import { parseDegrees } from './angle.ts';

describe('parseDegrees(input)', () => {
  it.each([
    [25, 25],
    [0, 0],
    ['25', 25],
    ['12,5', 12.5],
    [' 25° ', 25],
    ['25 deg', 25],
    ['25 Degrees', 25],
  ])('%j is %d', (input, degrees) => {
    expect(parseDegrees(input)).toEqual({ ok: true, degrees });
  });

  it.each([-1, Number.NaN, Number.NEGATIVE_INFINITY, '', '-25', '25 rad', '1e1', '2.5.1', '25 mm', '9'.repeat(99)])(
    '%j is refused',
    (input) => {
      expect(parseDegrees(input).ok).toBe(false);
    },
  );
});
