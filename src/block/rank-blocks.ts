import type { DigitName } from '../hand/digits.ts';
import { rounded } from '../units/number.ts';
import { type Block, heldDigits, heldPlace, PALMAR_LAYERS, placedDigits } from './block.ts';
import { isBorderDigit, targetEffect } from './candidate-blocks.ts';
import type { StripNeed } from './deficit-kind.ts';
import type { Reason } from './plan-notes.ts';

/** What ranking needs to know of a block as it comes out for one hand. */
export interface BlockFigures {
  readonly block: Block;
  /** mm */
  readonly flatLength: number;
  /** PIP flexion left free over the palmar edge, degrees, of each digit that has plastic on its palmar side. */
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
}

/** For whom the blocks are ranked. */
export interface RankingCase {
  readonly digit: DigitName;
  readonly need: StripNeed;
  readonly hypermobile: readonly DigitName[];
  /** Digits that the hand does not have. */
  readonly absent?: readonly DigitName[];
  /** degrees */
  readonly differential: number;
}

/** Terms of the score, in the order in which they are shown. */
export const SCORE_TERMS = ['rotation', 'hold', 'neighbours', 'freePip', 'length', 'layers'] as const;
export type ScoreTerm = (typeof SCORE_TERMS)[number];

/** What a term looks at, how much it counts, and what stands behind it. */
interface TermRule {
  /** Most points; all weights together are 100. */
  readonly weight: number;
  readonly about: string;
  readonly source: string;
}

/** What a strip is asked to leave free, unless the person asks otherwise; PIP motion is 0 to 100 in AAOS-type tables. degrees */
export const LEAST_FREE_PIP_FLEXION = 100;
/** A strip that stops the PIP joint at 90 degrees keeps a fist from closing: no points. degrees; common practice, no source. */
export const NO_FIST = 90;
/** Four digits of which two are raised: 1 + 2 + 2 + 1. */
const MOST_PALMAR_LAYERS = 6;

const OURS = 'common practice, no source';

/** The weights are ours. Rotation weighs as much as all else together, so a block that does not control it never comes before one that does. */
export const TERM_RULES: Readonly<Record<ScoreTerm, TermRule>> = {
  rotation: {
    weight: 50,
    about: 'full when the rotation of the target and of a hypermobile little finger is controlled, else nothing',
    source: 'four digits for border digits: Yates et al. 2023; the hypermobile little finger: common practice, no source',
  },
  hold: {
    weight: 20,
    about: "the MP angle between the target and the mean of the block's other digits, as a share of the differential",
    source: `direction: trial registration NCT06985459; the share: ${OURS}`,
  },
  neighbours: { weight: 5, about: 'the same angle, against the digits beside the target', source: OURS },
  freePip: {
    weight: 10,
    about: `least PIP flexion left free over the palmar edge: full from ${LEAST_FREE_PIP_FLEXION} degrees, nothing at ${NO_FIST}`,
    source: `PIP motion 0 to 100 of AAOS-type tables; the scale: ${OURS}`,
  },
  length: { weight: 10, about: 'length of the shortest strip over the length of this one', source: OURS },
  layers: {
    weight: 5,
    about: `layers of plastic in the palm: full for none, nothing for ${MOST_PALMAR_LAYERS}, the most there can be`,
    source: OURS,
  },
};

/** How far a term is met, 0 to 1, and why. */
interface TermValue {
  readonly value: number;
  readonly reason: Reason;
}

/** All terms of one block. `shortest` is the shortest flat length among the blocks ranked with it, mm. */
function termValues(figures: BlockFigures, about: RankingCase, shortest: number): Readonly<Record<ScoreTerm, TermValue>> {
  return {
    rotation: rotation(figures.block, about),
    ...holding(figures.block, about),
    freePip: freePip(figures),
    length: length(figures.flatLength, shortest),
    layers: layers(figures.block),
  };
}

function rotation(block: Block, { digit, hypermobile, absent }: RankingCase): TermValue {
  if (placedDigits(block).length > 3) return { value: 1, reason: { rule: 'ROTATION_FOUR' } };
  if (hypermobile.includes('little') && block.places.little !== undefined) return { value: 0, reason: { rule: 'ROTATION_HYPERMOBILE' } };
  if (isBorderDigit(digit, absent)) return { value: 0, reason: { rule: 'ROTATION_BORDER', digit } };
  return { value: 1, reason: { rule: 'ROTATION_BOTH_SIDES', digit } };
}

function holding(block: Block, { digit, need, differential }: RankingCase): { hold: TermValue; neighbours: TermValue } {
  const effect = targetEffect(block, digit, need);
  const held = heldDigits(block);
  const about = { digit, place: heldPlace(block), need, degrees: effect.others * differential };
  return {
    hold: { value: effect.others, reason: held.includes(digit) ? { rule: 'HOLD_OWN', ...about } : { rule: 'HOLD_OTHERS', ...about, held } },
    neighbours: {
      value: effect.neighbours,
      reason:
        effect.neighbours === 0 ? { rule: 'NEIGHBOURS_NONE', digit } : { rule: 'NEIGHBOURS', degrees: effect.neighbours * differential },
    },
  };
}

function freePip({ freePipFlexion }: BlockFigures): TermValue {
  const [tightest] = Object.entries(freePipFlexion).toSorted(([, a], [, b]) => a - b);
  if (!tightest) return { value: 1, reason: { rule: 'FREE_ALL' } };
  const [digit, degrees] = tightest as [DigitName, number];
  const value = Math.min(1, Math.max(0, (degrees - NO_FIST) / (LEAST_FREE_PIP_FLEXION - NO_FIST)));
  return {
    value,
    reason: value === 1 ? { rule: 'FREE', digit, degrees } : { rule: 'FREE_STOPPED', digit, degrees, least: LEAST_FREE_PIP_FLEXION },
  };
}

/** Strips that differ by less than is written are equally long. mm */
const SAME_LENGTH = 0.05;

function length(flatLength: number, shortest: number): TermValue {
  const more = flatLength - shortest;
  return {
    value: shortest / flatLength,
    reason: more < SAME_LENGTH ? { rule: 'LENGTH_SHORTEST', mm: flatLength } : { rule: 'LENGTH_MORE', mm: flatLength, more },
  };
}

function layers(block: Block): TermValue {
  const count = placedDigits(block).reduce((sum, { place }) => sum + PALMAR_LAYERS[place], 0);
  return { value: 1 - count / MOST_PALMAR_LAYERS, reason: { rule: 'LAYERS', count } };
}

/** A block with its place's reasons. Each term has at most its weight in points, the score is their sum, at most 100. */
interface RankedBlock<F extends BlockFigures = BlockFigures> {
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
