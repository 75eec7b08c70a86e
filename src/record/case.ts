import type { Place } from '../block/block.ts';
import { type Raters, REAL, REAL_SOURCE } from '../block/figures.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import type { ReadMeasures } from '../hand/read-measures.ts';
import type { ChangeState, CrpsSign, SkinState } from '../hand/signs.ts';
import type { Joint } from '../hand/target-motion.ts';
import type { CaseFile, ClosedFile, PLATE_FACES } from './case-schema.ts';

/** Motion of a joint in degrees. A negative extension deficit is a joint that goes beyond straight by as much. */
export interface Motion {
  readonly extensionDeficit: number;
  readonly flexion: number;
}

export interface JointMotion {
  readonly active?: Motion;
  readonly passive?: Motion;
}

export interface MadeStrip {
  readonly kind: 'strip';
  readonly block: { readonly id: string; readonly places: Readonly<Partial<Record<DigitName, Place>>> };
  /** MP angle between held and enclosed digits, degrees; null where the options do not tell it. */
  readonly differential: number | null;
  readonly geometryVersion: string;
  /** mm */
  readonly flatLength: number | null;
}

interface MadePlate {
  readonly kind: 'plate';
  readonly faces: (typeof PLATE_FACES)[number];
  /** MP flexion held, degrees. */
  readonly mpAngle: number;
  readonly geometryVersion: string;
  /** mm */
  readonly flatLength: number | null;
}

export type Made = MadeStrip | MadePlate;

/** One visit; lengths in mm, angles in degrees. */
export interface Visit {
  /** ISO date. */
  readonly date: string;
  readonly goniometry: {
    readonly mp: JointMotion;
    readonly pip: { readonly active: Motion; readonly passive?: Motion };
    readonly dip: JointMotion;
  };
  /** Active motion of the other hand's same digit. */
  readonly otherHand: Readonly<Partial<Record<Joint, Motion>>>;
  readonly measures: Pick<ReadMeasures, 'digits' | 'palm'>;
  readonly made: Made | null;
  readonly noted: Noted;
}

/**
 * What was noted at a visit besides; null where it was not, which is never read as "no" or zero. What is seen of a device is seen of the
 * one worn until this visit.
 */
export interface Noted {
  /** At rest, 0 to 10. */
  readonly pain: number | null;
  readonly skin: SkinState | null;
  readonly sensation: ChangeState | null;
  readonly colour: ChangeState | null;
  readonly infection: boolean | null;
  readonly deformity: boolean | null;
  readonly crpsSigns: readonly CrpsSign[] | null;
  readonly fits: boolean | null;
  readonly redirects: boolean | null;
  /** Hours a day since the visit before. */
  readonly wear: number | null;
  /** Hours a day agreed from this visit on. */
  readonly wearAgreed: number | null;
  readonly rater: string | null;
  /** Whether PIP motion is the mean of three readings. */
  readonly repeated: boolean | null;
  /** degrees */
  readonly measuredDifferential: number | null;
  /** degrees */
  readonly freePip: number | null;
  readonly pencil: { readonly without: Motion | null; readonly with: Motion | null } | null;
  /** mm from the trim mark. */
  readonly closedAt: number | null;
  readonly weaning: boolean | null;
  /** degrees */
  readonly goal: number | null;
  readonly comment: string | null;
}

/** A case that was read and holds. */
export interface Case {
  readonly code: string;
  readonly side: Side;
  /** The digit whose PIP joint is treated. */
  readonly digit: DigitName;
  /** A made-up case, to be marked so wherever it is shown. */
  readonly invented: boolean;
  readonly note: string | null;
  /** The hand that the case was opened with. */
  readonly hand: Hand | null;
  /** By date. */
  readonly visits: readonly Visit[];
  /** When it was closed and why; null for one that goes on. */
  readonly closed: ClosedFile | null;
  /** The file in the present version, visits by date: what a change starts from. */
  readonly file: CaseFile;
}

/** Whether visits were measured by different people; a rater that was not noted is taken to be the same, which believes a loss sooner. */
export function ratersOf(visits: readonly (Pick<Visit, 'noted'> | undefined)[]): Raters {
  const known = visits.flatMap((visit) => (visit?.noted.rater ? [visit.noted.rater.toUpperCase()] : []));
  return new Set(known).size > 1 ? 'mixed' : 'same';
}

/** The least difference in degrees between the readings of two visits that is believed to be one of the joint. */
export function believedChange(before: Pick<Visit, 'noted'> | undefined, after: Pick<Visit, 'noted'> | undefined): number {
  return REAL[ratersOf([before, after])];
}

export const BELIEVED_CHANGE_SOURCE = REAL_SOURCE;
