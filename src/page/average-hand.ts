import { DIGITS } from '../hand/digits.ts';
import { averageDigit } from '../hand/estimate.ts';
import type { Hand } from '../hand/hand.ts';
import { HAND_SCHEMA_ID } from '../hand/hand-schema.ts';

/** An average adult hand with round fingers, for pictures of blocks before anything is measured; never for a pattern. */
export const AVERAGE_HAND: Hand = {
  code: 'AVERAGE-1',
  side: 'left',
  units: 'mm',
  digits: Object.fromEntries(
    DIGITS.map((digit) => {
      const { circumference, palmarRoom, dorsalLength } = averageDigit(digit);
      return [digit, { width: circumference / Math.PI, circumference, palmarRoom, dorsalLength }];
    }),
  ),
  palm: {},
  target: null,
  flags: { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false },
  estimated: [],
  invented: true,
  note: null,
  source: { schema: HAND_SCHEMA_ID, code: 'AVERAGE-1', side: 'left', units: 'mm', digits: {} },
};
