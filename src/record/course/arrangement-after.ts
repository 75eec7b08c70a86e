import { type NextArrangement, nextArrangement, type Tried } from '../../block/next-arrangement.ts';
import { planHand } from '../../pattern/plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import type { Case, Made } from '../case.ts';

/**
 * What the plan of the hand that a case was opened with tries after everything that was made; null where the case has no hand with a target,
 * where the plan names nothing, or where what was made is not known well enough.
 */
export function arrangementAfter({ hand, visits }: Pick<Case, 'hand' | 'visits'>): NextArrangement | null {
  if (hand === null) return null;
  // Whether it may be made at all is asked when it is planned again.
  const plan = planHand(hand, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: true });
  const tried = visits.flatMap(({ made }) => (made === null ? [] : [triedOf(made)]));
  if (!plan.ok || plan.value.order.length === 0 || tried.includes(null)) return null;
  return nextArrangement(plan.value, tried as readonly Tried[]);
}

function triedOf(made: Made): Tried | null {
  if (made.kind === 'plate') return { kind: 'plate', degrees: made.mpAngle };
  return made.differential === null ? null : { kind: 'strip', block: made.block, differential: made.differential };
}
