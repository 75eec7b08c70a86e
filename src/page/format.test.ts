import { expect, it } from 'vitest';
import { retyped } from './format.ts';

const toInches = { unit: 'in', decimal: '.' } as const;

it('a bare number is written anew in the new unit, anything else stays', () => {
  expect(retyped('25,4', { unit: 'mm' }, toInches)).toBe('1');
  expect(retyped('1.5', { unit: 'cm' }, { unit: 'mm', decimal: ',' })).toBe('15');
  expect(retyped('17.5 mm', { unit: 'mm' }, toInches)).toBe('17.5 mm');
  // 11/16 in are 17.4625 mm; the inch is 25.4 mm exactly.
  expect(retyped('11/16', { unit: 'in' }, { unit: 'mm', decimal: ',' })).toBe('17,46');
});

it('a number too large to be written stays as it is', () => {
  for (const text of ['9'.repeat(40), '9'.repeat(400)]) expect(retyped(text, { unit: 'cm' }, toInches)).toBe(text);
});
