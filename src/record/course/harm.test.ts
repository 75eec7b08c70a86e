import { describe, expect, it } from 'vitest';
import demoHand from '../../../fixtures/demo-hand.json' with { type: 'json' };
import { EXTENSION, rules, step } from '../../../tests/course-steps.ts';
import { type CourseNotes, type CourseVisit, sampleCourse } from '../../../tests/sample-course.ts';
import { nextSteps } from './next-steps.ts';

// The edges are those of the rules in course-rules.ts; pain 5 of Moseley et al., J Pain 2014;15:16, the rest common practice, no source.

const MADE: CourseVisit = [0, '40/95', { made: EXTENSION, passive: '30/100' }];
/** Rules after a second visit a week later at which this was noted. */
const aWeekLater = (notes: CourseNotes, pip = '40/95', first: CourseVisit = MADE) => rules([first, [7, pip, notes]]);

describe('STOP_NOW', () => {
  it.each([
    [{ colour: 'stays' }, true],
    [{ colour: 'returned' }, false],
    [{ colour: 'ok' }, false],
    [{ sensation: 'stays' }, true],
    [{ sensation: 'returned' }, false],
    [{ infection: true }, true],
    [{ infection: false }, false],
    [{ deformity: true }, true],
    [{ deformity: false }, false],
  ])('%j: %s', (notes, stops) => {
    expect(aWeekLater(notes)[0] === 'STOP_NOW').toBe(stops);
    expect(step([MADE, [7, '40/95', notes]], 'STOP_NOW')).toEqual(
      stops ? expect.objectContaining({ action: 'stop', urgency: 'same-day' }) : undefined,
    );
  });

  it('not for feeling that was reduced when it was made, nor where the hand file says so; but for what came back and went again', () => {
    const reduced: CourseVisit = [0, '40/95', { made: EXTENSION, sensation: 'stays' }];
    expect(aWeekLater({ sensation: 'stays' }, '40/95', reduced)).not.toContain('STOP_NOW');
    expect(rules([reduced, [7, '40/95', { sensation: 'ok' }], [14, '40/95', { sensation: 'stays' }]])[0]).toBe('STOP_NOW');
    const hand = { ...demoHand, code: 'DEMO-01', flags: { sensation: true } };
    expect(rules([MADE, [7, '40/95', { sensation: 'stays' }]], { code: 'DEMO-01', hand })).not.toContain('STOP_NOW');
    // At a first visit nobody has said that it was there before.
    expect(rules([reduced])[0]).toBe('STOP_NOW');
  });

  it.each([
    ['15 of extension, measured twice, passive kept', '55/95', { repeated: true, passive: '30/100' }, true],
    ['14.9', '54.9/95', { repeated: true, passive: '30/100' }, false],
    ['measured once', '55/95', { passive: '30/100' }, false],
    ['passive lost 10', '55/95', { repeated: true, passive: '40/100' }, true],
    ['passive lost 10.1', '55/95', { repeated: true, passive: '40.1/100' }, false],
    ['passive not measured', '55/95', { repeated: true }, false],
    ['15 of flexion, passive kept', '40/80', { repeated: true, passive: '30/100' }, true],
    ['15 of flexion, passive lost 11', '40/80', { repeated: true, passive: '30/89' }, false],
  ] as const)('sudden loss of active motion: %s', (_, pip, notes, stops) => {
    const visits: readonly CourseVisit[] = [
      [0, '40/95', { made: EXTENSION, passive: '30/100' }],
      [7, pip, notes],
    ];
    expect(rules(visits)[0]).toBe(stops ? 'STOP_NOW' : 'PAUSE');
  });

  it('stands until the sign has been looked at again: a blank is no all-clear', () => {
    const infected: readonly CourseVisit[] = [MADE, [7, '40/95', { infection: true }]];
    expect(rules([...infected, [10, '40/95']])[0]).toBe('STOP_NOW');
    expect(step([...infected, [10, '40/95']], 'STOP_NOW')?.figures).toEqual({ signs: [{ sign: 'infection', noted: '2026-01-12' }] });
    expect(rules([...infected, [10, '40/95', { infection: false }]])).not.toContain('STOP_NOW');
  });
});

