import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import { checkCaseCode } from './case-code.ts';

function reason(text: string): string {
  const checked = checkCaseCode(text);
  return checked.ok ? 'taken' : checked.reason;
}

describe('checkCaseCode(text)', () => {
  it.each([
    'DEMO-01',
    'A1',
    '7',
    'K-2024-0112',
    '2024-0112',
    'HAND-2024-17',
    '104512',
    '120384-7',
    'ABCDEFGHIJKLMNOPQRSTUVW1',
    'MARS-12',
    '1984',
  ])('%s is taken as it is', (code) => {
    expect(checkCaseCode(code)).toEqual({ ok: true, code });
  });

  it.each(['SMITH', 'ANNA-MEYER', 'A', 'JS', 'CON'])('%s looks like a name', (text) => {
    expect(reason(text)).toMatch(/looks like a name/);
  });

  it.each([
    '1984-03-12',
    '12031984',
    '03121984',
    '19840312',
    '12-03-1984',
    '3-12-1984',
    '1984-3-12',
    'P-1984-03-12',
    'AB12031984',
    '120384',
    'X-120384',
    '840312',
    '12-03-84',
    '84-03-12',
    '12MAR1984',
    '12-MAR-84',
    '1984MAR12',
    'MARCH-12-1984',
    '2019-11-30',
  ])('%s looks like a date of birth', (text) => {
    expect(reason(text)).toMatch(/looks like a date of birth/);
  });

  it.each([
    ['', /is empty; use 1 to 24/],
    ['A1'.repeat(13), /more than 24 characters/],
    ['demo-01', /write the code in capitals/],
    ['DEMO 01', /other characters/],
    ['DEMO_01', /other characters/],
    ['../X1', /other characters/],
    ['ÄB1', /other characters/],
    ['A1\n', /other characters/],
    ['-A1', /hyphen/],
    ['A1-', /hyphen/],
    ['---', /hyphen/],
    ['COM1', /device/],
    ['LPT9', /device/],
  ])('%j is refused', (text, why) => {
    expect(reason(text)).toMatch(why);
  });

  it('takes no date of the last or this century, whatever stands before it', () => {
    const two = (n: number) => String(n).padStart(2, '0');
    const date = fc.record({
      y: fc.integer({ min: 1900, max: 2099 }),
      m: fc.integer({ min: 1, max: 12 }),
      d: fc.integer({ min: 1, max: 31 }),
    });
    fc.assert(
      fc.property(date, fc.constantFrom('', '-'), fc.constantFrom('', 'K-', 'CASE'), ({ y, m, d }, by, before) => {
        for (const parts of [
          [y, two(m), two(d)],
          [two(d), two(m), y],
          [two(m), two(d), y],
        ]) {
          expect(reason(before + parts.join(by))).toMatch(/date of birth/);
        }
      }),
    );
  });

  it('takes only what the form allows, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: anyCharacter }), fc.stringMatching(/^[A-Z0-9-]{1,26}$/)), (text) => {
        if (checkCaseCode(text).ok) expect(text).toMatch(/^(?=.*\d)[A-Z0-9][A-Z0-9-]{0,23}$/);
        else expect(reason(text).length).toBeGreaterThan(20);
      }),
    );
  });
});
