import type { StripNeed } from '../../block/deficit-kind.ts';
import { type NextArrangement, nextArrangements, type Tried } from '../../block/next-arrangement.ts';
import { planHand } from '../../pattern/plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import type { Case, Made } from '../case.ts';
import { servedMotion } from '../served-motion.ts';
import { deficitsOf } from './course.ts';

const NEED = { extension: 'pipExtension', flexion: 'pipFlexion' } as const satisfies Record<string, StripNeed>;

/**
 * What the plan would try after the strips of a case, first to last, as far as the next arrangement: the ladder of `plan` for the hand that the case
 * was opened with and what its PIP joint lacks now. Empty where that cannot be told: no hand kept, no strip in use, or a plan that now serves another
 * motion or none.
 */
export function planNext(record: Case): readonly NextArrangement[] {
  const { hand, digit, visits } = record;
  const deficits = deficitsOf(record).at(-1);
  const made = visits.flatMap((visit) => (visit.made === null ? [] : [visit.made]));
  const last = made.at(-1);
  const served = last?.kind === 'strip' ? servedMotion(last, digit) : null;
  if (hand === null || deficits === undefined || served === null) return [];
  const target = { ...hand.target, digit, pipExtensionDeficit: deficits.extension, pipFlexionDeficit: deficits.flexion };
  const plan = planHand({ ...hand, target }, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: true, anyway: true });
  return plan.ok && plan.value.stripNeed === NEED[served] && plan.value.suggestions.length > 0
    ? nextArrangements(plan.value, made.map(tried))
    : [];
}

/** A differential that was not noted counts as the usual one. */
function tried(made: Made): Tried {
  if (made.kind === 'plate') return { kind: 'plate', degrees: made.mpAngle };
  return { kind: 'strip', block: made.block, differential: made.differential ?? DEFAULT_STRIP_OPTIONS.differential };
}
