import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../../tests/by-night.ts';
import { type CourseNotes, type CourseVisit, courseFile, sampleCourse } from '../../../tests/sample-course.ts';
import { CHANGE_STATES, CRPS_SIGNS, SKIN_STATES } from '../../hand/signs.ts';
import { LANGUAGE_IDS } from '../../words/language.ts';
import { readCase } from '../read-case.ts';
import { courseAdvice } from './course-advice.ts';
import { COURSE_RULES } from './course-rules.ts';
import { nextSteps } from './next-steps.ts';

const DEVICES = ['strip for extension, 20', 'strip for extension, 25', 'strip for flexion, 20', 'plate at 60', 'plate at 30'] as const;
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });

const notes = fc.record(
  {
    passive: maybe(fc.constantFrom('5/100', '30/90', '45/80')),
    mpPassive: maybe(fc.constantFrom('0/90', '0/80', '10/70')),
    made: fc.oneof({ weight: 4, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: fc.constantFrom(...DEVICES) }),
    girth: maybe(fc.integer({ min: 50, max: 58 })),
    pain: maybe(fc.integer({ min: 0, max: 10 })),
    skin: maybe(fc.constantFrom(...SKIN_STATES)),
    sensation: maybe(fc.constantFrom(...CHANGE_STATES)),
    colour: maybe(fc.constantFrom(...CHANGE_STATES)),
    infection: maybe(fc.boolean()),
    deformity: maybe(fc.boolean()),
    crpsSigns: maybe(fc.subarray([...CRPS_SIGNS])),
    fits: maybe(fc.boolean()),
    redirects: maybe(fc.boolean()),
    wear: maybe(fc.integer({ min: 0, max: 12 })),
    wearAgreed: maybe(fc.integer({ min: 1, max: 12 })),
    rater: maybe(fc.constantFrom('A', 'B')),
    repeated: maybe(fc.boolean()),
    weaning: maybe(fc.boolean()),
  },
  { noNullPrototype: true },
);

/** What a visit does not say is not there, rather than undefined. */
const said = (given: object): CourseNotes => Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));

const courses: fc.Arbitrary<readonly CourseVisit[]> = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 21 }), fc.integer({ min: -12, max: 50 }), fc.integer({ min: 60, max: 110 }), notes), {
    minLength: 1,
    maxLength: 8,
  })
  .map((visits) => {
    let day = 0;
    return visits.map(([gap, deficit, flexion, given], k): CourseVisit => {
      if (k > 0) day += gap;
      const made = given.made ?? (k === 0 ? DEVICES[0] : undefined);
      return [day, `${deficit < 0 ? `hyper ${-deficit}` : deficit}/${flexion}`, said({ ...given, ...(made && { made }) })];
    });
  });

const lead = (visits: readonly CourseVisit[]) => nextSteps(sampleCourse(visits)).steps[0];
const gravity = (visits: readonly CourseVisit[]) => COURSE_RULES.findIndex(({ rule }) => rule === lead(visits)?.rule);
const withLast = (visits: readonly CourseVisit[], more: CourseNotes): readonly CourseVisit[] =>
  visits.map(([day, pip, given], k) => (k === visits.length - 1 ? [day, pip, { ...given, ...more }] : [day, pip, given ?? {}]));

/** Each is a sign of harm by itself, whatever else the course says. */
const STOPS_OR_PAUSES: readonly CourseNotes[] = [
  { infection: true },
  { deformity: true },
  { colour: 'stays' },
  { colour: 'returned' },
  { sensation: 'returned' },
  { skin: 'broken' },
  { pain: 5, crpsSigns: ['swelling', 'sweating'] },
];
/** Each makes the visit worse than it was: what was well or blank before is replaced. */
const WORSE: readonly (readonly [key: string, CourseNotes])[] = [
  ...STOPS_OR_PAUSES.map((sign) => [Object.keys(sign)[0] ?? '', sign] as const),
  ['skin', { skin: 'marks' }],
  ['fits', { fits: false }],
  ['sensation', { sensation: 'stays' }],
];
const WELL: Readonly<Record<string, unknown>> = {
  skin: 'ok',
  fits: true,
  sensation: 'ok',
  colour: 'ok',
  infection: false,
  deformity: false,
};

/** The same course without what was noted under a key. */
const without = (visits: readonly CourseVisit[], key: string): readonly CourseVisit[] =>
  visits.map(([day, pip, given = {}]) => [day, pip, Object.fromEntries(Object.entries(given).filter(([name]) => name !== key))]);

/**
 * Whether a course has a sign of STOP or PAUSE at its last visit, told from what was typed alone and apart from the rules: the plain signs of docs/advice.md
 * that need no look at what came before the visit before.
 */
function hasSign(visits: readonly CourseVisit[]): boolean {
  const newest = (key: string) => visits.findLast(([, , given]) => given?.[key] !== undefined)?.[2]?.[key];
  const standing = [
    ['infection', [true]],
    ['deformity', [true]],
    ['colour', ['stays', 'returned']],
    ['sensation', ['returned']],
    ['skin', ['broken']],
  ] as const;
  if (standing.some(([key, signs]) => (signs as readonly unknown[]).includes(newest(key)))) return true;
  const pains = visits.flatMap(([, , given]) => (given?.pain === undefined ? [] : [given.pain as number]));
  const pain = pains.at(-1) ?? 0;
  if (pain >= 5 && ((newest('crpsSigns') as readonly string[] | undefined)?.length ?? 0) >= 2) return true;
  if (pains.length > 1 && pain - (pains.at(-2) ?? pain) >= 3) return true;
  const [before, last] = visits.slice(-2).map(([, pip]) => /^(hyper )?(\d+)\/(\d+)$/.exec(pip) ?? []);
  if (!before || !last || newest('weaning') === true) return false;
  const lacks = ([, beyond, extension, flexion]: readonly string[]) => [beyond ? 0 : Number(extension), Math.max(0, 100 - Number(flexion))];
  return lacks(last).some((deficit, k) => deficit - (lacks(before)[k] ?? 0) >= 13);
}

