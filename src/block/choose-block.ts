import type { DigitName } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import type { Block } from './block.ts';
import { blockById } from './library.ts';

/** A block with the reason it was chosen, one sentence. */
export interface ChosenBlock {
  readonly block: Block;
  readonly why: string;
}

/**
 * The block that the target's PIP deficits suggest (strip model, "Which block serves which deficit"; direction of the effect from trial
 * registration NCT06985459, four digits for border digits from Yates et al. 2023, the rest common practice, no source).
 * Fails when there is no target or no deficit, and is refused when both motions are lacking, since then a strip does not serve.
 */
export function chooseBlock(hand: Hand): Result<ChosenBlock> {
  const target = hand.target;
  if (!target)
    return failure(
      problem('NO_TARGET', 'target', 'the hand file names no target digit. Add "target", or name a block with --block', 'input'),
    );
  const { digit, pipExtensionDeficit, pipFlexionDeficit } = target;
  if (pipExtensionDeficit > 0 && pipFlexionDeficit > 0) {
    const what = `the ${digit} finger lacks PIP extension (${pipExtensionDeficit} degrees) and PIP flexion (${pipFlexionDeficit} degrees)`;
    return failure(
      problem(
        'BOTH_DEFICITS',
        'target',
        `${what}: a strip redirects one motion only; the MP joint is held still by a plate instead`,
        'refused',
      ),
    );
  }
  if (pipExtensionDeficit === 0 && pipFlexionDeficit === 0) {
    return failure(
      problem(
        'NO_DEFICIT',
        'target',
        `the ${digit} finger lacks neither PIP extension nor PIP flexion, so nothing is suggested. Name a block with --block`,
        'refused',
      ),
    );
  }
  const lacks = pipFlexionDeficit > 0 ? 'flexion' : 'extension';
  const block = blockById(blockIdFor(digit, lacks));
  if (!block) throw new Error(`no block for ${digit}, ${lacks}`);
  return success({ block, why: reason(digit, lacks, block) });
}

/** A middle digit is held itself in three; for a border digit both middle digits are held the other way in four. */
function blockIdFor(digit: DigitName, lacks: 'flexion' | 'extension'): string {
  if (digit === 'long' || digit === 'ring') return `${digit}-${lacks === 'flexion' ? 'raised' : 'lowered'}-in-three`;
  return `long-and-ring-${lacks === 'flexion' ? 'lowered' : 'raised'}-in-four`;
}

function reason(digit: DigitName, lacks: 'flexion' | 'extension', block: Block): string {
  const wanted = lacks === 'flexion' ? 'extension' : 'flexion';
  const how =
    digit === 'long' || digit === 'ring'
      ? `so the ${digit} finger itself is ${block.places[digit]}`
      : `so in four digits the two middle fingers are ${block.places.long} and the ${digit} finger is held the other way by comparison`;
  return `the ${digit} finger lacks PIP ${lacks}: its MP joint is held in relative ${wanted}, ${how}`;
}

function problem(code: string, where: string, message: string, kind: Problem['kind']): Problem {
  return { code, where, message: `${where}: ${message}.`, kind };
}
