import { type Block, PALMAR_LAYERS, serves } from '../../block/block.ts';
import { blocks } from '../../block/library.ts';
import { NO_FIST } from '../../block/rank-blocks.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { layStrip } from './lay-strip.ts';
import { largestWhole } from './least-width-offer.ts';
import { NUMBER_OPTIONS, type StripOptions, type StripSettings } from './strip-options.ts';

const leastOf = (key: keyof StripOptions) => NUMBER_OPTIONS.find((o) => o.key === key)?.low ?? 0;

/** What was laid for another digit of the same strip: the same changes are tried for each. */
export type TriedStrips = Map<string, ReturnType<typeof layStrip>>;

/**
 * One change that leaves a digit's PIP joint free to 90 degrees, in words, each tried on this hand before it is offered: a narrower least width, a
 * smaller gap to the web, both, or a block that holds the same fingers the same way without a layer palmar to the digit. Null where none of them helps. Another
 * block is tried without the reading of this one's paper strip, which is another path's.
 */
export function freeFlexionOffer(
  hand: Hand,
  { block, asked, options: settings }: { readonly block: Block; readonly asked: StripOptions; readonly options: StripSettings },
  digit: DigitName,
  tried: TriedStrips = new Map(),
): string | null {
  const helps = (b: Block, changes: Partial<StripOptions>) => {
    const key = JSON.stringify([b.id, changes]);
    const laid = tried.get(key) ?? layStrip(hand, b, { ...asked, ...changes }, 'no offers');
    tried.set(key, laid);
    return laid.ok && (laid.value.freePip[digit] ?? Number.POSITIVE_INFINITY) >= NO_FIST;
  };
  // Where the narrowest and no gap together do not help, nothing between does; so most hands need few tries.
  const narrowest = leastOf('minimumWidth');
  if (helps(block, { minimumWidth: narrowest, proximalGap: 0 })) {
    const more = largestWhole((n) => helps(block, { minimumWidth: narrowest + n }), Math.ceil(settings.minimumWidth) - 1 - narrowest);
    if (more !== null) return `a minimumWidth of ${plain(narrowest + more)} mm leaves ${NO_FIST} degrees`;
    const gap = largestWhole((n) => helps(block, { proximalGap: n }), Math.ceil(settings.proximalGap) - 1);
    if (gap !== null) return `a proximalGap of ${plain(gap)} mm leaves ${NO_FIST} degrees`;
    return `a minimumWidth of ${narrowest} mm and a proximalGap of 0 together leave ${NO_FIST} degrees`;
  }
  const other = blocks().find(
    (b) => b.id !== block.id && spares(b, digit) && serves(b, block, hand.target?.digit) && helps(b, { paperReading: 'none' }),
  );
  if (!other) return null;
  const words = `in the block ${other.id} no layer passes palmar to it`;
  return asked.paperReading === 'none' ? words : `${words}; its paper strip is to be read anew`;
}

/** Whether no layer of a block passes palmar to a digit. */
function spares(block: Block, digit: DigitName): boolean {
  const place = block.places[digit];
  return place === undefined || PALMAR_LAYERS[place] === 0;
}
