import type { Side } from '../hand/digits.ts';
import { type DrawnMoulded, drawMoulded, mouldedScene } from './moulded-hand.ts';

/** Of a picture a few centimetres wide. */
const SMALL = { step: 2.8, squares: 190 } as const;
/** Tips lie on the fingers and under the thumb; how far the hand is tipped, degrees: for pictures only. */
const POSE = { mp: -4, pip: 16 } as const;
const TIPPED = 8;
/** It ends in its palm, mm before the wrist. */
const CUT_OFF = -26;

const drawn = new Map<Side, DrawnMoulded>();

/**
 * The hand of whoever helps, of average size: palm up, seen from its thumb's side, coming from where the patient's fingers point in a picture from the little
 * finger's side. `side` is the patient's.
 */
export function helpingHand(side: Side): DrawnMoulded {
  const before = drawn.get(side);
  if (before) return before;
  const mirror = side === 'right' ? -1 : 1;
  const other = side === 'right' ? 'left' : 'right';
  const scene = mouldedScene({ hand: { digits: {} }, side: other, pose: POSE, step: SMALL.step, cutOff: CUT_OFF });
  const made = drawMoulded(scene, { roll: 180, across: 90 * mirror, spin: TIPPED * mirror, squares: SMALL.squares });
  drawn.set(side, made);
  return made;
}
