import { describe, expect, it } from 'vitest';
import { readStripOptions } from './read-options.ts';

const messages = (values: unknown) => {
  const read = readStripOptions([{ origin: 'options.json', values }]);
  return read.ok ? [] : read.problems.map((p) => p.message);
};

describe('readStripOptions(sources), given what nobody would', () => {
  it.each([1e12, 1e308, '1000000000000'])('says the range for a stretch of %s, which is too large to be written', (stretch) => {
    expect(messages({ stretch })[0]).toContain('-0.1 to 0.3 is allowed');
  });

  it('counts a hundred thousand unknown keys instead of naming each', () => {
    const keys = Object.fromEntries(Array.from({ length: 100_000 }, (_, k) => [`key${k}`, 1]));
    expect(messages(keys)).toHaveLength(61);
    expect(messages(keys)[0]).toContain('100000 keys');
  });
});
