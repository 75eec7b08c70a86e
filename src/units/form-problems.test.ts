import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { formWords } from './form-problems.ts';

const form = z.strictObject({
  id: z
    .string()
    .max(3)
    .regex(/^[a-z]+$/, 'small letters'),
  n: z.number().min(1).max(9),
  kind: z.enum(['a', 'b']),
});
const words = (json: unknown) => {
  const read = form.safeParse(json);
  return read.success ? [] : read.error.issues.map((issue) => formWords(issue, json));
};

describe('formWords(issue, json)', () => {
  it.each([
    [{ id: 'x', n: 1 }, 'is missing; expected one of "a", "b"'],
    [{ id: 7, n: 1, kind: 'a' }, 'is 7; expected text'],
    [{ id: 'X', n: 1, kind: 'a' }, 'is "X"; expected small letters'],
    [{ id: 'abcd', n: 1, kind: 'a' }, 'is "abcd"; expected at most 3 characters'],
    [{ id: 'x', n: 0, kind: 'a' }, 'is 0; expected at least 1'],
    [[], 'is a list; expected an object'],
  ])('of %o is: %s', (json, said) => {
    expect(words(json)).toEqual([said]);
  });

  it('names five unknown keys, made visible, and counts the rest', () => {
    const keys = Object.fromEntries(Array.from({ length: 1000 }, (_, k) => [`\u001b${k}`, 1]));
    const [said = ''] = words({ id: 'x', n: 1, kind: 'a', ...keys });
    expect(said).toContain('"\\u{1b}0"');
    expect(said).toMatch(/and 995 more$/);
    expect(said).not.toMatch(/\p{Cc}/u);
  });
});
