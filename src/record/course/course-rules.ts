import { GOAL, LACK, SURVEYED_DIFFERENTIAL } from '../../block/figures.ts';
import { addDays, daysBetween } from '../../units/day.ts';
import type { AngleChange, CourseFigures, CourseRule, CourseSource } from '../../words/advice/course/course-figures.ts';
import { believedChange } from '../case.ts';
import {
  agreedBefore,
  allUnderLack,
  type Course,
  lossOf,
  MOTIONS,
  newest,
  otherMotion,
  realLoss,
  servedSlope,
  wornEnough,
} from './course.ts';
import { leftOff, mpLost, pause, stopNow, stopRing } from './harm.ts';
import { SURE } from './slope.ts';

export type CourseAction = 'stop' | 'pause' | 'wean' | 'refit' | 'switch' | 'teach' | 'change' | 'keep' | 'refer' | 'review' | 'wait';
export type Urgency = 'same-day' | 'working-day';

/** One rule of the course: what it does, its test, and where it is from. */
export interface CourseRuleEntry<R extends CourseRule = CourseRule> {
  readonly rule: R;
  readonly action: CourseAction;
  readonly urgency?: Urgency;
  /** Its words stand with the rules' own. */
  readonly source: CourseSource;
  /** The figures that it was computed from where it applies, else null. `before`: whether any rule above it applies. */
  readonly test: (course: Course, before: boolean) => CourseFigures[R] | null;
}

/** Degrees of passive MP motion lost in a plate since making that ask for a change of wear. */
export const MP_STIFF = 10;
/** Girth: mm and part by which it may be off from making, whichever is less, but never under the tape's own spread. */
export const GIRTH_OFF = { mm: 3, part: 0.05, least: 2 } as const;
/** Degrees lost while weaning, against the best. */
export const WEANING_LOSS = 5;
export const FOUR_WEEKS = 28;
export const SIX_WEEKS = 42;
export const TWO_WEEKS = 14;
/** Least visits and days for a gain to be read, the one at making among them. */
export const LEAST_FOR_GAIN = { visits: 3, days: 14 } as const;
/** Least visits after making, each with at least half of the wear, for a plateau. */
export const LEAST_FOR_PLATEAU = 4;
/** Standard errors that a plateau leaves above its slope (one-sided 90 %), and the gain it must stay under, degrees a week. */
export const PLATEAU = { errors: 1.28, under: 1 } as const;
/** Degrees gained in four weeks that make it worth going on. */
export const STILL_GAINS = 5;
export const CHANGES_BEFORE_REFERRING = 2;

/**
 * The rules of the course in the order of their weight: every one that applies is said, the first leads. The order is also the order of
 * severity: what stands higher is graver.
 */
export const COURSE_RULES: readonly { readonly [R in CourseRule]: CourseRuleEntry<R> }[CourseRule][] = [
  { rule: 'STOP_NOW', action: 'stop', urgency: 'same-day', source: 'noSource', test: stopNow },
  { rule: 'STOP_RING', action: 'stop', urgency: 'working-day', source: 'crps', test: stopRing },
  { rule: 'PAUSE', action: 'pause', source: 'measuring', test: pause },
  { rule: 'RELAPSE', action: 'wean', source: 'noSource', test: relapse },
  {
    rule: 'WEAN',
    action: 'wean',
    source: 'noSource',
    test: (course, before) => (course.weaning && !before ? { hours: course.last.noted.wear } : null),
  },
  { rule: 'GOAL', action: 'wean', source: 'noSource', test: reachedGoal },
  { rule: 'MP_STIFF', action: 'refit', source: 'noSource', test: mpStiff },
  { rule: 'FIT', action: 'refit', source: 'noSource', test: fit },
  { rule: 'SWITCH', action: 'switch', source: 'noSource', test: switchMotion },
  { rule: 'TEACH', action: 'teach', source: 'noSource', test: teach },
  { rule: 'IDLE', action: 'change', source: 'noSource', test: idle },
  { rule: 'ENOUGH', action: 'review', source: 'noSource', test: enough },
  { rule: 'GAINING', action: 'keep', source: 'slope', test: gaining },
  // Stands above PLATEAU and in its place: after two changes a third is not advised beside the letter.
  { rule: 'REFER', action: 'refer', source: 'noSource', test: refer },
  { rule: 'PLATEAU', action: 'change', source: 'slope', test: plateau },
  {
    rule: 'REVIEW',
    action: 'review',
    source: 'noSource',
    test: (course, before) =>
      !before && course.daysSinceMaking >= SIX_WEEKS ? { days: course.daysSinceMaking, slope: servedSlope(course) } : null,
  },
  {
    rule: 'WAIT',
    action: 'wait',
    source: 'noSource',
    test: (course, before) =>
      before ? null : { nextBy: addDays(course.last.date, TWO_WEEKS), visits: course.lastIndex - course.device.start },
  },
];