describe('STOP_RING', () => {
  it.each([
    [{ pain: 5, crpsSigns: ['swelling', 'sweating'] }, true],
    [{ pain: 4.9, crpsSigns: ['swelling', 'sweating'] }, false],
    [{ pain: 5, crpsSigns: ['swelling'] }, false],
    [{ pain: 6.9, crpsSigns: [] }, false],
  ])('signs of CRPS: %j: %s', (notes, stops) => {
    expect(aWeekLater(notes).includes('STOP_RING')).toBe(stops);
  });

  it.each([
    [5, 7, true],
    [5, 6.9, false],
    [5.1, 7, false],
    [6, 8, true],
  ])('pain %d at making and %d now: %s', (was, is, stops) => {
    const found = aWeekLater({ pain: is }, '40/95', [0, '40/95', { made: EXTENSION, pain: was }]);
    expect(found.includes('STOP_RING')).toBe(stops);
  });

  it('strong pain stops as well where nobody asked at the making, and not at the making itself', () => {
    expect(aWeekLater({ pain: 7 })[0]).toBe('STOP_RING');
    expect(aWeekLater({ pain: 6.9 })).toEqual(['WAIT']);
    expect(rules([[0, '40/95', { made: EXTENSION, pain: 8 }]])).toEqual(['WAIT']);
    // Nothing is noted as made: what the pain was at the making is not known.
    expect(rules([[0, '40/95', { pain: 7 }]])[0]).toBe('STOP_RING');
    expect(rules([[0, '40/95', { pain: 6.9 }]])).toEqual(['WAIT']);
  });

  it.each([
    ['0/90', '0/70', true],
    ['0/90', '0/71', false],
    ['0/90', '10/80', true],
    ['0/90', '10/81', false],
    ['0/90', '20/90', true],
  ])('passive MP motion %s and then %s: %s', (was, is, stops) => {
    const found = aWeekLater({ mpPassive: is }, '40/95', [0, '40/95', { made: 'plate at 60', mpPassive: was }]);
    expect(found.includes('STOP_RING')).toBe(stops);
  });

  it('passive motion that was not measured again stands as it was found', () => {
    const plate: CourseVisit = [0, '40/95', { made: 'plate at 60', mpPassive: '0/90', passive: '30/100' }];
    expect(rules([plate, [7, '40/95', { mpPassive: '0/70' }], [14, '40/95']])[0]).toBe('STOP_RING');
    expect(rules([plate, [7, '40/95', { mpPassive: '0/70' }], [14, '40/95', { mpPassive: '0/85' }]])[0]).not.toBe('STOP_RING');
    expect(rules([plate, [7, '40/95', { passive: 'hyper 10/100' }], [14, '40/95']])[0]).toBe('STOP_RING');
  });

  it.each([
    ['0/90', 'hyper 10/90', undefined, true],
    ['0/90', 'hyper 9/90', undefined, false],
    ['hyper 10/90', 'hyper 12/90', undefined, false],
    ['0/90', 'hyper 12/90', 'hyper 11/100', true],
    ['0/90', 'hyper 12/90', 'hyper 12/100', false],
  ])('PIP %s and then %s, other hand %s: %s', (was, is, other, stops) => {
    const found = aWeekLater({}, is, [0, was, { made: EXTENSION, ...(other && { other }) }]);
    expect(found.includes('STOP_RING')).toBe(stops);
  });

  it('when a pause at the visit before has not recovered, and not when it has', () => {
    const broken: readonly CourseVisit[] = [MADE, [7, '40/95', { skin: 'broken' }]];
    expect(rules(broken)).toEqual(['PAUSE']);
    expect(rules([...broken, [9, '40/95', { skin: 'broken' }]])).toEqual(['STOP_RING', 'PAUSE']);
    expect(rules([...broken, [9, '40/95', { skin: 'ok' }]])).toEqual(['WAIT']);
    // Nobody looked: the pause stands, no more and no less.
    expect(rules([...broken, [9, '40/95']])).toEqual(['PAUSE']);
    // Another cause in place of the first is no recovery.
    expect(rules([...broken, [9, '40/95', { skin: 'ok', colour: 'returned' }]])[0]).toBe('STOP_RING');
    const lost: readonly CourseVisit[] = [
      [0, '40/95', { made: EXTENSION }],
      [7, '30/95'],
      [14, '41/95', { repeated: true }],
    ];
    expect(rules(lost)).toEqual(['PAUSE']);
    expect(rules([...lost, [16, '40/95', { repeated: true }]])[0]).toBe('STOP_RING');
    expect(rules([...lost, [16, '39/95', { repeated: true }]])).not.toContain('STOP_RING');
  });

  it('calls within a working day', () => {
    expect(step([MADE, [7, '40/95', { pain: 6, crpsSigns: ['swelling', 'touchHurts'] }]], 'STOP_RING')).toMatchObject({
      action: 'stop',
      urgency: 'working-day',
      source: 'crps',
    });
  });
});

