import type { CourseFigures, Loss, PauseCause, StopNowSign, StopRingSign } from '../../words/advice/course/course-figures.ts';
import type { Motion, Noted, Visit } from '../case.ts';
import { newestOtherHand } from '../total-active-motion.ts';
import { type Course, courseOf, lossOf, MOTIONS, newest, realLoss } from './course.ts';

/** Degrees of active motion lost since the last visit, passive motion kept, that stop on the same day. Common practice, no source. */
export const SUDDEN_LOSS = 15;
/** Degrees within which passive motion counts as kept. */
export const PASSIVE_KEPT = 10;
/** Pain with which two signs of CRPS stop: Moseley et al., J Pain 2014;15:16, after wrist fractures. */
export const CRPS_PAIN = 5;
/** Strong pain, and how far over that at making. Common practice, no source. */
export const STRONG_PAIN = { from: 7, over: 2 } as const;
/** Degrees of passive MP motion lost since making that stop. Common practice, no source. */
export const MP_LOST = 20;
/** Degrees beyond straight. Common practice, no source. */
export const BEYOND_STRAIGHT = 10;
/** Rise of pain since the last visit that pauses. Common practice, no source. */
export const PAIN_RISE = 3;
/** Degrees lost in both motions since making that pause. Common practice, no source. */
export const BOTH_WORSE = 5;

/**
 * A sign as it stands at the last visit. What was found and has not been looked at since still stands: a blank is no all-clear.
 * `noted`: the day on which it was found, null when that was at the last visit.
 */
function standing<T>(
  visits: readonly Visit[],
  of: (noted: Noted) => T | null,
): { readonly value: T; readonly noted: string | null } | null {
  const index = visits.findLastIndex(({ noted }) => of(noted) !== null);
  const visit = visits[index];
  const value = visit && of(visit.noted);
  return visit === undefined || value === null || value === undefined
    ? null
    : { value, noted: index === visits.length - 1 ? null : visit.date };
}

export function stopNow(course: Course): CourseFigures['STOP_NOW'] | null {
  const { visits } = course;
  const signs: StopNowSign[] = [];
  const add = (sign: 'colour' | 'sensation' | 'infection' | 'deformity', found: { readonly noted: string | null }) =>
    signs.push({ sign, noted: found.noted });
  const colour = standing(visits, ({ colour: state }) => state);
  if (colour?.value === 'stays') add('colour', colour);
  const sensation = standing(visits, ({ sensation: state }) => state);
  if (sensation?.value === 'stays' && !wasReduced(course)) add('sensation', sensation);
  const infection = standing(visits, ({ infection: found }) => found);
  if (infection?.value) add('infection', infection);
  const deformity = standing(visits, ({ deformity: found }) => found);
  if (deformity?.value) add('deformity', deformity);
  signs.push(...suddenLosses(course).map((loss): StopNowSign => ({ sign: 'activeLoss', loss })));
  return signs.length > 0 ? { signs } : null;
}

/**
 * Whether feeling was reduced before the device could do it: the hand file says so, or it was noted at an earlier visit when it was made
 * and has not come back since.
 */
function wasReduced({ record, visits, worn, lastIndex }: Course): boolean {
  if (record.hand?.flags.sensation) return true;
  if (worn.start === lastIndex) return false;
  const since = visits.slice(worn.start).map(({ noted }) => noted.sensation);
  return since[0] === 'stays' && since.every((state) => state === null || state === 'stays');
}

/** Active motion suddenly lost and passive motion kept: a tendon may have given way. */
function suddenLosses(course: Course): readonly Loss[] {
  const { before, last, lastIndex } = course;
  if (before === null || last.noted.repeated !== true) return [];
  const [was, is] = [before.goniometry.pip.passive, last.goniometry.pip.passive];
  if (!was || !is) return [];
  return MOTIONS.map((motion) => lossOf(course, motion, lastIndex - 1, 'lastVisit')).filter(({ motion, lost }) => {
    const passiveLost = motion === 'flexion' ? was.flexion - is.flexion : is.extensionDeficit - was.extensionDeficit;
    return lost >= SUDDEN_LOSS && passiveLost <= PASSIVE_KEPT;
  });
}

