import { describe, expect, it } from 'vitest';
import { commentProblem } from './case-problems.ts';

describe('commentProblem(text, where)', () => {
  it.each([
    'Told Mrs Example to wear it',
    'per Dr. Example',
    'write to a@example.org',
    'call 0123 456 7890',
    'No. 756.1234.5678.97',
    '(0123) 4567890',
    'DOB 1.2.1984',
    'd.o.b. known',
    'born in 1984',
  ])('refuses %j', (text) => {
    expect(commentProblem(text, 'seen.comment')).toMatchObject([{ code: 'COMMENT_TELLS_WHO', where: 'seen.comment' }]);
  });

  it.each([
    undefined,
    '',
    'Loosened; redness gone after 15 min.',
    'Operated 2026-01-05, 12 weeks ago',
    'Operated 12.03.2026 20 mm scar',
    'PIP 20/90 25/85 30/80 by another rater',
    'Measured 30 35 40 45 50 degrees',
    'Missed two days, worn 6 h, drawn again with 177.4 mm',
    'Dr wants it kept',
  ])('lets %j stand', (text) => {
    expect(commentProblem(text, 'seen.comment')).toEqual([]);
  });
});
