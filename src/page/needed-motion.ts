import type { Motion, PlanRule } from '../block/plan-notes.ts';
import type { Derived } from './derive.ts';
import type { Entries } from './state.ts';

/** All of them in the order in which they stand. */
export const NEEDED_MOTIONS = ['motion.passive.lacks', 'motion.passive.bends', 'motion.mpPassive.lacks', 'motion.mpPassive.bends'] as const;

/**
 * Paths of the fields of motion that a rule of the plan asks for, so that they stand in turn 1 beside the active motion: the passive one of each PIP
 * motion that is lacking, passive MP motion for a plate. What was typed there stays.
 */
export function neededMotions(plan: Derived['plan'], { motion }: Entries): readonly string[] {
  if (plan === null) return [];
  const asks = (rule: PlanRule, of?: Motion) =>
    plan.notes.some((note) => note.rule === rule && (of === undefined || ('motion' in note && note.motion === of)));
  const isTyped = (text: string) => text.trim() !== '';
  const lacks = (need: 'pipExtension' | 'pipFlexion') => plan.need === need || plan.need === 'both';
  const { passive, mpPassive } = motion;
  const isExtension = asks('MEASURE_PASSIVE', 'extension') || asks('BOUTONNIERE_MEASURE') || isTyped(passive.lacks);
  const isFlexion = asks('MEASURE_PASSIVE', 'flexion') || isTyped(passive.bends);
  const isMp = asks('MEASURE_MP') || isTyped(mpPassive.lacks) || isTyped(mpPassive.bends);
  return [
    ...(lacks('pipExtension') && isExtension ? ['motion.passive.lacks'] : []),
    ...(lacks('pipFlexion') && isFlexion ? ['motion.passive.bends'] : []),
    ...(plan.need === 'both' && isMp ? ['motion.mpPassive.lacks', 'motion.mpPassive.bends'] : []),
  ];
}
