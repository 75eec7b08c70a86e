import { expect, it } from 'vitest';
import gains from '../../../../fixtures/case-gains.json' with { type: 'json' };
import type { CaseFile } from '../../../record/case-schema.ts';
import { courseAdvice } from '../../../record/course/course-advice.ts';
import { EMPTY_VISIT } from '../../state.ts';
import { aheadOf, harmSteps } from './course-now.ts';

const grown = gains as unknown as CaseFile;
const fresh = { ...grown, visits: [] };
const leads = (file: CaseFile, typed: object) => {
  const ahead = aheadOf(file, { ...EMPTY_VISIT, date: '2026-06-01', ...typed });
  return ahead && { counts: ahead.counts, action: courseAdvice(ahead.record, 'en').steps[0]?.action };
};

it('a stop waits neither for the motion nor for a day that can be read', () => {
  for (const file of [fresh, grown]) {
    expect(leads(file, { infection: 'yes' })).toEqual({ counts: 'harm', action: 'stop' });
    expect(leads(file, { colour: 'stays', date: '31.' })).toEqual({ counts: 'harm', action: 'stop' });
    expect(leads(file, { infection: 'yes', lacks: '25', bends: '95' })).toEqual({ counts: 'all', action: 'stop' });
  }
});

it('what is whole counts whole, and no harm is no stop', () => {
  expect(leads(grown, { infection: 'no', lacks: '12', bends: '98' })?.counts).toBe('all');
  expect(leads(grown, { infection: 'no' })?.action).not.toBe('stop');
});

it('broken skin pauses before the motion is read, and motion that was not measured does not', () => {
  for (const file of [fresh, grown]) {
    const asked = (typed: object) => {
      const ahead = aheadOf(file, { ...EMPTY_VISIT, date: '2026-06-01', ...typed });
      return ahead && harmSteps(courseAdvice(ahead.record, 'en').steps).map(({ rule }) => rule);
    };
    expect(asked({ skin: 'broken' })).toEqual(['PAUSE']);
    expect(asked({ infection: 'yes' })).toEqual(['STOP_NOW']);
    expect(asked({ skin: 'ok', infection: 'no', pain: '0' })).toEqual([]);
  }
});
