import type { Case, Made, Motion, Visit } from './case.ts';
import { MEASURING_ERROR } from './goniometry-fields.ts';
import { newestOtherHand } from './total-active-motion.ts';

/** The PIP motion that an orthosis is made for. */
export type Lacking = 'flexion' | 'extension';
export const MOTIONS = ['flexion', 'extension'] as const satisfies readonly Lacking[];

/** Full PIP flexion where the other hand was not measured, degrees: AAOS-type tables. */
export const FULL_PIP_FLEXION = 100;

export type Reading = 'gained' | 'lost' | 'unchanged';

/** One motion between two visits, degrees; `gain` above 0 is better. */
export interface MotionChange {
  readonly before: number;
  readonly after: number;
  readonly gain: number;
  /** A change under the measuring error is read as none. */
  readonly reading: Reading;
  /** What is still lacking after, not under 0: of flexion against the other hand or 100, of extension against straight. */
  readonly deficit: number;
}

export type PipChange = Readonly<Record<Lacking, MotionChange>>;

/** A gain as it may be read: less than the measuring error (Macionis 2013) is no change. */
export function readGain(gain: number): Reading {
  if (gain >= MEASURING_ERROR) return 'gained';
  return gain <= -MEASURING_ERROR ? 'lost' : 'unchanged';
}

/** Active PIP motion from one visit to another. */
export function pipChange(record: Case, from: Visit, to: Visit): PipChange {
  const full = newestOtherHand(record).pip?.flexion ?? FULL_PIP_FLEXION;
  const [before, after] = [from.goniometry.pip.active, to.goniometry.pip.active];
  const change = (motion: Lacking, gain: number, deficit: number): MotionChange => {
    const key = motion === 'flexion' ? 'flexion' : 'extensionDeficit';
    return { before: before[key], after: after[key], gain, reading: readGain(gain), deficit: Math.max(0, deficit) };
  };
  return {
    flexion: change('flexion', after.flexion - before.flexion, full - after.flexion),
    extension: change('extension', before.extensionDeficit - after.extensionDeficit, after.extensionDeficit),
  };
}

/** Whether nothing moved over these visits: no motion's values, active or passive where measured throughout, lie apart by the measuring error. */
export function nothingMoved(visits: readonly Visit[]): boolean {
  const passive = visits.map((visit) => visit.goniometry.pip.passive);
  const runs: (readonly (Motion | undefined)[])[] = [visits.map((visit) => visit.goniometry.pip.active), passive];
  return runs.every((motions) => {
    const known = motions.filter((motion) => motion !== undefined);
    if (known.length < visits.length) return true;
    return (['flexion', 'extensionDeficit'] as const).every((key) => {
      const values = known.map((motion) => motion[key]);
      return Math.max(...values) - Math.min(...values) < MEASURING_ERROR;
    });
  });
}

/** The newest thing made before the last visit, which is what that visit judges; else what was made at it. */
export function wornLast({ visits }: Case): Made | null {
  return visits.slice(0, -1).findLast((visit) => visit.made !== null)?.made ?? visits.at(-1)?.made ?? null;
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
