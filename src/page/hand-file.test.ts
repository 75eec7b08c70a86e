import { expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import type { HandFile } from '../hand/hand-schema.ts';
import { entriesOf, handFileOf } from './hand-file.ts';
import { emptyEntries, setEntry } from './state.ts';

it('digits beyond all numbers stay as they were typed, since a file cannot hold infinity', () => {
  const typed = '9'.repeat(400);
  const entries = { ...emptyEntries('.'), ...setEntry(emptyEntries('.'), 'handBreadth', typed) };
  expect(handFileOf(entries, 'mm').handBreadth).toBe(typed);
  expect(handFileOf({ ...entries, ...setEntry(entries, 'handBreadth', '81,5') }, 'mm').handBreadth).toBe(81.5);
});

it('the setbacks of the webs of an opened hand are kept, and are no part of a hand without them', () => {
  expect(handFileOf(entriesOf(demo as HandFile, '.'), 'mm')).toMatchObject({ webSetback: demo.webSetback });
  expect(handFileOf(emptyEntries('.'), 'mm')).not.toHaveProperty('webSetback');
});

it('what an opened hand says that the page does not ask for is kept, since advice rests on it', () => {
  const hand = {
    ...demo,
    digits: { long: demo.digits.long, ring: demo.digits.ring, little: demo.digits.little },
    absent: ['index'],
    target: { ...demo.target, boutonniere: true, centralSlip: 'torn' },
  };
  const entries = entriesOf(hand as never, '.');
  expect(handFileOf(entries, 'mm')).toMatchObject({ absent: ['index'], target: { boutonniere: true, centralSlip: 'torn' } });
  expect(handFileOf(emptyEntries('.'), 'mm')).not.toHaveProperty('absent');
});

it("a child's hand is said to be one in the file, since supervision and small parts hang on it, and comes back as one", () => {
  const child = { ...entriesOf(demo as HandFile, '.'), sizeGroup: 'child' as const };
  const file = handFileOf(child, 'mm');
  expect(file).toMatchObject({ child: true });
  expect(entriesOf(file as HandFile, '.').sizeGroup).toBe('child');
  expect(handFileOf(emptyEntries('.'), 'mm')).not.toHaveProperty('child');
});
