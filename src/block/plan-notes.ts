import type { DigitName } from '../hand/digits.ts';
import type { StopSign } from '../hand/signs.ts';
import type { Place } from './block.ts';
import type { StripNeed } from './deficit-kind.ts';
import { LACK_SOURCE, SIGMA_SOURCE } from './figures.ts';

/** The two motions of a PIP joint. */
export type Motion = 'extension' | 'flexion';

/** Who is to be asked before anything is made, and how soon. */
export type Ask = 'surgeonSameDay' | 'surgeonWorkingDay' | 'surgeonBefore' | 'referrer';

/** Every rule of the plan with the figures that its sentence holds: degrees, weeks, chances 0 to 1. The sentences stand in `words/advice/plan`. */
export interface PlanFigures {
  readonly STOP_SIGN: { readonly sign: StopSign; readonly ask: Ask };
  readonly UNPROTECTED_REPAIR: object;
  readonly HARD_END_FEEL: object;
  /** `weeks` null where not known; `active` and `passive` are what extension lacks. */
  readonly CENTRAL_SLIP: { readonly active: number; readonly passive: number; readonly weeks: number | null };
  readonly CENTRAL_SLIP_TORN: object;
  readonly BOUTONNIERE_EARLY: { readonly weeks: number | null };
  readonly BOUTONNIERE_CAST: { readonly passive: number };
  readonly BOUTONNIERE_MEASURE: object;
  /** `other` null where the other hand was not measured. */
  readonly BEYOND_STRAIGHT: { readonly beyond: number; readonly other: number | null };
  readonly NOTHING_LACKS: { readonly extension: number; readonly flexion: number };
  readonly SLIGHT: { readonly motion: Motion; readonly deficit: number };
  readonly ANYWAY: { readonly motion: Motion; readonly deficit: number };
  readonly PLATE_FIRST: { readonly smaller: number; readonly larger: number };
  readonly STRIP_FIRST: { readonly smaller: number; readonly larger: number };
  readonly MEASURE_AGAIN: { readonly motion: Motion; readonly deficit: number; readonly chance: number };
  readonly STILL_UNSURE: { readonly motion: Motion; readonly deficit: number; readonly chance: number; readonly readings: number };
  readonly PASSIVE_ALIKE: { readonly motion: Motion; readonly active: number; readonly passive: number };
  readonly LARGE_DEFICIT: { readonly motion: Motion; readonly deficit: number };
  readonly MEASURE_PASSIVE: { readonly motion: Motion };
  readonly MEASURE_MP: object;
  readonly PLATE_ANGLE: { readonly extension: number; readonly flexion: number; readonly degrees: number };
  readonly PLATE_MOVED: { readonly wanted: number; readonly degrees: number; readonly from: number; readonly to: number };
  readonly NO_PLATE: { readonly extension: number; readonly flexion: number; readonly from: number; readonly to: number };
  readonly PLATE_NEXT: object;
  readonly PLATE_HOURS: object;
  readonly STRIP_WEAR: object;
  readonly FLEXION_AGAINST: { readonly degrees: number; readonly from: 'otherHand' | 'norm' };
  readonly SENSATION: object;
  readonly SWELLING: object;
  readonly HYPERMOBILE: { readonly digits: readonly DigitName[] };
  readonly CHILD: object;
  readonly NO_NEIGHBOUR: { readonly digit: DigitName; readonly absent: readonly DigitName[] };
  readonly NO_BLOCK_LEFT: { readonly digit: DigitName; readonly absent: readonly DigitName[] };
  readonly EVIDENCE: { readonly motion: Motion };
}
export type PlanRule = keyof PlanFigures;

/**
 * `stop`: nothing is suggested. `confirm`: nothing is suggested until the clinician confirms. `first`: to be done or weighed before anything
 * is made. `caution`: to be minded while it is made and worn. `note`: how the plan came about.
 */
export type Level = 'stop' | 'confirm' | 'first' | 'caution' | 'note';

/** One thing that the plan says: which rule, how grave, from what figures and on whose word. */
export type PlanNote = {
  [R in PlanRule]: { readonly rule: R; readonly level: Level; readonly source: string } & PlanFigures[R];
}[PlanRule];