export function stopRing(course: Course): CourseFigures['STOP_RING'] | null {
  const { visits, worn } = course;
  const signs: StopRingSign[] = [];
  const pain = standing(visits, ({ pain: value }) => value)?.value ?? null;
  const crps = standing(visits, ({ crpsSigns }) => crpsSigns)?.value ?? [];
  if (pain !== null && pain >= CRPS_PAIN && crps.length >= 2) signs.push({ sign: 'crps', pain, signs: crps });
  // Where nothing is noted as made, or nobody asked at the making, nobody knows that strong pain was there before: it counts as risen.
  const painAtMaking = worn.made === null ? null : (visits[worn.start]?.noted.pain ?? null);
  const hasRisen = painAtMaking === null || (pain !== null && pain - painAtMaking >= STRONG_PAIN.over);
  if (pain !== null && pain >= STRONG_PAIN.from && hasRisen) signs.push({ sign: 'pain', pain, atMaking: painAtMaking });
  const paused = notRecoveredFrom(course);
  if (paused !== null) signs.push({ sign: 'notRecovered', pausedOn: paused });
  const mp = mpLost(course, worn.start);
  if (mp !== null && mp.lost >= MP_LOST) signs.push({ sign: 'mpLost', ...mp });
  const beyond = newlyBeyondStraight(course);
  if (beyond !== null) signs.push({ sign: 'beyondStraight', degrees: beyond, otherHand: beyondOf(newestOtherHand({ visits }).pip) });
  return signs.length > 0 ? { signs } : null;
}

/** How far a motion goes beyond straight, 0 or more; null where it was not measured. */
function beyondOf(motion: Motion | undefined): number | null {
  return motion === undefined ? null : Math.max(0, -motion.extensionDeficit);
}

function newlyBeyondStraight({ visits, worn, last, lastIndex }: Course): number | null {
  const making = visits[worn.start];
  if (making === undefined || worn.start === lastIndex) return null;
  const farthest = ({ pip }: Visit['goniometry'], passive: Motion | null = pip.passive ?? null) =>
    Math.max(beyondOf(pip.active) ?? 0, beyondOf(passive ?? undefined) ?? 0);
  const other = beyondOf(newestOtherHand({ visits }).pip);
  // Passive motion that was not measured again stands as it was found.
  const now = farthest(
    last.goniometry,
    newest(visits.slice(worn.start), ({ goniometry }) => goniometry.pip.passive),
  );
  return now >= BEYOND_STRAIGHT && farthest(making.goniometry) < BEYOND_STRAIGHT && (other === null || now > other) ? now : null;
}

/**
 * Passive MP motion lost since a visit, as it was measured last: of bending, of straightening or of both together, whichever is most; null
 * where it was not measured since.
 */
export function mpLost({ visits }: Course, from: number): { lost: number; between: readonly [string, string] } | null {
  const making = visits[from];
  const after = visits.slice(from + 1).findLast(({ goniometry }) => goniometry.mp.passive !== undefined);
  const [was, is] = [making?.goniometry.mp.passive, after?.goniometry.mp.passive];
  if (!making || !after || !was || !is) return null;
  const [bending, straightening] = [was.flexion - is.flexion, is.extensionDeficit - was.extensionDeficit];
  return { lost: Math.max(bending, straightening, bending + straightening), between: [making.date, after.date] };
}

export function pause(course: Course): CourseFigures['PAUSE'] | null {
  const causes = [...signCauses(course), ...motionCauses(course)];
  if (causes.length === 0) return null;
  const byMotion = causes.every(({ cause }) => cause === 'motion' || cause === 'bothMotions');
  return { causes, measureAgain: byMotion && course.last.noted.repeated !== true };
}

