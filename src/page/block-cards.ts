import { type Block, placedDigits } from '../block/block.ts';
import { chooseBlock } from '../block/choose-block.ts';
import { blocks } from '../block/library.ts';
import type { Hand } from '../hand/hand.ts';
import { type StripOptions } from '../pattern/strip/strip-options.ts';
import { type StripPath, stripPath } from '../pattern/strip/strip-path.ts';
import { standSections } from '../pattern/strip/strip-sections.ts';
import type { Problem } from '../units/result.ts';
import { AVERAGE_HAND } from './average-hand.ts';

/** One block to choose from, with the section it would have. */
export interface BlockCard {
  readonly block: Block;
  /** 1 for the first suggestion; null when the deficit does not suggest it. */
  readonly rank: number | null;
  /** Null where no section can be laid. */
  readonly path: StripPath | null;
  /** The section is of an average hand, since this one is not measured yet. */
  readonly average: boolean;
  /** Why it cannot be made for this hand. */
  readonly problems: readonly Problem[];
}

/** What the target's deficit suggests, best first, and why there is none. */
export interface Suggested {
  readonly blocks: readonly Block[];
  readonly problems: readonly Problem[];
}

export function suggestedBlocks(hand: Hand): Suggested {
  const chosen = chooseBlock(hand);
  return chosen.ok ? { blocks: [chosen.value.block], problems: [] } : { blocks: [], problems: chosen.problems };
}

/** All blocks of the library, the suggested ones first, each laid round the hand or, until it is measured, round an average one. */
export function blockCards(hand: Hand | null, suggested: Suggested, options: StripOptions): readonly BlockCard[] {
  const cards = blocks().map((block): BlockCard => {
    const place = suggested.blocks.findIndex((b) => b.id === block.id);
    const rank = place < 0 ? null : place + 1;
    const average = hand === null || placedDigits(block).some(({ digit }) => hand.digits[digit] === undefined);
    const standing = standSections(average ? AVERAGE_HAND : hand, block, options);
    const path = standing.ok ? stripPath(standing.value, options) : standing;
    const missing = hand !== null && average ? standSections(hand, block, options) : null;
    const problems = missing && !missing.ok ? missing.problems : path.ok ? [] : path.problems;
    return { block, rank, path: path.ok ? path.value : null, average, problems };
  });
  return cards.toSorted((a, b) => (a.rank ?? Number.POSITIVE_INFINITY) - (b.rank ?? Number.POSITIVE_INFINITY) || 0);
}
