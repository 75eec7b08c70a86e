import { candidateBlocks } from '../block/candidate-blocks.ts';
import { cautionsFor, refusalsFor } from '../block/cautions-for.ts';
import { type ChosenBlock, chooseBlock } from '../block/choose-block.ts';
import { needOf, type StripNeed } from '../block/deficit-kind.ts';
import { deficitWarnings } from '../block/deficit-warnings.ts';
import { whatNext } from '../block/differential.ts';
import { mpAngle } from '../block/mp-angle.ts';
import type { NotMakeable, Plan, Suggestion } from '../block/plan.ts';
import { type BlockFigures, rankBlocks } from '../block/rank-blocks.ts';
import type { Hand, Target } from '../hand/hand.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { stripFigures } from './strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip/strip-options.ts';

/** What the person adds to the hand file for the decision. */
export interface PlanWishes {
  /** The clinician has examined the hand and takes on what would be refused (`refusalsFor`). */
  readonly clinicianConfirms: boolean;
}

/**
 * The decision for a measured hand: the need, every block that serves it, computed for this hand and ranked, what cannot be made and why,
 * or the plate's angle. Nothing is suggested when it is refused (`HARD_END_FEEL`, `UNPROTECTED_REPAIR`, unless the clinician confirms;
 * `NO_BLOCK`) or nothing is lacking. Fails only with `NO_TARGET`.
 */
export function planHand(hand: Hand, options: StripOptions, wishes: PlanWishes): Result<Plan> {
  const { target, flags } = hand;
  if (!target) return failure(noTarget());
  const need = needOf(target);
  const refusals = need === 'none' || wishes.clinicianConfirms ? [] : refusalsFor(flags);
  const plan: Plan = {
    target,
    need,
    suggestions: [],
    notMakeable: [],
    plate: need === 'both' && refusals.length === 0 ? mpAngle(target.pipExtensionDeficit, target.pipFlexionDeficit) : null,
    cautions: cautionsFor(flags),
    refusals,
    warnings: deficitWarnings(target),
  };
  if (need === 'both' || need === 'none' || refusals.length > 0) return success(plan);
  const { suggestions, notMakeable, warnings } = suggest(hand, target, need, options);
  return success({
    ...plan,
    suggestions,
    notMakeable,
    refusals: suggestions.length === 0 ? [noBlock(target, notMakeable)] : [],
    warnings: [...plan.warnings, ...warnings],
  });
}

/** The block that the plan puts first; see `planHand` and `chooseBlock` for what it fails with. */
export function chooseForHand(hand: Hand, options: StripOptions, wishes: PlanWishes): Result<ChosenBlock> {
  const plan = planHand(hand, options, wishes);
  return plan.ok ? chooseBlock(plan.value) : plan;
}

/** The plate's MP angle that the plan suggests, degrees; null where it suggests none: one motion only, or refused until confirmed. */
export function plannedAngle(hand: Hand, wishes: PlanWishes): number | null {
  const plan = planHand(hand, DEFAULT_STRIP_OPTIONS, wishes);
  return plan.ok ? (plan.value.plate?.degrees ?? null) : null;
}

interface Suggested {
  readonly suggestions: readonly Suggestion[];
  readonly notMakeable: readonly NotMakeable[];
  /** What is the same for every block, said once. */
  readonly warnings: readonly Warning[];
}

function suggest(hand: Hand, target: Target, need: StripNeed, options: StripOptions): Suggested {
  const made: (BlockFigures & { readonly warnings: readonly Warning[] })[] = [];
  const notMakeable: NotMakeable[] = [];
  for (const block of candidateBlocks(target.digit, need)) {
    const figures = stripFigures(hand, block, options);
    if (figures.ok) {
      const { flat, freePip, warnings } = figures.value;
      made.push({ block, flatLength: flat.flatLength, freePipFlexion: freePip, warnings });
    } else notMakeable.push({ block, reasons: figures.problems.map(withoutBlock) });
  }
  const { differential } = options;
  const ranked = rankBlocks(made, { digit: target.digit, need, hypermobile: hand.flags.hypermobile, differential });
  const common = (w: Warning) => w.code === 'DIFFERENTIAL_UNUSUAL';
  return {
    suggestions: ranked.map(({ figures, score, terms, reasons }, k) => ({
      block: figures.block,
      differential,
      score,
      terms,
      reasons,
      flatLength: figures.flatLength,
      freePipFlexion: figures.freePipFlexion,
      next: whatNext(differential, ranked[k + 1]?.figures.block.id),
      warnings: figures.warnings.filter((w) => !common(w)),
    })),
    notMakeable,
    warnings: made[0]?.warnings.filter(common) ?? [],
  };
}

/** What is not measured is missing for every block alike, so the message need not name one. */
function withoutBlock(problem: Problem): Problem {
  if (problem.code !== 'DIGIT_NOT_MEASURED') return problem;
  return { ...problem, message: `${problem.where}: this digit was not measured. Measure it.` };
}

function noTarget(): Problem {
  return {
    code: 'NO_TARGET',
    where: 'target',
    message: 'target: the hand file names no target digit. Add "target", or name a block with --block.',
    kind: 'input',
  };
}

function noBlock({ digit }: Target, notMakeable: readonly NotMakeable[]): Problem {
  const reasons = [...new Set(notMakeable.flatMap(({ reasons }) => reasons.map((r) => r.message)))];
  return {
    code: 'NO_BLOCK',
    where: 'target',
    message: `target: none of the ${notMakeable.length} blocks that serve the ${digit} finger can be made for this hand. ${reasons.join(' ')}`,
    kind: 'refused',
  };
}
