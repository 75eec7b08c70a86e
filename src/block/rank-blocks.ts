import { rounded } from '../units/number.ts';
import type { Reason } from './plan-notes.ts';
import { type BlockFigures, type RankingCase, SCORE_TERMS, type ScoreTerm, TERM_RULES, termValues } from './score-terms.ts';

/** A block with its place's reasons. Each term has at most its weight in points, the score is their sum, at most 100. */
export interface RankedBlock<F extends BlockFigures = BlockFigures> {
  readonly figures: F;
  readonly score: number;
  readonly terms: Readonly<Record<ScoreTerm, number>>;
  /** One for each term, in their order. */
  readonly reasons: readonly Reason[];
}

/** Points are given to a tenth; finer ones would not tell blocks apart in practice. */
const POINT_DECIMALS = 1;

/**
 * Blocks that serve one target, best first. Score: each term's share times its weight (`TERM_RULES`), to a tenth, summed. Equal scores: the
 * shorter strip, then the id, so the order is total and does not depend on the order given.
 */
export function rankBlocks<F extends BlockFigures>(candidates: readonly F[], about: RankingCase): readonly RankedBlock<F>[] {
  const shortest = Math.min(...candidates.map((f) => f.flatLength));
  return candidates
    .map((figures) => {
      const values = termValues(figures, about, shortest);
      const points = SCORE_TERMS.map((term) => [term, rounded(values[term].value * TERM_RULES[term].weight, POINT_DECIMALS)] as const);
      return {
        figures,
        score: rounded(
          points.reduce((sum, [, p]) => sum + p, 0),
          POINT_DECIMALS,
        ),
        terms: Object.fromEntries(points) as Record<ScoreTerm, number>,
        reasons: SCORE_TERMS.map((term) => values[term].reason),
      };
    })
    .toSorted(
      (a, b) => b.score - a.score || a.figures.flatLength - b.figures.flatLength || (a.figures.block.id < b.figures.block.id ? -1 : 1),
    );
}
