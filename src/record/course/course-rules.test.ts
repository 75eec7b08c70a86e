import { describe, expect, it } from 'vitest';
import { EXTENSION, rules, step, weekly } from '../../../tests/course-steps.ts';
import type { CourseNotes, CourseVisit } from '../../../tests/sample-course.ts';

// The edges are common practice, no source, unless a rule says otherwise.

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
