import type { Hand, Target } from '../hand/hand.ts';
import { shortOfStraight } from '../hand/target-motion.ts';
import { type Lacks, lacksOf, type Need, needOf, type StripNeed } from './deficit-kind.ts';
import {
  BEYOND,
  BOUTONNIERE_PASSIVE,
  chanceOfLacking,
  ENOUGH_READINGS,
  LACK,
  LARGE,
  PASSIVE_MARGIN,
  PLATE_SHARE,
  readingSpread,
  SLIGHT,
  SLIP_LAG,
  SLIP_WEEKS,
  UNSURE,
} from './figures.ts';
import { careNotes, confirmNotes, stopNotes } from './hand-notes.ts';
import { type MpAngle, type MpMotion, mpAngle } from './mp-angle.ts';
import { type Motion, type PlanNote, planNote } from './plan-notes.ts';

/** What the person adds to the hand file for the decision. */
export interface PlanWishes {
  /** The clinician has examined the hand and takes on an unprotected repair or fracture, or a hard end-feel. */
  readonly clinicianConfirms: boolean;
  /** A device is wanted although no motion lacks `LACK` degrees: then `SLIGHT` counts. */
  readonly anyway?: boolean;
}

export type Device = 'strip' | 'plate';

/** What serves, if the motions that count as lacking are these. */
export interface Arrangement {
  readonly need: Need;
  /** What to make, first to last; one is made at a time. Empty where nothing is lacking or nothing serves. */
  readonly order: readonly Device[];
  /** The motion that a strip would serve; null where none is named. */
  readonly stripNeed: StripNeed | null;
  /** Where a plate is named. */
  readonly plate: MpAngle | null;
}

/** The other plan where measuring does not settle whether a motion lacks. */
export interface Alternative extends Arrangement {
  readonly motion: Motion;
}

/** The decision before any pattern is computed. */
export interface Decision extends Arrangement {
  /** The chance that the true deficit is `LACK` or more, by measuring error alone. */
  readonly lacking: Readonly<Record<Motion, number>>;
  readonly alternatives: readonly Alternative[];
  /** In the order of the rules; what stops comes first. With a note of level `stop` or `confirm`, `order` is empty. */
  readonly notes: readonly PlanNote[];
}

export const MOTIONS: readonly Motion[] = ['extension', 'flexion'];

/** Most MP flexion of a plate for such a joint, degrees. */
const BEYOND_MOST_MP = 45;

/**
 * The decision for a target by the rules in their order: stop signs, what is lacking, how sure that is, the plate's angle, active against passive
 * motion, beyond straight. Patterns and absent digits come after it. See `PlanFigures` for what is said, and `Decision` for what it holds.
 */
export function decide(hand: Pick<Hand, 'flags' | 'child'>, target: Target, wishes: PlanWishes): Decision {
  const lacks = lacksOf(target, wishes.anyway === true);
  const need = needOf(lacks);
  const beyond = beyondStraight(target);
  const arranged = arrange(target, lacks, beyond !== null);
  const unsure = MOTIONS.filter((motion) => isUnsure(target, motion));
  const stops = [
    ...stopNotes(target),
    ...confirmNotes(hand, wishes.clinicianConfirms || need === 'none'),
    ...slipNotes(target),
    ...(lacks.extension ? boutonniereNotes(target) : []),
    ...(beyond && need !== 'none' ? [planNote('BEYOND_STRAIGHT', arranged.order.length === 0 ? 'stop' : 'first', beyond)] : []),
  ];
  const isStopped = stops.some(({ level }) => level === 'stop' || level === 'confirm');
  // What is measured first moves the joint: nothing is asked for that while something stops it.
  const first = isStopped
    ? []
    : [
        ...unsure.map((motion) => unsureNote(target, motion)),
        ...MOTIONS.filter((motion) => lacks[motion]).flatMap((motion) => passiveNotes(target, motion, hand.flags.unprotectedRepair)),
        ...(need === 'both' && !isMpKnown(target) ? [planNote('MEASURE_MP', 'first', {})] : []),
      ];
  return {
    ...(isStopped ? { need, order: [], stripNeed: arranged.stripNeed, plate: null } : arranged),
    lacking: { extension: chance(target, 'extension'), flexion: chance(target, 'flexion') },
    alternatives: isStopped ? [] : unsure.flatMap((motion) => alternative(target, lacks, motion, beyond !== null)),
    notes: [
      ...stops.toSorted((a, b) => Number(b.level === 'stop') - Number(a.level === 'stop')),
      ...first,
      ...careNotes(hand),
      ...needNotes(target, lacks, wishes.anyway === true),
      ...(isStopped ? [] : plateNotes(target, arranged)),
      ...(isStopped ? [] : wearNotes(arranged)),
    ],
  };
}

