import { describe, expect, it } from 'vitest';
import { times } from '../../../tests/by-night.ts';
import { sampleCourse } from '../../../tests/sample-course.ts';
import { SIGMA } from '../../block/figures.ts';
import type { Case, Visit } from '../case.ts';
import { nextSteps } from './next-steps.ts';

/** How often readings alone, without any change of the hand, would lead the advice astray. One rater, sigma 3.5 degrees a reading. */

/** For the bound of 3 %, near which the figure lies: fewer would tell a chance for a fault. */
const COURSES = 2000;
/** For figures that stand beside. */
const FEW = times(200, 500);

/** Numbers from 0 to 1 that are the same each time: a linear congruential generator, constants of Numerical Recipes (Press et al.). */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
}

/** Standard normal numbers by the transform of Box & Muller, Ann Math Stat 1958;29:610. */
function normal(seed: number): () => number {
  const next = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

/** The mean of some readings of an angle in whole degrees, and its sum for going on. */
class Readings {
  private sum = 0;
  private count = 0;
  private readonly angle: number;
  private readonly error: () => number;

  constructor(angle: number, error: () => number) {
    this.angle = angle;
    this.error = error;
  }

  take(times: number): number {
    for (let k = 0; k < times; k++) this.sum += Math.round(this.angle + SIGMA.same * this.error());
    this.count += times;
    return this.sum / this.count;
  }
}

interface Protocol {
  /** Readings of each motion at every visit. */
  readonly readings: number;
  /** Readings more where a pause rests on motion alone. */
  readonly again: number;
}

const EMPTY = sampleCourse([
  [0, '25/85', { made: 'strip for extension, 20', wear: 6, wearAgreed: 6, redirects: true, fits: true, skin: 'ok' }],
]);

function visitOn(day: number, deficit: number, flexion: number, repeated: boolean): Visit {
  const [first] = EMPTY.visits;
  if (first === undefined) throw new Error('no visit');
  return {
    ...first,
    date: new Date(Date.UTC(2026, 0, 5 + day)).toISOString().slice(0, 10),
    made: day === 0 ? first.made : null,
    goniometry: { ...first.goniometry, pip: { active: { extensionDeficit: deficit, flexion } } },
    noted: { ...first.noted, repeated },
  };
}

/**
 * The share of simulated weekly courses in which the advice was of a kind at any visit. The therapist follows the step that asks to measure
 * again before it is counted.
 */
function share(
  kind: (record: Case) => boolean,
  truth: (week: number) => { readonly deficit: number; readonly flexion: number },
  visits: number,
  { readings, again }: Protocol,
  seed: number,
  courses: number = COURSES,
): number {
  const error = normal(seed);
  let told = 0;
  for (let course = 0; course < courses; course++) {
    const made: Visit[] = [];
    let counted = false;
    for (let week = 0; week < visits && !counted; week++) {
      const { deficit, flexion } = truth(week);
      const [extension, bending] = [new Readings(deficit, error), new Readings(flexion, error)];
      made.push(visitOn(7 * week, extension.take(readings), bending.take(readings), readings > 1));
      const advice = () => nextSteps({ ...EMPTY, visits: made });
      if (again > 0 && advice().steps[0]?.rule === 'PAUSE') {
        made.pop();
        made.push(visitOn(7 * week, extension.take(again), bending.take(again), true));
      }
      counted = kind({ ...EMPTY, visits: made });
    }
    if (counted) told++;
  }
  return told / courses;
}

const stopped = (record: Case) => ['stop', 'pause'].includes(nextSteps(record).steps[0]?.action ?? '');
const changed = (record: Case) => nextSteps(record).steps.some(({ action }) => action === 'change');
const stable = () => ({ deficit: 25, flexion: 85 });
const percent = (part: number) => `${(100 * part).toFixed(1)} %`;

describe('odds of wrong advice by measuring error alone (simulated, 2000 or 500 courses each, some by night alone)', {
  timeout: 60_000,
}, () => {
  it('a stable hand, each motion read twice at a visit and a third time where a pause asks for it, is told to stop or pause in under 3 % of six-visit courses', () => {
    const part = share(stopped, stable, 6, { readings: 2, again: 1 }, 1);
    console.info(`stable hand told to stop or pause in six visits, read twice and a third time: ${percent(part)}`);
    expect(part).toBeLessThan(0.03);
    expect(part).toBeGreaterThan(0);
  });

  it('read three times at every visit, as well', () => {
    const part = share(stopped, stable, 6, { readings: 3, again: 0 }, 2, FEW);
    console.info(`the same, read three times: ${percent(part)}`);
    expect(part).toBeLessThan(0.03);
  });

  it('read once, it is told so more often: why the visit asks for two readings', () => {
    const once = share(stopped, stable, 6, { readings: 1, again: 2 }, 3, FEW);
    const bare = share(stopped, stable, 6, { readings: 1, again: 0 }, 4, FEW);
    console.info(`the same, read once and twice more where asked: ${percent(once)}; read once and never again: ${percent(bare)}`);
    expect(once).toBeLessThan(bare / 2);
  });

  it('a hand that gains 2.3 degrees a week is told to change in under 10 % of eight-visit courses, though it is read once', () => {
    const part = share(
      changed,
      (week) => ({ deficit: 40 - 2.3 * week, flexion: 85 }),
      8,
      { readings: 1, again: 2 },
      5,
      times(500, COURSES),
    );
    console.info(`hand gaining 2.3 degrees a week told to change in eight visits: ${percent(part)}`);
    expect(part).toBeLessThan(0.1);
  });

  it('and a hand that does not move is told to change in most courses of ten visits', () => {
    const part = share(changed, stable, 10, { readings: 2, again: 1 }, 6, FEW);
    console.info(`stable hand told to change in ten visits: ${percent(part)}`);
    expect(part).toBeGreaterThan(0.5);
  });
});
