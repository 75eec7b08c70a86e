import { describe, expect, it } from 'vitest';
import { type CourseNotes, type CourseVisit, sampleCourse } from '../../../tests/sample-course.ts';
import { nextSteps } from './next-steps.ts';

// The edges are common practice, no source, unless a rule says otherwise.

const EXTENSION = 'strip for extension, 20';
const FLEXION = 'strip for flexion, 20';
const next = (visits: readonly CourseVisit[], rest = {}) => nextSteps(sampleCourse(visits, rest));
const rules = (visits: readonly CourseVisit[]) => next(visits).steps.map(({ rule }) => rule);
const step = (visits: readonly CourseVisit[], rule: string) => next(visits).steps.find((one) => one.rule === rule);
/** A visit a week with these motions, the first of which is the making. */
const weekly = (pips: readonly string[], made: string, notes: CourseNotes = {}): readonly CourseVisit[] =>
  pips.map((pip, k) => [7 * k, pip, k === 0 ? { made, ...notes } : notes]);

describe('RELAPSE and WEAN', () => {
  const gained: readonly CourseVisit[] = [
    [0, '30/95', { made: EXTENSION }],
    [28, '5/95', { wear: 6 }],
    [35, '5/95', { weaning: true, wear: 5 }],
  ];
  it('next step down when nothing was lost; wear is not judged', () => {
    expect(rules([...gained, [42, '9/95', { weaning: true, wear: 0, wearAgreed: 6 }]])).toEqual(['WEAN']);
  });

  it.each([
    ['5 at two visits', ['10/95', '10/95'], true],
    ['4.9 at the first', ['9.9/95', '10/95'], false],
    ['4.9 at the second', ['10/95', '9.9/95'], false],
    ['10 at one', ['5/95', '15/95'], true],
    ['9.9 at one', ['5/95', '14.9/95'], false],
  ])('%s', (_, [one, two], relapses) => {
    const visits: readonly CourseVisit[] = [
      ...gained,
      [42, String(one), { weaning: true, wear: 4 }],
      [49, String(two), { weaning: true, wear: 3 }],
    ];
    expect(rules(visits)[0]).toBe(relapses ? 'RELAPSE' : 'WEAN');
    if (relapses) expect(step(visits, 'RELAPSE')).toMatchObject({ action: 'wean', figures: { motion: 'extension', again: false } });
  });

  it('names the hours at which motion last held', () => {
    expect(step([...gained, [42, '16/95', { wear: 4 }]], 'RELAPSE')?.figures).toMatchObject({ hours: 5, lost: 11 });
  });

  it('refers the second time', () => {
    const second: readonly CourseVisit[] = [...gained, [42, '16/95'], [49, '6/95'], [63, '17/95']];
    expect(step(second, 'RELAPSE')).toMatchObject({ action: 'refer', figures: { again: true } });
    // A look a week later is still the same one.
    expect(step([...gained, [42, '16/95'], [49, '17/95']], 'RELAPSE')).toMatchObject({ action: 'wean' });
  });
});

describe('GOAL', () => {
  it.each([
    ['5 and 5 at two visits', ['5/95', '5/95'], {}, true],
    ['5.1 at one of them', ['5.1/95', '5/95'], {}, false],
    ['at one visit', ['20/95', '5/95'], {}, false],
    ['flexion 94 of 100', ['5/94', '5/94'], {}, false],
    ['flexion 94 of the other hand with 99', ['5/94', '5/94'], { other: '0/99' }, true],
    ["the patient's own goal of 15", ['15/95', '15/95'], { goal: 15 }, true],
    ['15.1 with it', ['15.1/95', '15/95'], { goal: 15 }, false],
  ])('%s', (_, [one, two], notes, reached) => {
    const found = rules([
      [0, '30/95', { made: EXTENSION }],
      [14, String(one)],
      [21, String(two), notes],
    ]);
    expect(found[0] === 'GOAL').toBe(reached);
  });

  it('of a plate says MP motion first', () => {
    expect(step(weekly(['20/80', '5/95', '5/96'], 'plate at 45'), 'GOAL')?.figures).toMatchObject({ plate: true });
  });
});

describe('MP_STIFF', () => {
  it.each([
    ['plate at 60', '0/80', true],
    ['plate at 60', '0/81', false],
    [EXTENSION, '0/80', false],
  ])('%s, passive MP 0/90 and then %s: %s', (made, is, stiff) => {
    expect(
      rules([
        [0, '40/95', { made, mpPassive: '0/90' }],
        [7, '40/95', { mpPassive: is }],
      ]).includes('MP_STIFF'),
    ).toBe(stiff);
  });
});