describe('nextSteps(record): properties', () => {
  it('no course with a sign of stop or pause is led by anything else, whatever came before', () => {
    let signs = 0;
    fc.assert(
      fc.property(courses, (visits) => {
        if (!hasSign(visits)) return;
        signs++;
        expect(['stop', 'pause']).toContain(lead(visits)?.action);
      }),
      { numRuns: 150 },
    );
    expect(signs).toBeGreaterThan(50);
  });

  it('strong pain stops wherever nobody knows what it was at the making', () => {
    fc.assert(
      fc.property(courses, fc.integer({ min: 7, max: 10 }), (visits, pain) => {
        const unknown = withLast(without(visits, 'pain'), { pain });
        // At a first visit with a device made at it the pain is that of the making.
        fc.pre(visits.length > 1);
        const made = unknown.flatMap(([, , given], k) => (given?.made === undefined || k === unknown.length - 1 ? [] : [k]));
        fc.pre(made.length > 0);
        expect(lead(unknown)?.action).toBe('stop');
        expect(lead(without(withLast(unknown.slice(-1), { pain }), 'made'))?.action).toBe('stop');
      }),
      { numRuns: 60 },
    );
  });

  it('a sign of harm at the last visit is never led by keep, change, wait or wean', () => {
    fc.assert(
      fc.property(courses, fc.constantFrom(...STOPS_OR_PAUSES), (visits, sign) => {
        expect(['stop', 'pause']).toContain(lead(withLast(visits, sign))?.action);
      }),
      { numRuns: times(20, 80) },
    );
  });

  it('wherever a stop or a pause applies it leads', () => {
    fc.assert(
      fc.property(courses, (visits) => {
        const { steps } = nextSteps(sampleCourse(visits));
        const grave = steps.some(({ action }) => action === 'stop' || action === 'pause');
        expect(['stop', 'pause'].includes(steps[0]?.action ?? '')).toBe(grave);
      }),
      { numRuns: times(20, 80) },
    );
  });

  it('adding a sign of harm never makes the advice milder: its rule stands no lower in the table', () => {
    fc.assert(
      fc.property(courses, fc.constantFrom(...WORSE), (visits, [key, sign]) => {
        const before = visits.at(-1)?.[2]?.[key];
        const said = (...keys: readonly string[]) => visits.some(([, , given]) => keys.some((one) => given?.[one] !== undefined));
        // What was noted at an earlier visit still stands where the last one says nothing: to say something then can be better news.
        fc.pre(key === 'pain' ? !said('pain', 'crpsSigns') : before === undefined ? !said(key) : before === WELL[key]);
        expect(gravity(withLast(visits, sign))).toBeLessThanOrEqual(gravity(visits));
      }),
      { numRuns: times(62, 250) },
    );
  });

  it('the order in which visits stand in the file does not matter', () => {
    fc.assert(
      fc.property(courses, fc.infiniteStream(fc.nat()), (visits, picks) => {
        const left = [...visits];
        const shuffled: CourseVisit[] = [];
        for (const pick of picks) {
          const [one] = left.splice(pick % Math.max(1, left.length), 1);
          if (one === undefined) break;
          shuffled.push(one);
        }
        expect(shuffled).toHaveLength(visits.length);
        expect(nextSteps(sampleCourse(shuffled))).toEqual(nextSteps(sampleCourse(visits)));
      }),
      { numRuns: times(20, 80) },
    );
  });

  it('a language changes words and no advice, and every step and reminder has its words', () => {
    fc.assert(
      fc.property(courses, (visits) => {
        const record = sampleCourse(visits);
        const { steps, reminders, slope } = nextSteps(record);
        for (const language of LANGUAGE_IDS) {
          const advice = courseAdvice(record, language);
          expect(advice.steps.map(({ title, when, message, sourceText, ...step }) => step)).toEqual(steps);
          expect(advice.slope).toEqual(slope);
          expect(advice.reminders).toHaveLength(reminders.length);
          const words = [...advice.steps.flatMap(({ title, message, sourceText }) => [title, message, sourceText]), ...advice.reminders];
          for (const text of words) {
            expect(text).not.toMatch(/undefined|NaN|null|\[object|[A-Z]_[A-Z]| {2}|\.\./);
            expect(text.length).toBeGreaterThan(3);
          }
        }
      }),
      { numRuns: times(15, 60) },
    );
  });

  it('leads with one rule and follows the order of the table; every visit has an advice', () => {
    fc.assert(
      fc.property(courses, (visits) => {
        const order = nextSteps(sampleCourse(visits)).steps.map(({ rule }) => COURSE_RULES.findIndex((entry) => entry.rule === rule));
        expect(order.length).toBeGreaterThan(0);
        expect(order).toEqual([...new Set(order)].toSorted((a, b) => a - b));
      }),
      { numRuns: times(20, 80) },
    );
  });

  it('reads back what was written: the case in its file gives the same advice', () => {
    fc.assert(
      fc.property(courses, (visits) => {
        const read = readCase(courseFile(visits));
        const again = read.ok ? readCase(JSON.parse(JSON.stringify(read.value.file))) : read;
        expect(again.ok && read.ok && nextSteps(again.value)).toEqual(read.ok && nextSteps(read.value));
      }),
      { numRuns: times(20, 80) },
    );
  });
});
