import { DIGITS, type DigitName } from '../hand/digits.ts';
import { type Block, heldPlace, placedDigits, RELATIVE_FLEXION } from './block.ts';
import type { StripNeed } from './deficit-kind.ts';
import { blocks } from './library.ts';

/** Whether a digit lies at the border of what there is of the hand; only a digit with a neighbour on each side can be held in a block. */
export function isBorderDigit(digit: DigitName, absent: readonly DigitName[] = []): boolean {
  const at = DIGITS.indexOf(digit);
  return [DIGITS[at - 1], DIGITS[at + 1]].some((neighbour) => neighbour === undefined || absent.includes(neighbour));
}

/**
 * How much of the differential the target's MP joint stands apart, as a fraction: from the mean of the block's other digits, and from
 * the mean of its neighbours in the block. Positive the way the need wants it (relative extension for lacking flexion).
 */
export function targetEffect(
  block: Pick<Block, 'places'>,
  digit: DigitName,
  need: StripNeed,
): { readonly others: number; readonly neighbours: number } {
  const placed = placedDigits(block);
  const at = placed.findIndex((p) => p.digit === digit);
  const own = placed[at];
  if (!own) return { others: 0, neighbours: 0 };
  const sense = need === 'pipFlexion' ? -1 : 1;
  const apartFrom = (digits: typeof placed) =>
    sense * (RELATIVE_FLEXION[own.place] - digits.reduce((sum, p) => sum + RELATIVE_FLEXION[p.place], 0) / digits.length);
  return {
    others: apartFrom(placed.filter((p) => p !== own)),
    neighbours: apartFrom(placed.filter((_, k) => Math.abs(k - at) === 1)),
  };
}

/**
 * The blocks of the library that serve the target (common practice, no source, but four digits for border digits from Yates et al. 2023), among
 * the digits that the hand has. A digit with a neighbour on each side must be held itself, the way it needs; one at the border is enclosed while
 * digits beside it are held the other way. A block that holds only other digits beside a target that could be held does nothing for it by itself
 * and is left out.
 */
export function candidateBlocks(digit: DigitName, need: StripNeed, absent: readonly DigitName[] = []): readonly Block[] {
  const own = need === 'pipFlexion' ? 'raised' : 'lowered';
  return blocks().filter((block) => {
    const place = block.places[digit];
    if (place === undefined || absent.some((missing) => block.places[missing] !== undefined)) return false;
    return isBorderDigit(digit, absent) ? place === 'enclosed' && heldPlace(block) !== own : place === own;
  });
}
