import { plain } from '../units/number.ts';
import { type Block, heldDigits, PALMAR_LAYERS, placedDigits } from './block.ts';
import { isBorderDigit, targetEffect } from './candidate-blocks.ts';
import type { BlockFigures, RankingCase } from './rank-blocks.ts';

/** Terms of the score, in the order in which they are shown. */
export const SCORE_TERMS = ['rotation', 'hold', 'neighbours', 'freePip', 'length', 'layers'] as const;
export type ScoreTerm = (typeof SCORE_TERMS)[number];

/** What a term looks at, how much it counts, and what stands behind it. */
export interface TermRule {
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

/** How far a term is met, 0 to 1, and why, one plain sentence. */
export interface TermValue {
  readonly value: number;
  readonly reason: string;
}

/** All terms of one block. `shortest` is the shortest flat length among the blocks ranked with it, mm. */
export function termValues(figures: BlockFigures, about: RankingCase, shortest: number): Readonly<Record<ScoreTerm, TermValue>> {
  return {
    rotation: rotation(figures.block, about),
    ...holding(figures.block, about),
    freePip: freePip(figures),
    length: length(figures.flatLength, shortest),
    layers: layers(figures.block),
  };
}

function rotation(block: Block, { digit, hypermobile }: RankingCase): TermValue {
  if (placedDigits(block).length > 3) return { value: 1, reason: 'Four digits control rotation.' };
  if (hypermobile.includes('little') && block.places.little !== undefined)
    return {
      value: 0,
      reason:
        'The hypermobile little finger is the border of three digits: its rotation is not controlled, so this comes after every block of four.',
    };
  if (isBorderDigit(digit))
    return {
      value: 0,
      reason: `Three digits do not control the rotation of the ${digit} finger at their border; four are the usual choice.`,
    };
  return { value: 1, reason: `A digit on each side keeps the ${digit} finger from turning.` };
}

function holding(block: Block, { digit, need, differential }: RankingCase): { hold: TermValue; neighbours: TermValue } {
  const effect = targetEffect(block, digit, need);
  const way = need === 'pipFlexion' ? 'extended' : 'flexed';
  const degrees = (share: number) => `${plain(share * differential, 1)} degrees`;
  const held = heldDigits(block);
  const what = `The ${isBorderDigit(digit) ? `${held.join(' and ')} ${held.length > 1 ? 'fingers are' : 'finger is'}` : `${digit} finger itself is`} ${block.places[held[0] ?? digit]}`;
  return {
    hold: {
      value: effect.others,
      reason: `${what}: the ${digit} MP joint is ${way} by ${degrees(effect.others)} against the other digits.`,
    },
    neighbours: {
      value: effect.neighbours,
      reason:
        effect.neighbours === 0
          ? `The digit beside the ${digit} finger is not held, so between the two there is no angle.`
          : `Against the digits beside it the angle is ${degrees(effect.neighbours)}.`,
    },
  };
}

function freePip({ freePipFlexion }: BlockFigures): TermValue {
  const [tightest] = Object.entries(freePipFlexion).toSorted(([, a], [, b]) => a - b);
  if (!tightest) return { value: 1, reason: 'No digit has plastic on its palmar side.' };
  const [digit, angle] = tightest;
  const value = Math.min(1, Math.max(0, (angle - NO_FIST) / (LEAST_FREE_PIP_FLEXION - NO_FIST)));
  return value === 1
    ? { value, reason: `PIP flexion stays free: ${plain(angle, 0)} degrees or more (least at the ${digit} finger).` }
    : {
        value,
        reason: `The strip may stop PIP flexion of the ${digit} finger at ${plain(angle, 0)} degrees, under ${LEAST_FREE_PIP_FLEXION}.`,
      };
}

function length(flatLength: number, shortest: number): TermValue {
  const more = plain(flatLength - shortest, 1);
  const strip = `The strip is ${plain(flatLength, 1)} mm long`;
  return {
    value: shortest / flatLength,
    reason: more === '0' ? `${strip}, the shortest of these.` : `${strip}, ${more} mm more than the shortest.`,
  };
}

function layers(block: Block): TermValue {
  const count = placedDigits(block).reduce((sum, { place }) => sum + PALMAR_LAYERS[place], 0);
  return { value: 1 - count / MOST_PALMAR_LAYERS, reason: `${count} layers of plastic in the palm, summed over the digits.` };
}
