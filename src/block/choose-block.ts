import { failure, type Problem, type Result, success } from '../units/result.ts';
import { type Block, heldDigits, placedDigits } from './block.ts';
import { isBorderDigit } from './candidate-blocks.ts';
import { LACKING, type StripNeed, WANTED_MP } from './deficit-kind.ts';
import type { Plan } from './plan.ts';

/** A block with the reason it was chosen, one sentence. */
export interface ChosenBlock {
  readonly block: Block;
  readonly why: string;
}

/**
 * The first suggestion of a plan, with why in one sentence. Refused with the plan's own refusals, and when both motions are lacking
 * (`BOTH_DEFICITS`: a plate serves, not a strip) or neither is (`NO_DEFICIT`).
 */
export function chooseBlock(plan: Plan): Result<ChosenBlock> {
  const { target, need } = plan;
  const problems: Problem[] = [...plan.refusals];
  if (need === 'both') {
    const angle = plan.plate ? `, to begin with at ${plan.plate.degrees} degrees` : '';
    problems.push(
      refused(
        'BOTH_DEFICITS',
        `the ${target.digit} finger lacks PIP extension (${target.pipExtensionDeficit} degrees) and PIP flexion (${target.pipFlexionDeficit} degrees): a strip redirects one motion only. The MP joint is held still by a plate instead${angle}: name one with --plate`,
      ),
    );
  }
  if (need === 'none') {
    problems.push(
      refused(
        'NO_DEFICIT',
        `the ${target.digit} finger lacks neither PIP extension nor PIP flexion, so nothing is suggested. Name a block with --block`,
      ),
    );
  }
  const [best] = plan.suggestions;
  if (need === 'both' || need === 'none' || problems.length > 0) return failure(...problems);
  if (!best) throw new Error(`a plan for ${need} neither suggests nor refuses`);
  return success({ block: best.block, why: reason(plan, need, best.block) });
}

function reason({ target: { digit } }: Plan, need: StripNeed, block: Block): string {
  const held = heldDigits(block);
  const fingers = held.length === 2 ? 'the two middle fingers are' : `the ${held.join('')} finger is`;
  const count = placedDigits(block).length === 3 ? 'three' : 'four';
  const how = isBorderDigit(digit)
    ? `so in ${count} digits ${fingers} ${block.places[held[0] ?? digit]} and the ${digit} finger is held the other way by comparison`
    : `so the ${digit} finger itself is ${block.places[digit]}`;
  return `the ${digit} finger lacks PIP ${LACKING[need]}: its MP joint is held in relative ${WANTED_MP[need]}, ${how}`;
}

function refused(code: string, message: string): Problem {
  return { code, where: 'target', message: `target: ${message}.`, kind: 'refused' };
}
