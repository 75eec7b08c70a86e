import { type Block, heldDigits, heldPlace, placedDigits } from '../block/block.ts';
import { LACKING, WANTED_MP } from '../block/deficit-kind.ts';
import type { Plan } from '../block/plan.ts';
import type { Made } from '../record/case.ts';
import type { Drawn } from './derive.ts';
import type { Format } from './format.ts';
import type { Texts } from './texts/english.ts';

/** Name of a block in the reader's language, put together from its places: "Ring finger raised, three digits (long, ring, little)". */
export function blockTitle(block: Pick<Block, 'places'>, texts: Texts): string {
  const held = heldDigits(block).map((digit, k) => (k === 0 ? texts.digit[digit] : texts.digitIn[digit]));
  const placed = placedDigits(block);
  if (held.length === 0 || placed.length < 3) return texts.block.own;
  const count = placed.length === 4 ? texts.block.fourDigits : texts.block.threeDigits;
  const range = placed.map(({ digit }) => texts.digitShort[digit]).join(', ');
  return texts.block.title(
    held.join(` ${texts.block.and} `),
    held.length > 1 ? texts.placeOfTwo[heldPlace(block)] : texts.place[heldPlace(block)],
    count,
    range,
  );
}

/** Name of what was made at a visit; a dash where nothing was. */
export function madeTitle(made: Made | null, texts: Texts, format: Format): string {
  if (made === null) return '–';
  if (made.kind === 'strip') return blockTitle(made.block, texts);
  return texts.plate.made(texts.plate.face[made.faces], format.degrees(made.mpAngle));
}

/** Name of what is drawn: a block's, or the plate's with side, angle and digits. */
export function drawnTitle(drawn: Drawn, texts: Texts, format: Format): string {
  if (drawn.kind === 'strip') return blockTitle(drawn.block, texts);
  const { faces, angle, digits } = drawn.design;
  return texts.plate.title(texts.plate.face[faces], format.degrees(angle), digits.map((digit) => texts.digitShort[digit]).join(', '));
}

/** Why the plan suggests a block for its target, in a sentence; null where no strip serves. */
export function planReason({ target, need }: Plan, texts: Texts): string | null {
  if (need === 'both' || need === 'none') return null;
  return texts.block.why(texts.digit[target.digit], texts.block[LACKING[need]], texts.block[WANTED_MP[need]]);
}
