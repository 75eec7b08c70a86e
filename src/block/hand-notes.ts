import type { Hand } from '../hand/hand.ts';
import type { StopSign } from '../hand/signs.ts';
import { type Ask, type PlanNote, planNote } from './plan-notes.ts';

/** Whom a stop sign asks for. Common practice, no source. */
export const WHOM_TO_ASK: Readonly<Record<StopSign, Ask>> = {
  paleBlueOrCold: 'surgeonSameDay',
  infection: 'surgeonSameDay',
  newNumbness: 'surgeonSameDay',
  newActiveLoss: 'surgeonSameDay',
  unstableJoint: 'surgeonSameDay',
  suspectedCrps: 'surgeonWorkingDay',
  openWound: 'surgeonBefore',
  pins: 'surgeonBefore',
  inflamedJoint: 'referrer',
};

/** Signs that the surgeon's word lifts. */
const LIFTED_BY_SURGEON: readonly StopSign[] = ['openWound', 'pins'];

/** One note for each stop sign that stands, gravest first; the surgeon's word lifts an open wound and pins and nothing else. */
export function stopNotes(target: {
  readonly stopSigns?: readonly StopSign[] | undefined;
  readonly surgeonAgrees?: boolean | undefined;
}): readonly PlanNote[] {
  const signs = Object.keys(WHOM_TO_ASK) as StopSign[];
  return signs
    .filter((sign) => target.stopSigns?.includes(sign) && !(target.surgeonAgrees && LIFTED_BY_SURGEON.includes(sign)))
    .map((sign) => planNote('STOP_SIGN', 'stop', { sign, ask: WHOM_TO_ASK[sign] }));
}

/** What a clinician who has examined the hand may take on: an unprotected repair or fracture, a hard end-feel; cautions once that is confirmed. */
export function confirmNotes({ flags }: Pick<Hand, 'flags'>, confirmed: boolean): readonly PlanNote[] {
  const level = confirmed ? 'caution' : 'confirm';
  return [
    ...(flags.unprotectedRepair ? [planNote('UNPROTECTED_REPAIR', level, {})] : []),
    ...(flags.hardEndFeel ? [planNote('HARD_END_FEEL', level, {})] : []),
  ];
}

/** What a hand calls for care in, whatever is made; none when nothing is said of it. */
export function careNotes({ flags, child }: Pick<Hand, 'flags' | 'child'>): readonly PlanNote[] {
  return [
    ...(flags.sensation ? [planNote('SENSATION', 'caution', {})] : []),
    ...(flags.swelling ? [planNote('SWELLING', 'caution', {})] : []),
    ...(flags.hypermobile.length > 0 ? [planNote('HYPERMOBILE', 'caution', { digits: flags.hypermobile })] : []),
    ...(child ? [planNote('CHILD', 'caution', {})] : []),
  ];
}

/** The cautions that stand beside whatever is drawn for a hand, the gravest first: its stop signs, what the clinician takes on, what to mind. */
export function cautionsFor(hand: Pick<Hand, 'flags' | 'child' | 'target'>): readonly PlanNote[] {
  return [...(hand.target ? stopNotes(hand.target) : []), ...confirmNotes(hand, true), ...careNotes(hand)];
}
