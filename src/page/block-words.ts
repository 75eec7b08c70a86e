import { type Block, heldDigits, heldPlace, placedDigits } from '../block/block.ts';
import { chooseBlock } from '../block/choose-block.ts';
import type { Hand } from '../hand/hand.ts';
import type { Texts } from './texts/english.ts';

/** Name of a block in the reader's language, put together from its places: "Ring finger raised, three digits (long, ring, little)". */
export function blockTitle(block: Block, texts: Texts): string {
  const held = heldDigits(block).map((digit) => texts.digit[digit]);
  const placed = placedDigits(block);
  if (held.length === 0 || placed.length < 3) return texts.block.own;
  const count = placed.length === 4 ? texts.block.fourDigits : texts.block.threeDigits;
  const range = placed.map(({ digit }) => texts.digitShort[digit]).join(', ');
  return texts.block.title(held.join(` ${texts.block.and} `), texts.place[heldPlace(block)], count, range);
}

/** Why the block is suggested, or that it does not serve; null where no deficit is known. */
export function blockReason(hand: Hand | null, rank: number | null, texts: Texts): string | null {
  const target = hand?.target;
  if (!hand || !target || !chooseBlock(hand).ok) return null;
  if (rank === null) return texts.block.other;
  const lacksFlexion = target.pipFlexionDeficit > 0;
  const { flexion, extension } = texts.block;
  return texts.block.why(texts.digit[target.digit], lacksFlexion ? flexion : extension, lacksFlexion ? extension : flexion);
}