/** Whether the advice at the visit before one was to leave the device off: what was worn since then is not the patient's doing. */
export function leftOff({ record, goal }: Course, index: number): 'stop' | 'pause' | null {
  const earlier = index === 0 ? null : courseOf(record, goal, index - 1);
  if (earlier === null) return null;
  if (stopNow(earlier) ?? stopRing(earlier)) return 'stop';
  return pause(earlier) ? 'pause' : null;
}

function signCauses(course: Course): readonly PauseCause[] {
  const { visits } = course;
  const causes: PauseCause[] = [];
  const skin = standing(visits, ({ skin: state }) => state);
  if (skin?.value === 'broken') causes.push({ cause: 'skin', noted: skin.noted });
  for (const cause of ['sensation', 'colour'] as const) {
    const found = standing(visits, (noted) => noted[cause]);
    if (found?.value === 'returned') causes.push({ cause, noted: found.noted });
  }
  const pain = painRise(course);
  if (pain !== null) causes.push(pain);
  return causes;
}

/** Pain that rose between two visits at which it was noted; it stands until it is noted again. */
function painRise({ visits }: Course): PauseCause | null {
  const known = visits.flatMap(({ date, noted }, k) => (noted.pain === null ? [] : [{ date, pain: noted.pain, index: k }]));
  const [before, after] = known.slice(-2);
  if (before === undefined || after === undefined || after.pain - before.pain < PAIN_RISE) return null;
  return { cause: 'pain', before: before.pain, after: after.pain, noted: after.index === visits.length - 1 ? null : after.date };
}

function motionCauses(course: Course): readonly PauseCause[] {
  const { weaning, lastIndex, worn } = course;
  if (weaning || lastIndex === 0) return [];
  const references = [
    { from: lastIndex - 1, since: 'lastVisit' as const },
    ...(worn.start < lastIndex - 1 ? [{ from: worn.start, since: 'making' as const }] : []),
  ];
  const real = MOTIONS.flatMap((motion): PauseCause[] => {
    const losses = references.map(({ from, since }) => ({ loss: lossOf(course, motion, from, since), limit: realLoss(course, from) }));
    const most = losses.filter(({ loss, limit }) => loss.lost >= limit).toSorted((a, b) => b.loss.lost - a.loss.lost)[0];
    return most === undefined ? [] : [{ cause: 'motion', ...most }];
  });
  if (real.length > 0 || worn.start === lastIndex) return real;
  const [extension, flexion] = MOTIONS.map((motion) => lossOf(course, motion, worn.start, 'making'));
  return extension && flexion && extension.lost >= BOTH_WORSE && flexion.lost >= BOTH_WORSE
    ? [{ cause: 'bothMotions', extension, flexion }]
    : [];
}

/** The day of a pause at the visit before whose cause is still there, or in whose place another has come; null where there is none. */
function notRecoveredFrom(course: Course): string | null {
  const { before, lastIndex, record, goal, weaning } = course;
  const earlier = before === null ? null : courseOf(record, goal, lastIndex - 1);
  const paused = earlier && pause(earlier);
  if (!earlier || !paused || before === null) return null;
  // A sign that nobody has looked at since keeps the pause as it is.
  const found = pause(course)?.causes.some((cause) => !('noted' in cause) || cause.noted === null) ?? false;
  return found || paused.causes.some((cause) => stillLost(cause, course, weaning)) ? before.date : null;
}

/** Whether motion whose loss paused the visit before is still as far below what it was compared with. */
function stillLost(cause: PauseCause, { deficits, lastIndex }: Course, weaning: boolean): boolean {
  if (weaning) return false;
  const lostNow = (loss: Loss) => (deficits[lastIndex]?.[loss.motion] ?? 0) - loss.before;
  if (cause.cause === 'motion') return lostNow(cause.loss) >= cause.limit;
  if (cause.cause === 'bothMotions') return [cause.extension, cause.flexion].every((loss) => lostNow(loss) >= BOTH_WORSE);
  return false;
}
