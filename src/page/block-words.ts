import type { Block } from '../block/block.ts';
import { LACKING, WANTED_MP } from '../block/deficit-kind.ts';
import type { Plan } from '../block/plan.ts';
import type { Made } from '../record/case.ts';
import { placesTitle } from '../words/hand-words.ts';
import type { Drawn } from './derive.ts';
import type { Format } from './format.ts';
import type { Texts } from './texts/english.ts';

/** Name of a block in the reader's language, from its places. */
export function blockTitle(block: Pick<Block, 'places'>, texts: Texts): string {
  return placesTitle(block, texts.hand) ?? texts.block.own;
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
  return texts.plate.title(texts.plate.face[faces], format.degrees(angle), digits.map((digit) => texts.hand.short[digit]).join(', '));
}

/** Why the plan suggests a block for its target, in a sentence; null where no strip serves. */
export function planReason({ target, need }: Plan, texts: Texts): string | null {
  if (need === 'both' || need === 'none') return null;
  return texts.block.why(texts.hand.first[target.digit], texts.block[LACKING[need]], texts.block[WANTED_MP[need]]);
}
