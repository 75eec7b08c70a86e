import { LACK } from '../../block/figures.ts';
import type { NextArrangement } from '../../block/next-arrangement.ts';
import { PIP_FLEXION_NORM } from '../../hand/target-motion.ts';
import { daysBetween } from '../../units/day.ts';
import type { Lacking, Loss } from '../../words/advice/course/course-figures.ts';
import { believedChange, type Case, type Made, ratersOf, type Visit } from '../case.ts';
import { newestOtherHand } from '../total-active-motion.ts';
import { type Reading, slopeOf } from './slope.ts';

/** What is lacking of active PIP motion at a visit, degrees, not under 0. */
export type Deficits = Readonly<Record<Lacking, number>>;

export const MOTIONS = ['extension', 'flexion'] as const satisfies readonly Lacking[];

/** Time with one device: from the visit at which it was made until another takes its place. A remake for size does not end it. */
export interface Device {
  /** Index of the visit at which it was made; of the first visit where nothing was noted as made. */
  readonly start: number;
  /** Index of the visit of its newest remake for size. */
  readonly sized: number;
  readonly made: Made | null;
}

/** What the rules read of a case up to its last visit. */
export interface Course {
  readonly record: Pick<Case, 'visits' | 'hand' | 'digit'>;
  readonly visits: readonly Visit[];
  readonly last: Visit;
  readonly lastIndex: number;
  readonly before: Visit | null;
  readonly deficits: readonly Deficits[];
  /** Every device in order; never empty. */
  readonly devices: readonly Device[];
  /** In use after the last visit. */
  readonly device: Device;
  /** Worn until the last visit, which is what the signs of harm at that visit tell of; at a first visit the one made at it. */
  readonly worn: Device;
  /** Whether the last visit is the one at which the device in use was made: nothing is known of it yet. */
  readonly justMade: boolean;
  readonly served: Lacking;
  readonly weaning: boolean;
  /** The deficit with which the patient is content. */
  readonly goal: number;
  readonly goalIsOwn: boolean;
  readonly daysSinceMaking: number;
  /** What the plan would try after the strip in use, first to last; empty where it cannot be told. */
  readonly nextBlocks: readonly NextArrangement[];
}

/** Full PIP flexion that this finger is held against: the other hand's, of a visit or of the hand file, else 100. */
export function fullFlexion(record: Pick<Case, 'visits' | 'hand'>): number {
  return newestOtherHand(record).pip?.flexion ?? record.hand?.target?.otherHandPip?.flexion ?? PIP_FLEXION_NORM;
}

/** What is lacking at each visit: extension against straight, flexion against the other hand's or 100. */
export function deficitsOf(record: Pick<Case, 'visits' | 'hand'>): readonly Deficits[] {
  const full = fullFlexion(record);
  return record.visits.map(({ goniometry: { pip } }) => ({
    extension: Math.max(0, pip.active.extensionDeficit),
    flexion: Math.max(0, full - pip.active.flexion),
  }));
}

/** The course up to the visit `lastIndex`; null for a case without visits. @param goal where the patient has none of their own, degrees */
export function courseOf(
  record: Course['record'],
  goal: number,
  lastIndex: number = record.visits.length - 1,
  nextBlocks: readonly NextArrangement[] = [],
): Course | null {
  const visits = record.visits.slice(0, lastIndex + 1);
  const last = visits.at(-1);
  if (last === undefined) return null;
  // The other hand is measured when it is; what it tells of full flexion holds for all visits.
  const deficits = deficitsOf(record).slice(0, lastIndex + 1);
  const devices = devicesOf(visits);
  const device = devices.at(-1) as Device;
  const worn = devices.findLast(({ start }) => start < lastIndex) ?? device;
  const own = newest(visits, (visit) => visit.noted.goal);
  return {
    record,
    visits,
    last,
    lastIndex,
    before: visits.at(-2) ?? null,
    deficits,
    devices,
    device,
    worn,
    justMade: device.made !== null && device.start === lastIndex,
    served: servedBy(device, record.digit, deficits),
    weaning: newest(visits.slice(device.start), (visit) => visit.noted.weaning) ?? false,
    goal: own ?? goal,
    goalIsOwn: own !== null,
    daysSinceMaking: daysBetween(visits[device.start]?.date ?? last.date, last.date),
    nextBlocks,
  };
}

