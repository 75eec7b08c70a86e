import { expect, it } from 'vitest';
import { NO_HISTORY, recorded, rewrittenHistory, undone } from './history.ts';
import { rewritten } from './rewrite-entries.ts';
import { emptyEntries, setEntry, typedAt } from './state.ts';

const MM = { unit: 'mm', decimal: '.' } as const;
const INCHES = { unit: 'in', decimal: '.' } as const;
const WIDTH = 'digits.ring.width';

it('what is undone after another unit was chosen comes back as the length that it was, and the step says it as it would now be typed', () => {
  const blank = emptyEntries('.');
  const first = { ...blank, ...setEntry(blank, WIDTH, '25.4') };
  const second = { ...first, ...setEntry(first, WIDTH, '12.7') };
  const typedOnce = { ...recorded(NO_HISTORY, blank, first, { where: WIDTH, value: '25.4' }), open: null };
  const history = recorded(typedOnce, first, second, { where: WIDTH, value: '12.7' });
  const anew = rewrittenHistory(history, (entries) => rewritten(entries, MM, INCHES));
  const back = undone(anew);
  // The inch is 25.4 mm exactly.
  expect(back && typedAt(back.entries, WIDTH)).toBe('1');
  expect(back?.about).toEqual({ where: WIDTH, value: '0.5' });
  expect(undone(back?.history ?? NO_HISTORY)?.about.value).toBe('1');
});

it('the words of a choice stay as they were', () => {
  const blank = emptyEntries('.');
  const chosen = { ...blank, target: 'ring' as const };
  const history = recorded(NO_HISTORY, blank, chosen, { where: 'target.digit', value: 'ring finger' });
  expect(undone(rewrittenHistory(history, (entries) => rewritten(entries, MM, INCHES)))?.about.value).toBe('ring finger');
});
