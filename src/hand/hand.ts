import type { LengthUnit } from '../units/length.ts';
import type { DigitName, Side, WebName } from './digits.ts';
import type { DIGIT_FIELDS, PALM_FIELDS, ValuesOf, WebFieldId } from './fields.ts';
import type { HandFile } from './hand-schema.ts';
import type { CentralSlip, StopSign } from './signs.ts';
import type { JointReading, TargetMotion } from './target-motion.ts';

/** One digit, mm; how each is measured stands in `DIGIT_FIELDS`. */
export type DigitMeasures = ValuesOf<typeof DIGIT_FIELDS>;

/** The hand as a whole, mm; only a plate needs these. */
export type PalmMeasures = ValuesOf<typeof PALM_FIELDS>;

/** What was measured at the webs, mm. */
export type WebMeasures = { readonly [Id in WebFieldId]: Readonly<Partial<Record<WebName, number>>> };

/** The digit to be treated and what is known of it, degrees. Only what was measured or said is there, but for the two active deficits. */
export interface Target extends Readonly<Partial<Record<TargetMotion, JointReading>>> {
  readonly digit: DigitName;
  readonly pipExtensionDeficit: number;
  readonly pipFlexionDeficit: number;
  readonly pipExtensionDeficitPassive?: number;
  readonly pipFlexionDeficitPassive?: number;
  /** What the flexion deficit was reckoned from, where it follows from the flexion that was read. */
  readonly flexionExpected?: { readonly degrees: number; readonly from: 'otherHand' | 'norm' };
  /** How often each motion was measured, the deficit being the mean; once where it is not said. */
  readonly readings?: { readonly extension?: number | undefined; readonly flexion?: number | undefined };
  readonly diagnosis?: string;
  /** Weeks since the injury or operation. */
  readonly weeks?: number;
  /** The finger has a boutonniere deformity. */
  readonly boutonniere?: boolean;
  /** Outcome of the central slip test. */
  readonly centralSlip?: CentralSlip;
  readonly stopSigns?: readonly StopSign[];
  /** The surgeon has agreed to a device in spite of an open wound, pins or a doubtful central slip. */
  readonly surgeonAgrees?: boolean;
}

/** What calls for caution; see `FLAG_MEANINGS`. */
export interface Flags {
  readonly hypermobile: readonly DigitName[];
  readonly swelling: boolean;
  readonly sensation: boolean;
  readonly hardEndFeel: boolean;
  readonly unprotectedRepair: boolean;
}

/** A length that was not measured; every output says so. */
export interface Estimate {
  /** Path of the field, e.g. `digits.ring.palmarRoom`. */
  readonly where: string;
  readonly digit: DigitName;
  readonly field: 'palmarRoom' | 'dorsalLength';
  readonly mm: number;
  /** Standard deviation to reckon with, mm, in place of the field's measuring error. */
  readonly spread: number;
  /** What it was computed from, with the sources. */
  readonly basis: string;
}

/** A hand that was read, is plausible and complete; lengths in mm, angles in degrees, all finite. */
export interface Hand {
  readonly code: string;
  readonly side: Side;
  /** The unit the person works in, for showing lengths back. */
  readonly units: LengthUnit;
  readonly digits: Readonly<Partial<Record<DigitName, DigitMeasures>>>;
  /** Digits that the hand does not have: neither measured nor asked for. */
  readonly absent?: readonly DigitName[];
  /** Small parts and supervision are said where it is a child's. */
  readonly child?: boolean;
  readonly palm: PalmMeasures;
  /** What was measured at the webs; absent when nothing was. */
  readonly webs?: WebMeasures;
  readonly target: Target | null;
  readonly flags: Flags;
  readonly estimated: readonly Estimate[];
  /** A made-up hand, to be marked so wherever it is shown. */
  readonly invented: boolean;
  readonly note: string | null;
  /** The file as it was read, to travel with what is made from it. */
  readonly source: HandFile;
}