/** The lowest deficit of a motion since the device in use was made. */
function best({ deficits, device }: Course, motion: 'extension' | 'flexion'): number {
  return Math.min(...deficits.slice(device.start).map((each) => each[motion]));
}

function lostOverBest(course: Course, index: number): { motion: 'extension' | 'flexion'; lost: number } {
  const losses = MOTIONS.map((motion) => ({ motion, lost: (course.deficits[index]?.[motion] ?? 0) - best(course, motion) }));
  return losses.reduce((a, b) => (b.lost > a.lost ? b : a));
}

/** Visits in weaning at which motion had been lost: 5 at this one and the one before, or as much as is real at this one alone. */
function relapses({ visits, deficits, device: { start } }: Course): readonly number[] {
  const over = (k: number, motion: 'extension' | 'flexion') => {
    const until = deficits.slice(start, k + 1).map((each) => each[motion]);
    const least = Math.min(...until);
    return { lost: (deficits[k]?.[motion] ?? 0) - least, real: believedChange(visits[start + until.indexOf(least)], visits[k]) };
  };
  return visits.flatMap((_, k) => {
    if (k <= start || newest(visits.slice(start, k + 1), ({ noted }) => noted.weaning) !== true) return [];
    const found = MOTIONS.some((motion) => {
      const { lost, real } = over(k, motion);
      return lost >= real || (lost >= WEANING_LOSS && k > start + 1 && over(k - 1, motion).lost >= WEANING_LOSS);
    });
    return found ? [k] : [];
  });
}

function relapse(course: Course): CourseFigures['RELAPSE'] | null {
  if (!course.weaning) return null;
  const found = relapses(course);
  if (found.at(-1) !== course.lastIndex) return null;
  // A visit soon after belongs to the same relapse; two weeks later, or after a visit without one, it is another.
  const first = found[0] as number;
  const again = found.some(
    (k) =>
      k !== first && (!found.includes(k - 1) || daysBetween(course.visits[first]?.date ?? '', course.visits[k]?.date ?? '') >= TWO_WEEKS),
  );
  const held = course.visits.findLast(
    ({ noted }, k) =>
      k >= course.device.start && k < course.lastIndex && noted.wear !== null && lostOverBest(course, k).lost < WEANING_LOSS,
  );
  return { ...lostOverBest(course, course.lastIndex), hours: held?.noted.wear ?? null, again };
}

function reachedGoal({ deficits, goal, weaning, justMade, device }: Course): CourseFigures['GOAL'] | null {
  const [before, last] = deficits.slice(-2);
  if (weaning || justMade || !before || !last) return null;
  const within = [before, last].every((each) => MOTIONS.every((motion) => each[motion] <= goal));
  return within ? { ...last, goal, plate: device.made?.kind === 'plate' } : null;
}

