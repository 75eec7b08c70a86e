import type { NextArrangement } from '../../../block/next-arrangement.ts';
import type { CrpsSign, HarmKey } from '../../../hand/signs.ts';

/** The motion of the PIP joint that lacks, or that a device is made for. */
export type Lacking = 'flexion' | 'extension';

/** A motion whose deficit rose: from what to what, degrees, and between which days. */
export interface Loss {
  readonly motion: Lacking;
  readonly lost: number;
  readonly before: number;
  readonly after: number;
  /** The visit that it is compared with: the one before, or the one at which the device in use was made. */
  readonly since: 'lastVisit' | 'making';
  readonly between: readonly [from: string, to: string];
}

/** Why to stop on the same day. `noted`: the day of a sign that has not been looked at since, null for one of the last visit. */
export type StopNowSign =
  | { readonly sign: 'colour' | 'sensation' | 'infection' | 'deformity'; readonly noted: string | null }
  | { readonly sign: 'activeLoss'; readonly loss: Loss };

/** Why to stop and have it looked at within a working day. Pain 0 to 10, motion in degrees. */
export type StopRingSign =
  | { readonly sign: 'crps'; readonly pain: number; readonly signs: readonly CrpsSign[] }
  | { readonly sign: 'pain'; readonly pain: number; readonly atMaking: number | null }
  | { readonly sign: 'notRecovered'; readonly pausedOn: string }
  | { readonly sign: 'mpLost'; readonly lost: number; readonly between: readonly [string, string] }
  | { readonly sign: 'beyondStraight'; readonly degrees: number; readonly otherHand: number | null };

export type PauseCause =
  | { readonly cause: 'skin' | 'sensation' | 'colour'; readonly noted: string | null }
  | { readonly cause: 'pain'; readonly before: number; readonly after: number; readonly noted: string | null }
  | { readonly cause: 'motion'; readonly loss: Loss; readonly limit: number }
  | { readonly cause: 'bothMotions'; readonly extension: Loss; readonly flexion: Loss };

/** Which angle of the device to change, from what, and the range to try, degrees. */
export interface AngleChange {
  readonly what: 'differential' | 'mpAngle';
  readonly toward: Lacking;
  readonly from: number;
  readonly to: readonly [low: number, high: number];
}

/** How fast a deficit falls, degrees a week; `low` and `high` are 1.64 standard errors away. */
export interface Slope {
  readonly motion: Lacking;
  readonly degreesPerWeek: number;
  readonly low: number;
  readonly high: number;
  readonly standardError: number;
  readonly visits: number;
  readonly between: readonly [string, string];
  /** When the goal is reached at this rate; null beyond 12 weeks or where it is reached. `latest` is null beyond 12 weeks. */
  readonly goalBy: { readonly date: string; readonly earliest: string; readonly latest: string | null } | null;
}

/** What each rule was computed from. Degrees, mm, hours a day, days; days of visits as ISO dates. */
export interface CourseFigures {
  readonly STOP_NOW: { readonly signs: readonly StopNowSign[] };
  readonly STOP_RING: { readonly signs: readonly StopRingSign[] };
  /** `measureAgain`: it rests on motion that was read once at this visit. */
  readonly PAUSE: { readonly causes: readonly PauseCause[]; readonly measureAgain: boolean };
  /** `hours`: those at which motion last held, null where they were not noted. */
  readonly RELAPSE: { readonly motion: Lacking; readonly lost: number; readonly hours: number | null; readonly again: boolean };
  readonly WEAN: { readonly hours: number | null };
  readonly GOAL: { readonly extension: number; readonly flexion: number; readonly goal: number; readonly plate: boolean };
  readonly MP_STIFF: { readonly lost: number; readonly between: readonly [string, string] };
  readonly FIT: {
    readonly marks: boolean;
    readonly loose: boolean;
    readonly girth: {
      readonly at: 'circumference' | 'pipCircumference';
      readonly before: number;
      readonly after: number;
      readonly limit: number;
    } | null;
  };
  readonly SWITCH: {
    readonly other: Lacking;
    readonly otherDeficit: number;
    readonly servedDeficit: number;
    readonly why: 'servedDone' | 'otherWorse';
  };
  readonly TEACH: { readonly wear: number; readonly agreed: number | null; readonly times: number };
  readonly IDLE: { readonly nextBlocks: readonly NextArrangement[] };
  readonly ENOUGH: { readonly extension: number; readonly flexion: number; readonly days: number };
  readonly GAINING: Slope;
  readonly REFER: { readonly slope: Slope; readonly changes: number };
  readonly PLATEAU: { readonly slope: Slope; readonly change: AngleChange | null; readonly nextBlocks: readonly NextArrangement[] };
  readonly REVIEW: { readonly days: number; readonly slope: Slope | null };
  readonly WAIT: { readonly nextBy: string | null; readonly visits: number };
}

export type CourseRule = keyof CourseFigures;

/** Where a rule is from: nowhere but practice, the signs of CRPS, the measuring error, the slope with that error. */
export type CourseSource = 'noSource' | 'crps' | 'measuring' | 'slope';

/** What has to be asked or borne in mind besides the steps. */
export interface CourseReminders {
  readonly HARM_NOT_NOTED: { readonly missing: readonly HarmKey[] };
  /** PIP motion was read once, and later visits are compared with it: at the making, or `lost` degrees better than at the visit before. */
  readonly MEASURE_AGAIN: { readonly why: 'making' } | { readonly why: 'better'; readonly gain: Loss };
  readonly WEAR_NOT_NOTED: Readonly<Record<never, never>>;
  readonly AFTER_PAUSE: { readonly on: string };
  readonly AFTER_STOP: { readonly on: string };
  readonly MP_NOT_MEASURED: Readonly<Record<never, never>>;
  readonly DEVICE_NOT_NOTED: Readonly<Record<never, never>>;
}
export type CourseReminder = keyof CourseReminders;
