import { expect, it } from 'vitest';
import { handFileOf } from './hand-file.ts';
import { emptyEntries, setEntry } from './state.ts';

it('digits beyond all numbers stay as they were typed, since a file cannot hold infinity', () => {
  const typed = '9'.repeat(400);
  const entries = { ...emptyEntries('.'), ...setEntry(emptyEntries('.'), 'handBreadth', typed) };
  expect(handFileOf(entries, 'mm').handBreadth).toBe(typed);
  expect(handFileOf({ ...entries, ...setEntry(entries, 'handBreadth', '81,5') }, 'mm').handBreadth).toBe(81.5);
});