function mpStiff(course: Course): CourseFigures['MP_STIFF'] | null {
  const lost = course.device.made?.kind === 'plate' ? mpLost(course, course.device.start) : null;
  return lost !== null && lost.lost >= MP_STIFF ? lost : null;
}

function fit(course: Course): CourseFigures['FIT'] | null {
  const { device, lastIndex, last } = course;
  if (device.made !== null && device.sized === lastIndex) return null;
  const girth = girthOff(course);
  const [marks, loose] = [last.noted.skin === 'marks', last.noted.fits === false];
  return marks || loose || girth !== null ? { marks, loose, girth } : null;
}

function girthOff({ record, visits, device, last }: Course): CourseFigures['FIT']['girth'] {
  const off = (['circumference', 'pipCircumference'] as const).flatMap((at) => {
    const after = last.measures.digits[record.digit]?.[at];
    const before =
      visits.slice(0, device.sized + 1).findLast((visit) => visit.measures.digits[record.digit]?.[at] !== undefined)?.measures.digits[
        record.digit
      ]?.[at] ?? record.hand?.digits[record.digit]?.[at];
    if (after === undefined || before === undefined) return [];
    const limit = Math.max(GIRTH_OFF.least, Math.min(GIRTH_OFF.mm, GIRTH_OFF.part * before));
    return Math.abs(after - before) >= limit ? [{ at, before, after, limit }] : [];
  });
  return off[0] ?? null;
}

function switchMotion(course: Course): CourseFigures['SWITCH'] | null {
  const { deficits, device, served, lastIndex } = course;
  const other = otherMotion(served);
  const [before, last] = deficits.slice(-2);
  if (course.justMade || !before || !last || last[other] < LACK) return null;
  const figures = { other, otherDeficit: last[other], servedDeficit: last[served] };
  if (before[served] < LACK && last[served] < LACK) return { ...figures, why: 'servedDone' };
  return otherIsWorse(course) && device.start < lastIndex ? { ...figures, why: 'otherWorse' } : null;
}

function otherIsWorse(course: Course): boolean {
  const { device, served } = course;
  return lossOf(course, otherMotion(served), device.start, 'making').lost >= realLoss(course, device.start);
}

function teach(course: Course): CourseFigures['TEACH'] | null {
  const { visits, lastIndex, device, weaning, last } = course;
  if (weaning || course.justMade || last.noted.wear === null || wornEnough(visits, lastIndex) !== false) return null;
  if (leftOff(course, lastIndex) !== null || gaining(course)) return null;
  const times = visits.filter((_, k) => k > device.start && wornEnough(visits, k) === false && leftOff(course, k) === null).length;
  return { wear: last.noted.wear, agreed: agreedBefore(visits, lastIndex), times };
}

function idle({ device, last, justMade, nextBlocks }: Course): CourseFigures['IDLE'] | null {
  return !justMade && device.made?.kind === 'strip' && last.noted.redirects === false ? { nextBlocks } : null;
}

function enough({ visits, deficits, device, last, weaning, justMade }: Course): CourseFigures['ENOUGH'] | null {
  if (weaning || justMade) return null;
  const from = visits.findLastIndex(({ date }, k) => k >= device.start && daysBetween(date, last.date) >= FOUR_WEEKS);
  const [first, now] = [deficits[from], deficits.at(-1)];
  if (!first || !now || !deficits.slice(from).every(allUnderLack)) return null;
  if (MOTIONS.some((motion) => first[motion] - now[motion] >= STILL_GAINS)) return null;
  return { ...now, days: daysBetween(visits[from]?.date ?? last.date, last.date) };
}

function gaining(course: Course): CourseFigures['GAINING'] | null {
  const slope = course.weaning || course.justMade ? null : servedSlope(course);
  if (slope === null || slope.visits < LEAST_FOR_GAIN.visits || daysBetween(...slope.between) < LEAST_FOR_GAIN.days) return null;
  return slope.degreesPerWeek > SURE * slope.standardError && !otherIsWorse(course) ? slope : null;
}