describe('PAUSE', () => {
  it('names the measuring error where it rests on motion, and no source else', () => {
    expect(step([MADE, [7, '40/95', { skin: 'broken' }]], 'PAUSE')?.source).toBe('noSource');
    expect(step([MADE, [7, '52/95']], 'PAUSE')?.source).toBe('measuring');
    expect(step([MADE, [7, '40/95', { pain: 7 }]], 'STOP_RING')?.source).toBe('noSource');
  });

  it.each([
    [{ skin: 'broken' }, true],
    [{ skin: 'marks' }, false],
    [{ skin: 'ok' }, false],
    [{ sensation: 'returned' }, true],
    [{ sensation: 'ok' }, false],
    [{ colour: 'returned' }, true],
  ])('%j: %s', (notes, pauses) => {
    expect(aWeekLater(notes)[0] === 'PAUSE').toBe(pauses);
  });

  it.each([
    [1, 4, true],
    [1, 3.9, false],
  ])('pain %d and then %d: %s', (was, is, pauses) => {
    const found = aWeekLater({ pain: is }, '40/95', [0, '40/95', { made: EXTENSION, pain: was }]);
    expect(found.includes('PAUSE')).toBe(pauses);
  });

  // The least change that is believed: 1.96 x sqrt 2 x 3.5, rounded up; 4.5 for two raters.
  it.each([
    ['50/95', {}, {}, true],
    ['49.9/95', {}, {}, false],
    ['40/85', {}, {}, true],
    ['40/85.1', {}, {}, false],
    ['53/95', { rater: 'A' }, { rater: 'B' }, true],
    ['52.9/95', { rater: 'A' }, { rater: 'B' }, false],
    ['50/95', { rater: 'a' }, { rater: 'A' }, true],
    ['50/95', { rater: 'A' }, {}, true],
  ])('40/95 and then %s, %j and %j: %s', (pip, was, is, pauses) => {
    expect(aWeekLater(is, pip, [0, '40/95', { made: EXTENSION, ...was }]).includes('PAUSE')).toBe(pauses);
  });

  it('compares with the making as well as with the visit before: a creeping loss is seen', () => {
    const creeping: readonly CourseVisit[] = [MADE, [7, '44/95'], [14, '47/95'], [21, '50/95']];
    expect(rules(creeping.slice(0, 3))).not.toContain('PAUSE');
    expect(rules(creeping)[0]).toBe('PAUSE');
    expect(step(creeping, 'PAUSE')?.figures).toMatchObject({ causes: [{ cause: 'motion', loss: { since: 'making', lost: 10 } }] });
  });

  it.each([
    ['45/90', true],
    ['44.9/90', false],
    ['45/90.1', false],
  ])('both motions 5 worse than at making: %s: %s', (pip, pauses) => {
    expect(aWeekLater({}, pip).includes('PAUSE')).toBe(pauses);
  });

  it('asks to measure again first where motion was read once, and not where it was measured twice or another cause stands beside it', () => {
    const measureAgain = (notes: CourseNotes) => step([MADE, [7, '52/95', notes]], 'PAUSE')?.figures;
    expect(measureAgain({})).toMatchObject({ measureAgain: true });
    expect(measureAgain({ repeated: true })).toMatchObject({ measureAgain: false });
    expect(measureAgain({ skin: 'broken' })).toMatchObject({ measureAgain: false });
  });

  it('does not count motion while weaning', () => {
    expect(aWeekLater({ weaning: true }, '55/95')).not.toContain('PAUSE');
    expect(aWeekLater({ weaning: true, skin: 'broken' }, '55/95')[0]).toBe('PAUSE');
  });
});

