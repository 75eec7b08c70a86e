import { describe, expect, it } from 'vitest';
import { EXTENSION, FLEXION, next, rules, step, weekly } from '../../../tests/course-steps.ts';
import { type CourseNotes, type CourseVisit, sampleCourse } from '../../../tests/sample-course.ts';
import { nextSteps } from './next-steps.ts';

// The edges are common practice, no source, unless a rule says otherwise.

describe('GAINING', () => {
  it('from three visits over 14 days, where the slope is over 1.64 of its standard error', () => {
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '30/95'],
        [14, '20/95'],
      ]),
    ).toEqual(['GAINING']);
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '30/95'],
        [13, '20/95'],
      ]),
    ).toEqual(['WAIT']);
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [14, '20/95'],
      ]),
    ).toEqual(['WAIT']);
    // Days 0, 7, 14: standard error 7 x 3.5 / sqrt 98 = 2.4749 a week; 1.64 of it is 4.0588: 8.1176 in 14 days.
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '35.9/95'],
        [14, '31.8/95'],
      ]),
    ).toEqual(['GAINING']);
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '36/95'],
        [14, '32/95'],
      ]),
    ).toEqual(['WAIT']);
    // Two raters: 4.5 in place of 3.5.
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '35.9/95', { rater: 'A' }],
        [14, '31.8/95', { rater: 'B' }],
      ]),
    ).toEqual(['WAIT']);
  });

  it('not while the other motion is really worse', () => {
    const visits: readonly CourseVisit[] = [
      [0, '40/95', { made: EXTENSION }],
      [7, '30/90'],
      [14, '20/85'],
    ];
    expect(rules(visits)).toEqual(['PAUSE', 'SWITCH']);
  });

  it('says degrees a week with their range, and the day of the goal with its own; none beyond 12 weeks', () => {
    // 4 degrees a week exactly; days 0 to 42, standard error 7 x 3.5 / sqrt(7^2 x 28) = 0.6614.
    const { slope } = next(weekly(['40/95', '36/95', '32/95', '28/95', '24/95', '20/95', '16/95'], EXTENSION));
    expect(slope?.degreesPerWeek).toBeCloseTo(4, 9);
    expect(slope?.standardError).toBeCloseTo(0.66144, 4);
    expect(slope?.low).toBeCloseTo(4 - 1.64 * 0.66144, 4);
    expect(slope?.high).toBeCloseTo(4 + 1.64 * 0.66144, 4);
    // 16 to 5 degrees at 4 a week: 19.25 days, so the 20th after 16 February.
    expect(slope?.goalBy).toEqual({ date: '2026-03-08', earliest: '2026-03-04', latest: '2026-03-15' });
    const slow = next(weekly(['60/95', '59/95', '58/95', '57/95', '56/95', '55/95', '54/95'], EXTENSION)).slope;
    expect(slow?.goalBy).toBeNull();
  });

  it('looks at the last six weeks, or the last six visits where they reach back further, and never past the making', () => {
    const long = weekly(['60/95', '50/95', '40/95', '30/95', '30/95', '30/95', '30/95', '30/95', '30/95', '30/95'], EXTENSION);
    expect(next(long).slope).toMatchObject({ visits: 7, degreesPerWeek: 0 });
    const rare: readonly CourseVisit[] = [0, 21, 42, 63, 84, 105, 126].map((day) => [day, '40/95', day === 0 ? { made: EXTENSION } : {}]);
    expect(next(rare).slope).toMatchObject({ visits: 6, between: ['2026-01-26', '2026-05-11'] });
    const changed: readonly CourseVisit[] = [
      ...weekly(['60/95', '50/95', '40/95'], EXTENSION),
      [21, '35/95', { made: 'strip for extension, 25' }],
      [28, '34/95'],
    ];
    expect(next(changed).slope).toMatchObject({ visits: 2 });
  });

  it('keeps a course that gains 4 degrees every week', () => {
    for (let visits = 4; visits <= 7; visits++) {
      const course = weekly(['40/95', '36/95', '32/95', '28/95', '24/95', '20/95', '16/95'].slice(0, visits), EXTENSION, { wear: 6 });
      expect(rules(course), `${visits} visits`).toEqual(['GAINING']);
    }
  });
});

