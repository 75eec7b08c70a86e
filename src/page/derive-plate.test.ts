import { expect, it } from 'vitest';
import { derive } from './derive.ts';
import { type Entries, emptyEntries, setEntry } from './state.ts';

const SETTINGS = { unit: 'mm', language: 'en' } as const;
const DIGITS = { index: ['17.5', '57'], long: ['17.5', '57'], ring: ['16.5', '53'] } as const;

it('the plate that is shown on an average hand takes in the fingers that are asked for, as the one that is printed does', () => {
  const blank = emptyEntries('.');
  const motion = { ...blank.motion, active: { lacks: '30', bends: '70' } };
  const typed: Entries = { ...blank, target: 'long', side: 'left', stop: 'none', motion };
  const digitsOf = (entries: Entries) => {
    const { drawn, asked, average } = derive(entries, SETTINGS);
    if (drawn?.kind !== 'plate') throw new Error('no plate');
    expect(drawn.design.digits).toEqual(asked);
    return { average, digits: drawn.design.digits };
  };
  expect(digitsOf(typed)).toEqual({ average: true, digits: ['index', 'long', 'ring'] });
  let measured = typed;
  for (const [digit, [width = '', round = '']] of Object.entries(DIGITS)) {
    measured = { ...measured, ...setEntry(measured, `digits.${digit}.width`, width) };
    measured = { ...measured, ...setEntry(measured, `digits.${digit}.circumference`, round) };
  }
  expect(digitsOf(measured)).toEqual({ average: false, digits: ['index', 'long', 'ring'] });
  const little = { ...typed, ...setEntry(typed, 'digits.little.width', '14.5') };
  expect(digitsOf(little)).toEqual({ average: true, digits: ['index', 'long', 'ring', 'little'] });
});