describe('reminders', () => {
  const reminders = (visits: readonly CourseVisit[]) => nextSteps(sampleCourse(visits)).reminders.map(({ reminder }) => reminder);
  const well = { pain: 0, skin: 'ok', sensation: 'ok', colour: 'ok', infection: false, deformity: false, crpsSigns: [] };

  it('say what was not asked, and nothing when all was', () => {
    expect(nextSteps(sampleCourse([MADE, [7, '40/95', { ...well, wear: 6, pain: undefined }]])).reminders).toEqual([
      { reminder: 'HARM_NOT_NOTED', figures: { missing: ['pain'] } },
    ]);
    expect(reminders([MADE, [7, '40/95', { ...well, wear: 6 }]])).toEqual([]);
    // Signs of CRPS are asked for from pain 5, and where pain is not known.
    const unasked = (pain: number | undefined) =>
      nextSteps(sampleCourse([MADE, [7, '40/95', { ...well, wear: 6, pain, crpsSigns: undefined }]])).reminders.flatMap((r) =>
        r.reminder === 'HARM_NOT_NOTED' ? r.figures.missing : [],
      );
    expect([4.9, 5, undefined].map(unasked)).toEqual([[], ['crpsSigns'], ['pain', 'crpsSigns']]);
    expect(reminders([MADE, [7, '40/95', well]])).toEqual(['WEAR_NOT_NOTED']);
    expect(reminders([[0, '40/95', well]])).toEqual(['MEASURE_AGAIN', 'DEVICE_NOT_NOTED']);
    expect(reminders([[0, '40/80', { ...well, made: 'plate at 50' }]])).toEqual(['MEASURE_AGAIN', 'MP_NOT_MEASURED']);
  });

  it('ask to measure again what later visits are compared with: the making, and a reading 7 degrees better than the one before', () => {
    const asks = (visits: readonly CourseVisit[]) =>
      nextSteps(sampleCourse(visits)).reminders.flatMap(({ reminder, figures }) => (reminder === 'MEASURE_AGAIN' ? [figures] : []));
    expect(asks([MADE])).toEqual([{ why: 'making' }]);
    expect(asks([[0, '40/95', { made: EXTENSION, repeated: true }]])).toEqual([]);
    expect(asks([MADE, [7, '33/95']])).toMatchObject([{ why: 'better', gain: { motion: 'extension', before: 40, after: 33 } }]);
    expect(asks([MADE, [7, '33.1/95']])).toEqual([]);
    expect(asks([MADE, [7, '33/95', { repeated: true }]])).toEqual([]);
    // Two people: 9.
    expect(
      asks([
        [0, '40/95', { made: EXTENSION, rater: 'A' }],
        [7, '32/95', { rater: 'B' }],
      ]),
    ).toEqual([]);
    expect(
      asks([
        [0, '40/95', { made: EXTENSION, rater: 'A' }],
        [7, '31/95', { rater: 'B' }],
      ]),
    ).toHaveLength(1);
    // A pause asks for it itself.
    expect(asks([MADE, [7, '30/84']])).toEqual([]);
  });

  it('say how to go on after a pause or a stop', () => {
    expect(reminders([MADE, [7, '40/95', { ...well, skin: 'broken' }], [9, '40/95', { ...well, wear: 0 }]])).toEqual(['AFTER_PAUSE']);
    // Still broken, it is a stop, under which nothing is said of beginning again.
    expect(reminders([MADE, [7, '40/95', { ...well, skin: 'broken' }], [9, '40/95', { ...well, skin: 'broken', wear: 0 }]])).toEqual([]);
    expect(reminders([MADE, [7, '40/95', { ...well, infection: true }], [9, '40/95', { ...well, wear: 0 }]])).toEqual(['AFTER_STOP']);
  });
});