function devicesOf(visits: readonly Visit[]): readonly Device[] {
  const devices: Device[] = [];
  for (const [k, { made }] of visits.entries()) {
    const current = devices.at(-1);
    if (made === null) continue;
    if (current?.made && isRemake(current.made, made)) devices.splice(-1, 1, { ...current, sized: k });
    else devices.push({ start: k, sized: k, made });
  }
  return devices.length > 0 && devices[0]?.start === 0 ? devices : [{ start: 0, sized: 0, made: null }, ...devices];
}

/** The same device in another size: same direction, same digits, same angle. */
function isRemake(before: Made, after: Made): boolean {
  if (before.kind === 'plate') return after.kind === 'plate' && after.mpAngle === before.mpAngle;
  if (after.kind === 'plate') return false;
  const places = (made: typeof before) => JSON.stringify(Object.entries(made.block.places).sort());
  return places(before) === places(after) && before.differential === after.differential;
}

/** Of a strip the motion that it is made for; of anything else the larger deficit at making, of equals extension, the weaker motion. */
function servedBy({ made, start }: Device, digit: Case['digit'], deficits: readonly Deficits[]): Lacking {
  const of = made?.kind === 'strip' ? servedMotion(made, digit) : null;
  const { extension = 0, flexion = 0 } = deficits[start] ?? {};
  return of ?? (flexion > extension ? 'flexion' : 'extension');
}

export function otherMotion(motion: Lacking): Lacking {
  return motion === 'flexion' ? 'extension' : 'flexion';
}

/** The newest value that was noted, or null. */
export function newest<T>(visits: readonly Visit[], value: (visit: Visit) => T | null | undefined): T | null {
  for (const visit of visits.toReversed()) {
    const found = value(visit);
    if (found !== null && found !== undefined) return found;
  }
  return null;
}

/** How far a deficit rose from one visit to the last, negative for a gain. */
export function lossOf(course: Course, motion: Lacking, from: number, since: Loss['since']): Loss {
  const [before, after] = [course.deficits[from]?.[motion] ?? 0, course.deficits[course.lastIndex]?.[motion] ?? 0];
  return { motion, lost: after - before, before, after, since, between: [course.visits[from]?.date ?? '', course.last.date] };
}

/** The least loss between a visit and the last that is believed. */
export function realLoss({ visits, last }: Course, from: number): number {
  return believedChange(visits[from], last);
}

/** Deficits of a motion since the making of the device in use, in the last six weeks or the last six visits, whichever reaches back further. */
export function readingsOf({ visits, device, last, deficits }: Course, motion: Lacking): readonly (Reading & { readonly visit: Visit })[] {
  const all = visits.flatMap((visit, k) => (k < device.start ? [] : [{ visit, date: visit.date, deficit: deficits[k]?.[motion] ?? 0 }]));
  return all.filter(({ date }, k) => daysBetween(date, last.date) <= WINDOW_DAYS || k >= all.length - WINDOW_VISITS);
}

export const WINDOW_DAYS = 42;
export const WINDOW_VISITS = 6;

export function servedSlope(course: Course) {
  const readings = readingsOf(course, course.served);
  return slopeOf(readings, course.served, ratersOf(readings.map(({ visit }) => visit)), course.goal);
}

/** Hours a day that were agreed for the time before a visit: noted at an earlier visit, else at this one. */
export function agreedBefore(visits: readonly Visit[], index: number): number | null {
  return newest(visits.slice(0, index), ({ noted }) => noted.wearAgreed) ?? visits[index]?.noted.wearAgreed ?? null;
}

/** Hours a day where nothing was agreed, of which less than half counts as too little. */
export const USUAL_WEAR = 4;

/** Whether it was worn for at least half of what was agreed (2 hours where nothing was); null where that was not noted. */
export function wornEnough(visits: readonly Visit[], index: number): boolean | null {
  const wear = visits[index]?.noted.wear ?? null;
  return wear === null ? null : wear >= (agreedBefore(visits, index) ?? USUAL_WEAR) / 2;
}

export function allUnderLack(deficits: Deficits | undefined): boolean {
  return deficits !== undefined && deficits.extension < LACK && deficits.flexion < LACK;
}

/**
 * The PIP motion that a strip serves on the treated digit: its own MP joint in relative extension serves flexion, in relative flexion
 * extension (trial registration NCT06985459). A held digit is held as its place says, an enclosed one the other way by comparison.
 */
export function servedMotion(made: Extract<Made, { kind: 'strip' }>, digit: Case['digit']): Lacking | null {
  const own = made.block.places[digit];
  if (own === undefined) return null;
  if (own !== 'enclosed') return own === 'raised' ? 'flexion' : 'extension';
  return Object.values(made.block.places).includes('raised') ? 'extension' : 'flexion';
}