export function deficitOf(target: Target, motion: Motion): number {
  return motion === 'extension' ? target.pipExtensionDeficit : target.pipFlexionDeficit;
}

function passiveOf(target: Target, motion: Motion): number | undefined {
  return motion === 'extension' ? target.pipExtensionDeficitPassive : target.pipFlexionDeficitPassive;
}

/** What serves where these motions lack; the strip for the larger deficit, for extension of equals, the weaker motion. */
function arrange(target: Target, lacks: Lacks, isBeyond: boolean): Arrangement {
  const { pipExtensionDeficit: e, pipFlexionDeficit: f } = target;
  const need = needOf(lacks);
  if (need === 'none') return { need, order: [], stripNeed: null, plate: null };
  const served: StripNeed = need === 'both' ? (f > e ? 'pipFlexion' : 'pipExtension') : need;
  const stripNeed = served === 'pipExtension' && isBeyond ? null : served;
  const plate = need === 'both' ? mpAngle(e, f, mpMotion(target), isBeyond ? BEYOND_MOST_MP : undefined) : null;
  const strip: readonly Device[] = stripNeed === null ? [] : ['strip'];
  const plates: readonly Device[] = plate === null ? [] : ['plate'];
  return { need, order: isPlateFirst(e, f) ? [...plates, ...strip] : [...strip, ...plates], stripNeed, plate };
}

function isPlateFirst(e: number, f: number): boolean {
  return Math.min(e, f) >= Math.max(e, f) * PLATE_SHARE;
}

function mpMotion({ mpPassive }: Target): MpMotion {
  return { from: shortOfStraight(mpPassive), to: mpPassive?.flexion };
}

function isMpKnown(target: Target): boolean {
  const { from, to } = mpMotion(target);
  return from !== undefined && to !== undefined;
}

function needNotes(target: Target, lacks: Lacks, anyway: boolean): readonly PlanNote[] {
  const { pipExtensionDeficit: e, pipFlexionDeficit: f, flexionExpected } = target;
  const notes: PlanNote[] = [];
  const need = needOf(lacks);
  if (need === 'none') notes.push(planNote('NOTHING_LACKS', 'note', { extension: e, flexion: f }));
  for (const motion of MOTIONS) {
    const deficit = deficitOf(target, motion);
    if (deficit < SLIGHT || deficit >= LACK) continue;
    notes.push(planNote(anyway && lacks[motion] ? 'ANYWAY' : 'SLIGHT', 'note', { motion, deficit }));
  }
  if (need === 'both') {
    const figures = { smaller: Math.min(e, f), larger: Math.max(e, f) };
    notes.push(planNote(isPlateFirst(e, f) ? 'PLATE_FIRST' : 'STRIP_FIRST', 'note', figures));
  }
  if (flexionExpected) notes.push(planNote('FLEXION_AGAINST', 'note', flexionExpected));
  return notes;
}

function plateNotes(target: Target, { need, plate }: Arrangement): readonly PlanNote[] {
  if (need !== 'both') return [];
  const { pipExtensionDeficit: extension, pipFlexionDeficit: flexion } = target;
  const { from = 0, to = 90 } = mpMotion(target);
  if (!plate) return [planNote('NO_PLATE', 'first', { extension, flexion, from, to })];
  const { wanted, degrees } = plate;
  return [
    planNote('PLATE_ANGLE', 'note', { extension, flexion, degrees: wanted }),
    ...(degrees === wanted ? [] : [planNote('PLATE_MOVED', 'note', { wanted, degrees, from: plate.range[0], to: plate.range[1] })]),
    planNote('PLATE_NEXT', 'note', {}),
    planNote('PLATE_HOURS', 'caution', {}),
  ];
}

