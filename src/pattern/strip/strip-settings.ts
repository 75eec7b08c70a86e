import { handBreadthOf } from '../../hand/estimate-palm.ts';
import type { Hand } from '../../hand/hand.ts';
import type { StripOptions, StripSettings } from './strip-options.ts';

/** Tried for a width left to the program, widest first; mm. */
const AUTO_WIDTHS = [20, 18, 15, 12] as const;

/** Narrowest that a relief may leave, mm: common practice, no source. A small hand's phalanges leave no room for more than the smaller one. */
const MINIMUM_WIDTH = 10;
const SMALL_HAND_MINIMUM_WIDTH = 8;
/** A hand less broad than this is a small one, mm; P5 of adults is 72 (ANSUR II). */
const SMALL_HAND_BREADTH = 65;

/** The widths that a width left to the program may become: none under a least width that was asked for. */
export function widthsToTry({ minimumWidth }: StripOptions): readonly number[] {
  if (minimumWidth === 'auto') return AUTO_WIDTHS;
  const wide = AUTO_WIDTHS.filter((width) => width >= minimumWidth);
  return wide.length > 0 ? wide : [minimumWidth];
}

/** The options with the narrowest width decided by the size of the hand, for a strip of this width (model rule 13). */
export function settingsFor(options: StripOptions, hand: Hand, width: number): StripSettings {
  const usual = handBreadthOf(hand) < SMALL_HAND_BREADTH ? SMALL_HAND_MINIMUM_WIDTH : MINIMUM_WIDTH;
  const minimumWidth = options.minimumWidth === 'auto' ? Math.min(width, usual) : options.minimumWidth;
  return { ...options, width, minimumWidth, seam: closedSeam(options) };
}

/** Until the loops are known, a seam that was left open is a lap, which an opening one is drawn as. */
function closedSeam({ seam }: StripOptions): StripSettings['seam'] {
  return seam === 'auto' ? 'lap' : seam;
}

/** The options with what was left open at its usual value: for the first version, and for pictures of no hand. */
export function usualSettings(options: StripOptions): StripSettings {
  const width = options.width === 'auto' ? (widthsToTry(options)[0] as number) : options.width;
  const minimumWidth = options.minimumWidth === 'auto' ? Math.min(width, MINIMUM_WIDTH) : options.minimumWidth;
  return { ...options, width, minimumWidth, seam: closedSeam(options) };
}