/** The slope of a motion that lacks and has come to a stand although the device was worn; null where that cannot be said. */
function stands(course: Course) {
  const { visits, device, deficits, served, goal, daysSinceMaking } = course;
  if (course.weaning || device.made === null || daysSinceMaking < FOUR_WEEKS || (deficits.at(-1)?.[served] ?? 0) <= goal) return null;
  const worn = visits.filter((_, k) => k > device.start && wornEnough(visits, k) === true).length;
  const slope = worn < LEAST_FOR_PLATEAU ? null : servedSlope(course);
  return slope !== null && slope.degreesPerWeek + PLATEAU.errors * slope.standardError < PLATEAU.under ? slope : null;
}

function refer(course: Course): CourseFigures['REFER'] | null {
  const changes = changesGivenTime(course);
  const slope = changes >= CHANGES_BEFORE_REFERRING ? stands(course) : null;
  return slope && { slope, changes };
}

/** Devices that took the place of another and were given four weeks. */
function changesGivenTime({ devices, visits, last }: Course): number {
  const made = devices.filter((device) => device.made !== null);
  return made.slice(1).filter(({ start }, k) => {
    const end = visits[made[k + 2]?.start ?? -1] ?? last;
    return daysBetween(visits[start]?.date ?? last.date, end.date) >= FOUR_WEEKS;
  }).length;
}

function plateau(course: Course): CourseFigures['PLATEAU'] | null {
  const slope = changesGivenTime(course) >= CHANGES_BEFORE_REFERRING ? null : stands(course);
  return slope && { slope, change: angleChange(course), nextBlocks: course.nextBlocks.filter(({ kind }) => kind !== 'differential') };
}

/** The goal of a patient who has none of their own. */
export const USUAL_GOAL = GOAL;

/** Least and most degrees by which an angle is changed at once. Common practice, no source. */
export const ANGLE_STEP = { from: 5, to: 10 } as const;
/** MP angles of a plate where passive MP motion was not measured, degrees: AAOS-type tables give the MP joint 0 to 90. */
export const MP_RANGE = { from: 0, to: 90 } as const;

/**
 * How to change the angle of the device in use: more differential for a strip; for a plate more MP flexion where extension lags, less where
 * flexion does. Inside the range of the differential, or of the MP motion that was measured; null where that leaves no step of 5.
 */
export function angleChange({ device, served, visits, deficits }: Course): AngleChange | null {
  const { made } = device;
  if (made === null) return null;
  if (made.kind === 'strip') {
    return made.differential === null
      ? null
      : stepped('differential', served, made.differential, 1, { from: SURVEYED_DIFFERENTIAL.low, to: SURVEYED_DIFFERENTIAL.high });
  }
  const now = deficits.at(-1) ?? { extension: 0, flexion: 0 };
  const toward = now.flexion > now.extension ? 'flexion' : 'extension';
  const passive = newest(visits, ({ goniometry }) => goniometry.mp.passive);
  const range = {
    from: Math.max(MP_RANGE.from, passive?.extensionDeficit ?? MP_RANGE.from),
    to: Math.min(MP_RANGE.to, passive?.flexion ?? MP_RANGE.to),
  };
  return stepped('mpAngle', toward, made.mpAngle, toward === 'extension' ? 1 : -1, range);
}

function stepped(
  what: AngleChange['what'],
  toward: AngleChange['toward'],
  from: number,
  sign: 1 | -1,
  range: { readonly from: number; readonly to: number },
): AngleChange | null {
  const nearer = from + sign * ANGLE_STEP.from;
  if (nearer < range.from || nearer > range.to) return null;
  const further = Math.min(range.to, Math.max(range.from, from + sign * ANGLE_STEP.to));
  return { what, toward, from, to: [Math.min(nearer, further), Math.max(nearer, further)] };
}
