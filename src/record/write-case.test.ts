import { describe, expect, it } from 'vitest';
import { type CourseVisit, courseFile, courseVisit, sampleCourse } from '../../tests/sample-course.ts';
import type { VisitFile } from './case-schema.ts';
import { nextSteps } from './course/next-steps.ts';
import { readCase } from './read-case.ts';
import { caseText, withAmendment } from './write-case.ts';

const VISITS: readonly CourseVisit[] = [
  [0, '40/95', { made: 'strip for extension, 20' }],
  [7, '55/95', { skin: 'ok' }],
  [14, '33/95'],
];
const record = sampleCourse(VISITS);
const visit = (...given: CourseVisit) => courseVisit(given) as unknown as VisitFile;

function amended(index: number, becomes: VisitFile | null, note = {}) {
  const changed = withAmendment(record.file, index, becomes, note);
  const text = changed.ok ? caseText(changed.value) : changed;
  const read = text.ok ? readCase(JSON.parse(text.value)) : text;
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('withAmendment(file, index, becomes, note)', () => {
  it('corrects a visit and keeps what stood before, with the day and the reason', () => {
    const now = amended(1, visit(7, '35/95', { skin: 'ok' }), { why: 'Read off wrongly.', on: '2026-01-13' });
    expect(now.visits.map(({ goniometry: { pip } }) => pip.active.extensionDeficit)).toEqual([40, 35, 33]);
    expect(now.file.amendments).toEqual([
      { kind: 'corrected', on: '2026-01-13', why: 'Read off wrongly.', was: record.file.visits[1], becameDate: '2026-01-12' },
    ]);
  });

  it('what was amended has no part in the advice: it is that of the course as it now stands', () => {
    const now = amended(1, null);
    expect(nextSteps(now)).toEqual(nextSteps(sampleCourse(VISITS.toSpliced(1, 1))));
    const corrected = amended(1, visit(7, '35/95', { skin: 'ok' }));
    expect(nextSteps(corrected)).toEqual(nextSteps(sampleCourse(VISITS.with(1, [7, '35/95', { skin: 'ok' }]))));
  });

  it('withdraws a visit, and keeps every earlier state when it is done again', () => {
    const once = amended(1, visit(7, '36/95'));
    const twice = withAmendment(once.file, 1, null, {});
    expect(twice.ok && twice.value.visits).toHaveLength(2);
    expect(twice.ok && twice.value.amendments?.map(({ kind, was }) => [kind, was.goniometry.pip.active.extensionDeficit])).toEqual([
      ['corrected', 55],
      ['withdrawn', 36],
    ]);
  });

  it('a corrected day moves the visit to its place', () => {
    const now = amended(1, visit(21, '30/95'));
    expect(now.visits.map(({ date }) => date)).toEqual(['2026-01-05', '2026-01-19', '2026-01-26']);
    expect(now.file.visits.map(({ date }) => date)).toEqual(['2026-01-05', '2026-01-19', '2026-01-26']);
  });

  it('is refused when the file holds no more, and a reason that tells who somebody is is not read', () => {
    const amendments = Array.from({ length: 400 }, () => ({ kind: 'withdrawn' as const, was: visit(0, '40/95') }));
    expect(withAmendment({ ...record.file, amendments }, 0, null, {})).toMatchObject({ ok: false, problems: [{ code: 'CASE_FULL' }] });
    const told = courseFile(VISITS, { amendments: [{ kind: 'withdrawn', why: 'Mrs Example again', was: courseVisit([0, '40/95']) }] });
    expect(readCase(told)).toMatchObject({ ok: false, problems: [{ code: 'COMMENT_TELLS_WHO', where: 'amendments.0.why' }] });
  });
});
