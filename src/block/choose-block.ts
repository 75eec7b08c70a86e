import type { DigitName } from '../hand/digits.ts';
import { plain } from '../units/number.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import type { Block } from './block.ts';
import type { StripNeed } from './deficit-kind.ts';
import { LACK } from './figures.ts';
import type { Plan } from './plan.ts';

/** Why a block is drawn: what the target digit lacks, or who asked for it. */
export type WhyBlock =
  | { readonly kind: 'plan'; readonly digit: DigitName; readonly need: StripNeed; readonly block: Block }
  | { readonly kind: 'named' }
  | { readonly kind: 'read'; readonly file: string };

/** A block with the reason it was chosen. */
export interface ChosenBlock {
  readonly block: Block;
  readonly why: WhyBlock;
}

/**
 * The first suggestion of a plan, with why. Refused with the plan's own refusals, and when a plate comes first
 * (`BOTH_DEFICITS`) or nothing is lacking (`NO_DEFICIT`).
 */
export function chooseBlock(plan: Plan): Result<ChosenBlock> {
  const { target, need, order, stripNeed } = plan;
  const { pipExtensionDeficit: e, pipFlexionDeficit: f } = target;
  const problems: Problem[] = [...plan.refusals];
  if (need === 'none') {
    problems.push(
      refused(
        'NO_DEFICIT',
        `the ${target.digit} finger lacks ${plain(e)} degrees of PIP extension and ${plain(f)} of PIP flexion, under ${LACK} each, so nothing is suggested. Name a block with --block`,
      ),
    );
  } else if (order[0] === 'plate' && plan.plate) {
    problems.push(
      refused(
        'BOTH_DEFICITS',
        `the ${target.digit} finger lacks PIP extension (${plain(e)} degrees) and PIP flexion (${plain(f)} degrees): a plate comes first, the MP joint to begin with at ${plan.plate.degrees} degrees. Name a plate with --plate, or a block with --block`,
      ),
    );
  }
  const [best] = plan.suggestions;
  if (problems.length > 0) return failure(...problems);
  if (!best || stripNeed === null) throw new Error(`a plan for ${need} neither suggests nor refuses`);
  return success({ block: best.block, why: { kind: 'plan', digit: target.digit, need: stripNeed, block: best.block } });
}

function refused(code: string, message: string): Problem {
  return { code, where: 'target', message: `target: ${message}.`, kind: 'refused' };
}
