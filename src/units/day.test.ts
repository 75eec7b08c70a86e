import { expect, it } from 'vitest';
import { isDay, tidyDay } from './day.ts';

it.each([
  ['2026-03-31', '2026-03-31'],
  [' 2026-03-31 ', '2026-03-31'],
  ['31.3.2026', '2026-03-31'],
  ['31. 03. 2026', '2026-03-31'],
  ['4.3.2026', '2026-03-04'],
  ['31/3/2026', '2026-03-31'],
  ['3/31/2026', '2026-03-31'],
  ['5/5/2026', '2026-05-05'],
])('tidyDay: %s is %s', (text, day) => expect(tidyDay(text)).toBe(day));

it.each(['3/4/2026', '31.2.2026', '31/31/2026', '31.3.26', 'today', '', '2026-13-01'])('tidyDay leaves %s as it stands', (text) =>
  expect(tidyDay(text)).toBe(text),
);

it('isDay: only days that exist, as 2026-03-31', () => {
  expect(['2024-02-29', '2026-12-31'].every(isDay)).toBe(true);
  expect(['2026-02-29', '2026-3-31', '2026-00-10', '', '2026-03-31T00:00'].some(isDay)).toBe(false);
});