describe('PLATEAU, REFER and REVIEW', () => {
  /** A motion that stands, with the least drift (half a degree a week lost) that four weeks of weekly readings can tell from a gain of 1. */
  const still = (count: number, made: string = EXTENSION, notes: CourseNotes = { wear: 6 }) =>
    weekly(
      Array.from({ length: count }, (_, k) => `${40 + k / 2}/95`),
      made,
      notes,
    );

  it('a plateau after four weeks and four visits with at least half the wear', () => {
    expect(rules(still(4))).toEqual(['WAIT']);
    expect(rules(still(5))).toEqual(['PLATEAU']);
    expect(rules(still(5, EXTENSION, {}))).toEqual(['WAIT']);
    expect(rules(still(5).map(([day, pip, notes]) => [day - Math.floor(day / 28), pip, notes ?? {}]))).toEqual(['WAIT']);
    expect(rules(still(5).map(([day, pip, notes]) => [day, pip, day === 14 ? { wear: 1.9 } : (notes ?? {})]))).toEqual(['WAIT']);
  });

  it('a motion that does not move at all is told from a gain of 1 a week after six weeks', () => {
    const flat = (count: number) =>
      weekly(
        Array.from({ length: count }, () => '40/95'),
        EXTENSION,
        { wear: 6 },
      );
    // Weekly readings of 5 and 6 weeks: 1.28 standard errors are 1.07 and 0.85 a week.
    expect(rules(flat(6))).toEqual(['WAIT']);
    expect(rules(flat(7))).toEqual(['PLATEAU']);
  });

  it.each([
    // Days 0 to 28: standard error 7 x 3.5 / sqrt(7^2 x 10) = 1.1068 a week; 1 - 1.28 of it is -0.4167.
    ['-0.42 a week', ['40/95', '40.42/95', '40.84/95', '41.26/95', '41.68/95'], true],
    ['-0.41 a week', ['40/95', '40.41/95', '40.82/95', '41.23/95', '41.64/95'], false],
  ])('slope and 1.28 standard errors under 1 a week: %s', (_, pips, stands) => {
    expect(rules(weekly(pips, EXTENSION, { wear: 6 })).includes('PLATEAU')).toBe(stands);
  });

  it('changes one thing: the differential up by 5 to 10 within 11 to 30, else the next arrangement of the plan', () => {
    const change = (made: string) => step(still(5, made), 'PLATEAU')?.figures;
    expect(change(EXTENSION)).toMatchObject({ change: { what: 'differential', toward: 'extension', from: 20, to: [25, 30] } });
    expect(change('strip for extension, 25')).toMatchObject({ change: { to: [30, 30] } });
    expect(change('strip for extension, 26')).toMatchObject({ change: null });
    const ladder = [{ kind: 'differential', from: 26, to: 30 }, { kind: 'refer' }] as const;
    const blocks = nextSteps(sampleCourse(still(5, 'strip for extension, 26')), ladder).steps[0];
    expect(blocks?.figures).toMatchObject({ nextBlocks: [{ kind: 'refer' }] });
  });

  it("a plate's angle goes toward 90 where extension lags and toward 0 where flexion does, inside the MP range that was measured", () => {
    const plate = (pip: string, mpPassive = '0/90') =>
      step(
        weekly(
          Array.from({ length: 7 }, () => pip),
          'plate at 50',
          { wear: 6, mpPassive },
        ),
        'PLATEAU',
      )?.figures;
    expect(plate('40/85')).toMatchObject({ change: { what: 'mpAngle', toward: 'extension', from: 50, to: [55, 60] } });
    expect(plate('20/55')).toMatchObject({ change: { what: 'mpAngle', toward: 'flexion', from: 50, to: [40, 45] } });
    expect(plate('40/85', '0/57')).toMatchObject({ change: { to: [55, 57] } });
    expect(plate('40/85', '0/54')).toMatchObject({ change: null });
    expect(plate('20/55', '44/90')).toMatchObject({ change: { to: [44, 45] } });
    expect(plate('20/55', '46/90')).toMatchObject({ change: null });
  });

  it('refers after two changes that were each given four weeks', () => {
    const course = (second: number): readonly CourseVisit[] => {
      const made = (day: number) =>
        day === 0 ? EXTENSION : day === 28 ? 'strip for extension, 25' : day === second ? 'strip for extension, 30' : undefined;
      return [0, 7, 14, 21, 28, 35, 42, 49, second, second + 7, second + 14, second + 21, second + 28].map((day) => {
        const device = made(day);
        return [day, `${40 + Math.max(0, day - second) / 14}/95`, { wear: 6, ...(device && { made: device }) }];
      });
    };
    expect(rules(course(56))).toEqual(['REFER']);
    expect(step(course(56), 'REFER')).toMatchObject({ action: 'refer', figures: { changes: 2 } });
    expect(rules(course(55))).toEqual(['PLATEAU']);
  });

  it('a review after six weeks where nothing is certain', () => {
    // One visit in three weeks, so never four with the wear.
    const rare = (last: number): readonly CourseVisit[] => [
      [0, '40/95', { made: EXTENSION }],
      [21, '39/95'],
      [last, '38/95'],
    ];
    expect(rules(rare(42))).toEqual(['REVIEW']);
    expect(rules(rare(41))).toEqual(['WAIT']);
  });

  it('waits for the next visit within two weeks', () => {
    expect(step([[0, '40/95', { made: FLEXION }]], 'WAIT')?.figures).toEqual({ nextBy: '2026-01-19', visits: 0 });
    expect(next([]).steps).toEqual([]);
  });
});

describe('a device made at the last visit', () => {
  it('is not judged by what was seen of the one before; harm still is', () => {
    const changed = (notes: CourseNotes): readonly CourseVisit[] => [
      ...weekly(['40/95', '40/95', '40/95', '40/95'], EXTENSION, { wear: 6 }),
      [28, '40/95', { made: 'strip for extension, 25', wear: 6, ...notes }],
    ];
    expect(rules(changed({ fits: false, redirects: false, wear: 0 }))).toEqual(['WAIT']);
    expect(rules(changed({ skin: 'broken' }))[0]).toBe('PAUSE');
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [14, '44/95'],
        [28, '50/95', { made: FLEXION }],
      ])[0],
    ).toBe('PAUSE');
  });
});