const OURS = 'common practice, no source';
const MERRITT = 'Merritt & Jarrell, Ann Plast Surg 2020;84(3S):S141';
const TRIAL = 'trial registration NCT06985459';
const MARGIN = `${TRIAL} asks 10 degrees between active and passive motion; what to do else: ${OURS}`;

const SOURCES: Readonly<Record<PlanRule, string>> = {
  STOP_SIGN: OURS,
  UNPROTECTED_REPAIR: OURS,
  HARD_END_FEEL: OURS,
  CENTRAL_SLIP: OURS,
  CENTRAL_SLIP_TORN: OURS,
  BOUTONNIERE_EARLY: OURS,
  BOUTONNIERE_CAST: MERRITT,
  BOUTONNIERE_MEASURE: MERRITT,
  BEYOND_STRAIGHT: OURS,
  NOTHING_LACKS: LACK_SOURCE,
  SLIGHT: OURS,
  ANYWAY: OURS,
  PLATE_FIRST: `${OURS}; the ${TRIAL} gives a strip by the greater deficit in every case`,
  STRIP_FIRST: `strip by the greater deficit: ${TRIAL}; the third: ${OURS}`,
  MEASURE_AGAIN: SIGMA_SOURCE,
  STILL_UNSURE: SIGMA_SOURCE,
  PASSIVE_ALIKE: MARGIN,
  LARGE_DEFICIT: OURS,
  MEASURE_PASSIVE: MARGIN,
  MEASURE_MP: OURS,
  PLATE_ANGLE: 'common practice, no published source for the interpolation',
  PLATE_MOVED: OURS,
  NO_PLATE: OURS,
  PLATE_NEXT: OURS,
  PLATE_HOURS: OURS,
  STRIP_WEAR:
    'survey of 108 therapists: Yates et al., J Hand Ther 2023;36:414; hours of other orthoses: Valdes et al., J Hand Ther 2019;32:184 (abstracts seen)',
  FLEXION_AGAINST: 'PIP flexion 100: AAOS-type tables',
  SENSATION: OURS,
  SWELLING: 'fit is hard with changing swelling: Yates et al., J Hand Ther 2023;36:414 (abstract seen)',
  HYPERMOBILE: OURS,
  CHILD: OURS,
  NO_NEIGHBOUR: OURS,
  NO_BLOCK_LEFT: 'rules of the arrangement: three or four neighbours, both borders enclosed',
  EVIDENCE:
    'meta-analysis of 12 trials: Yates et al., J Hand Ther 2024;37:495 (abstract seen); prospective case series: Wajon & Howell, J Hand Ther 2023;36:378 (abstract seen)',
};

/** Every rule, in the order of the table above. */
export const PLAN_RULES = Object.keys(SOURCES) as readonly PlanRule[];

/** A note of the plan with its source. */
export function planNote<R extends PlanRule>(rule: R, level: Level, figures: PlanFigures[R]): PlanNote {
  return { rule, level, source: SOURCES[rule], ...figures } as unknown as PlanNote;
}

/** Why a block has the points that it has, by term; mm and degrees. */
export interface ReasonFigures {
  readonly ROTATION_FOUR: object;
  readonly ROTATION_HYPERMOBILE: object;
  readonly ROTATION_BORDER: { readonly digit: DigitName };
  readonly ROTATION_BOTH_SIDES: { readonly digit: DigitName };
  readonly HOLD_OWN: { readonly digit: DigitName; readonly place: Place; readonly need: StripNeed; readonly degrees: number };
  readonly HOLD_OTHERS: {
    readonly digit: DigitName;
    readonly held: readonly DigitName[];
    readonly place: Place;
    readonly need: StripNeed;
    readonly degrees: number;
  };
  readonly NEIGHBOURS: { readonly degrees: number };
  readonly NEIGHBOURS_NONE: { readonly digit: DigitName };
  readonly FREE_ALL: object;
  readonly FREE: { readonly digit: DigitName; readonly degrees: number };
  readonly FREE_STOPPED: { readonly digit: DigitName; readonly degrees: number; readonly least: number };
  readonly LENGTH_SHORTEST: { readonly mm: number };
  readonly LENGTH_MORE: { readonly mm: number; readonly more: number };
  readonly LAYERS: { readonly count: number };
}
export type ReasonRule = keyof ReasonFigures;
export type Reason = { [R in ReasonRule]: { readonly rule: R } & ReasonFigures[R] }[ReasonRule];