function wearNotes({ order, stripNeed }: Arrangement): readonly PlanNote[] {
  if (!order.includes('strip') || stripNeed === null) return [];
  return [
    planNote('STRIP_WEAR', 'note', {}),
    planNote('EVIDENCE', 'note', { motion: stripNeed === 'pipExtension' ? 'extension' : 'flexion' }),
  ];
}

function readingsOf(target: Target, motion: Motion): number {
  return target.readings?.[motion] ?? 1;
}

function chance(target: Target, motion: Motion): number {
  return chanceOfLacking(deficitOf(target, motion), readingSpread('same', readingsOf(target, motion)));
}

function isUnsure(target: Target, motion: Motion): boolean {
  const p = chance(target, motion);
  return p >= UNSURE.from && p <= UNSURE.to;
}

function unsureNote(target: Target, motion: Motion): PlanNote {
  const figures = { motion, deficit: deficitOf(target, motion), chance: chance(target, motion) };
  const readings = readingsOf(target, motion);
  return readings < ENOUGH_READINGS
    ? planNote('MEASURE_AGAIN', 'first', figures)
    : planNote('STILL_UNSURE', 'first', { ...figures, readings });
}

/** The plan with the motion the other way round, once it has been measured often enough. A deficit of nothing makes no plate. */
function alternative(target: Target, lacks: Lacks, motion: Motion, isBeyond: boolean): readonly Alternative[] {
  if (readingsOf(target, motion) < ENOUGH_READINGS) return [];
  return [{ motion, ...arrange(target, { ...lacks, [motion]: !lacks[motion] }, isBeyond) }];
}

/** Active against passive motion where it lacks; an unprotected repair is not moved by an examiner to find out. */
function passiveNotes(target: Target, motion: Motion, isUnprotected: boolean): readonly PlanNote[] {
  const active = deficitOf(target, motion);
  const passive = passiveOf(target, motion);
  const notes: PlanNote[] = [];
  if (passive === undefined && !isUnprotected) notes.push(planNote('MEASURE_PASSIVE', 'first', { motion }));
  if (passive !== undefined && passive >= LACK && active - passive < PASSIVE_MARGIN)
    notes.push(planNote('PASSIVE_ALIKE', 'first', { motion, active, passive }));
  if (active >= LARGE) notes.push(planNote('LARGE_DEFICIT', 'first', { motion, deficit: active }));
  return notes;
}

function isEarly({ weeks }: Target): boolean {
  return weeks === undefined || weeks < SLIP_WEEKS;
}

/** A lag with free passive extension early after an injury: the central slip is tested first, and the surgeon's word holds. */
function slipNotes(target: Target): readonly PlanNote[] {
  if (target.surgeonAgrees) return [];
  if (target.centralSlip === 'torn') return [planNote('CENTRAL_SLIP_TORN', 'stop', {})];
  const { pipExtensionDeficit: active, pipExtensionDeficitPassive: passive, weeks = null } = target;
  if (target.centralSlip === 'intact' || passive === undefined || !isEarly(target)) return [];
  return active >= SLIP_LAG && passive < LACK ? [planNote('CENTRAL_SLIP', 'stop', { active, passive, weeks })] : [];
}

function boutonniereNotes(target: Target): readonly PlanNote[] {
  if (!target.boutonniere) return [];
  const { weeks = null, pipExtensionDeficitPassive: passive } = target;
  if (isEarly(target)) return target.surgeonAgrees ? [] : [planNote('BOUTONNIERE_EARLY', 'stop', { weeks })];
  if (passive === undefined) return [planNote('BOUTONNIERE_MEASURE', 'stop', {})];
  return passive > BOUTONNIERE_PASSIVE ? [planNote('BOUTONNIERE_CAST', 'stop', { passive })] : [];
}

/** How far the PIP joint goes beyond straight, where that is too far to help it on; null where it is not. */
function beyondStraight({
  pipActive,
  pipPassive,
  otherHandPip,
}: Target): { readonly beyond: number; readonly other: number | null } | null {
  const beyond = Math.max(pipActive?.hyperextension ?? 0, pipPassive?.hyperextension ?? 0);
  const other = otherHandPip?.hyperextension ?? (otherHandPip?.extensionDeficit === undefined ? null : 0);
  return beyond >= BEYOND && (other === null || beyond > other) ? { beyond, other } : null;
}
