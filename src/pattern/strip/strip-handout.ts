import { heldDigits, placedDigits } from '../../block/block.ts';
import type { Hand } from '../../hand/hand.ts';
import { handout, listed, PLAIN_FINGER } from '../handout.ts';
import type { TextSection } from '../making-notes.ts';
import type { StripFigures } from './strip-report.ts';

/** The patient's page of a strip. */
export function stripHandout(f: StripFigures, hand: Hand): readonly TextSection[] {
  const held = heldDigits(f.block).map((digit) => PLAIN_FINGER[digit]);
  const all = placedDigits(f.block).map(({ digit }) => PLAIN_FINGER[digit]);
  const how = f.path.held === 'raised' ? 'a little straighter' : 'a little more bent';
  return handout(
    'strip',
    `This strip goes round the ${listed(all)} of your ${hand.side} hand. It holds your ${listed(held)} ${how} at the knuckle than the fingers beside, while you use your hand. That can help a stiff finger joint to move.`,
  );
}
