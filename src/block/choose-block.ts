import { plain } from '../units/number.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { type Block, heldDigits, placedDigits } from './block.ts';
import { LACKING, type StripNeed, WANTED_MP } from './deficit-kind.ts';
import { LACK } from './figures.ts';
import type { Plan } from './plan.ts';

/** A block with the reason it was chosen, one sentence. */
export interface ChosenBlock {
  readonly block: Block;
  readonly why: string;
}

/**
 * The first suggestion of a plan, with why in one sentence. Refused with the plan's own refusals, and when a plate comes first
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
  return success({ block: best.block, why: reason(plan, stripNeed, best.block) });
}

function reason({ target: { digit } }: Plan, need: StripNeed, block: Block): string {
  const held = heldDigits(block);
  const fingers = held.length === 2 ? 'the two middle fingers are' : `the ${held.join('')} finger is`;
  const count = placedDigits(block).length === 3 ? 'three' : 'four';
  const how =
    block.places[digit] === 'enclosed'
      ? `so in ${count} digits ${fingers} ${block.places[held[0] ?? digit]} and the ${digit} finger is held the other way by comparison`
      : `so the ${digit} finger itself is ${block.places[digit]}`;
  return `the ${digit} finger lacks PIP ${LACKING[need]}: its MP joint is held in relative ${WANTED_MP[need]}, ${how}`;
}

function refused(code: string, message: string): Problem {
  return { code, where: 'target', message: `target: ${message}.`, kind: 'refused' };
}
