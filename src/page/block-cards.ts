import { type Block, placedDigits } from '../block/block.ts';
import { blocks } from '../block/library.ts';
import type { Plan, Suggestion } from '../block/plan.ts';
import { DIGITS } from '../hand/digits.ts';
import { averageDigit } from '../hand/estimate.ts';
import type { Hand } from '../hand/hand.ts';
import { HAND_SCHEMA_ID } from '../hand/hand-schema.ts';
import type { StripOptions, StripSettings } from '../pattern/strip/strip-options.ts';
import { type StripPath, stripPath } from '../pattern/strip/strip-path.ts';
import { standSections } from '../pattern/strip/strip-sections.ts';
import { usualSettings } from '../pattern/strip/strip-settings.ts';
import type { Problem } from '../units/result.ts';

/** An average adult hand with round fingers, for pictures of blocks before anything is measured; never for a pattern. */
const AVERAGE_HAND: Hand = {
  code: 'AVERAGE-1',
  side: 'left',
  units: 'mm',
  digits: Object.fromEntries(
    DIGITS.map((digit) => {
      const { circumference, palmarRoom, dorsalLength } = averageDigit(digit);
      return [digit, { width: circumference / Math.PI, circumference, palmarRoom, dorsalLength }];
    }),
  ),
  palm: {},
  target: null,
  flags: { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false },
  estimated: [],
  invented: true,
  note: null,
  source: { schema: HAND_SCHEMA_ID, code: 'AVERAGE-1', side: 'left', units: 'mm', digits: {} },
};

/** One block to choose from, with the section it would have. */
export interface BlockCard {
  readonly block: Block;
  /** From 1; null when the plan does not suggest it. */
  readonly rank: number | null;
  readonly suggestion: Suggestion | null;
  /** Null where no section can be laid. */
  readonly path: StripPath | null;
  /** The section is of an average hand, since this one is not measured yet. */
  readonly average: boolean;
  /** Why it cannot be made for this hand. */
  readonly problems: readonly Problem[];
}

/** All blocks of the library, the plan's first and in its order, each laid round the hand or, until it is measured, round an average one. */
export function blockCards(hand: Hand | null, plan: Plan | null, asked: StripOptions): readonly BlockCard[] {
  const options = usualSettings(asked);
  const cards = blocks().map((block): BlockCard => {
    const place = plan?.suggestions.findIndex((s) => s.block.id === block.id) ?? -1;
    const average = hand === null || placedDigits(block).some(({ digit }) => hand.digits[digit] === undefined);
    const standing = standSections(average ? AVERAGE_HAND : hand, block, options);
    const path = standing.ok ? stripPath(standing.value, options) : standing;
    return {
      block,
      rank: place < 0 ? null : place + 1,
      suggestion: plan?.suggestions[place] ?? null,
      path: path.ok ? path.value : null,
      average,
      problems: plan?.notMakeable.find((n) => n.block.id === block.id)?.reasons ?? ownProblems(hand, average, block, options, path),
    };
  });
  const last = Number.POSITIVE_INFINITY;
  return cards.toSorted((a, b) => (a.rank ?? last) - (b.rank ?? last) || 0);
}

function ownProblems(
  hand: Hand | null,
  average: boolean,
  block: Block,
  options: StripSettings,
  path: ReturnType<typeof stripPath>,
): readonly Problem[] {
  if (hand === null) return [];
  const own = average ? standSections(hand, block, options) : path;
  return own.ok ? [] : own.problems;
}