describe('FIT', () => {
  it.each([
    [{ skin: 'marks' }, true],
    [{ skin: 'ok', fits: true }, false],
    [{ fits: false }, true],
  ])('%j: %s', (notes, refits) => {
    expect(
      rules([
        [0, '40/95', { made: EXTENSION }],
        [7, '40/95', notes],
      ]).includes('FIT'),
    ).toBe(refits);
  });

  it.each([
    ['3 mm of 70, though 5 % is 3.5', 70, 73, true],
    ['2.9 mm of 70', 70, 72.9, false],
    ['5 % of 50', 50, 52.5, true],
    ['under 5 % of 50', 50, 52.4, false],
    ['down as well as up', 50, 47.5, true],
    ['2 mm of 38, though 5 % is 1.9', 38, 40, true],
    ['1.95 mm of 38', 38, 39.95, false],
  ])('girth: %s', (_, was, is, off) => {
    expect(
      rules([
        [0, '40/95', { made: EXTENSION, girth: was }],
        [7, '40/95', { girth: is }],
      ]).includes('FIT'),
    ).toBe(off);
    expect(
      rules([
        [0, '40/95', { made: EXTENSION, pipGirth: was }],
        [7, '40/95', { pipGirth: is }],
      ]).includes('FIT'),
    ).toBe(off);
  });

  it('sees a girth that creeps up by 8 mm in steps of 2, and takes a remake for size as the new measure without starting the course again', () => {
    const creeping: CourseVisit[] = [53, 55, 57, 59, 61].map((girth, k) => [
      7 * k,
      '40/95',
      k === 0 ? { made: EXTENSION, girth } : { girth },
    ]);
    expect(rules(creeping)[0]).toBe('FIT');
    expect(step(creeping, 'FIT')?.figures).toMatchObject({ girth: { before: 53, after: 61 } });
    const remade: readonly CourseVisit[] = [...creeping, [35, '40/95', { made: EXTENSION, girth: 61 }], [42, '40/95', { girth: 61.5 }]];
    expect(rules(remade)).toEqual(['REVIEW']);
    expect(step(remade, 'REVIEW')?.figures).toMatchObject({ days: 42 });
  });
});

describe('SWITCH', () => {
  it.each([
    ['other lacks 10, served under 10 at two visits', ['9/90', '9/90'], true],
    ['other lacks 9.9', ['9/90', '9/90.1'], false],
    ['served 10 at one of them', ['10/90', '9/90'], false],
  ])('%s', (_, [one, two], switches) => {
    expect(
      rules([
        [0, '30/90', { made: EXTENSION }],
        [14, String(one)],
        [21, String(two)],
      ]).includes('SWITCH'),
    ).toBe(switches);
  });

  it('when the other got really worse since making, beside the pause that this is', () => {
    expect(
      rules([
        [0, '30/95', { made: EXTENSION }],
        [7, '30/85'],
      ]),
    ).toEqual(['PAUSE', 'SWITCH']);
    expect(
      rules([
        [0, '30/95', { made: EXTENSION }],
        [7, '30/85.1'],
      ]),
    ).toEqual(['WAIT']);
  });

  it('of a plate the larger deficit at making is served', () => {
    expect(
      step(
        [
          [0, '12/60', { made: 'plate at 30' }],
          [14, '12/92'],
          [21, '12/92'],
        ],
        'SWITCH',
      )?.figures,
    ).toMatchObject({ other: 'extension' });
  });
});

describe('TEACH', () => {
  it.each([
    ['under half of what was agreed', { wearAgreed: 6 }, { wear: 2.9 }, true],
    ['half of it', { wearAgreed: 6 }, { wear: 3 }, false],
    ['under 2 hours where nothing was agreed', {}, { wear: 1.9 }, true],
    ['2 hours', {}, { wear: 2 }, false],
    ['a blank is not zero', { wearAgreed: 6 }, {}, false],
    ['not while weaning', { wearAgreed: 6 }, { wear: 1, weaning: true }, false],
  ])('%s', (_, was, is, teaches) => {
    expect(
      rules([
        [0, '40/95', { made: EXTENSION, ...was }],
        [7, '40/95', is],
      ]).includes('TEACH'),
    ).toBe(teaches);
  });

  it('not where the advice was to leave it off', () => {
    const paused: readonly CourseVisit[] = [
      [0, '40/95', { made: EXTENSION, wearAgreed: 6 }],
      [7, '40/95', { wear: 6, skin: 'broken' }],
    ];
    expect(rules([...paused, [9, '40/95', { wear: 0, skin: 'ok' }]])).toEqual(['WAIT']);
    expect(rules([...paused, [9, '40/95', { wear: 0, skin: 'ok' }], [16, '40/95', { wear: 0, skin: 'ok' }]])).toEqual(['TEACH']);
  });

  it('not while it gains, and the third time says so', () => {
    expect(rules(weekly(['40/95', '33/95', '26/95', '19/95'], EXTENSION, { wear: 1 }))).toEqual(['GAINING']);
    expect(step(weekly(['40/95', '40/95', '40/95', '40/95'], EXTENSION, { wear: 1 }), 'TEACH')?.figures).toMatchObject({ times: 3 });
  });
});

describe('IDLE', () => {
  it.each([
    [EXTENSION, false, true],
    [EXTENSION, true, false],
    ['plate at 60', false, false],
  ])('%s, redirects %s: %s', (made, redirects, idle) => {
    expect(
      rules([
        [0, '40/95', { made }],
        [7, '40/95', { redirects }],
      ]).includes('IDLE'),
    ).toBe(idle);
  });
});

describe('ENOUGH', () => {
  const little = (days: number, pips: readonly [string, string, string], notes: CourseNotes = {}): readonly CourseVisit[] => [
    [0, '20/95', { made: EXTENSION, ...notes }],
    [7, pips[0]],
    [21, pips[1]],
    [7 + days, pips[2]],
  ];
  it.each([
    ['under 10 for 28 days', little(28, ['9/92', '9/92', '9/92']), true],
    ['27 days', little(27, ['9/92', '9/92', '9/92']), false],
    ['10 once', little(28, ['9/92', '10/92', '9/92']), false],
    ['a gain of 5', little(28, ['9.5/95', '7/95', '4.5/93']), false],
    ['a gain of 4.9', little(28, ['9.5/95', '7/95', '4.6/93']), true],
  ])('%s', (_, visits, enough) => {
    expect(rules(visits).includes('ENOUGH')).toBe(enough);
  });
});

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
