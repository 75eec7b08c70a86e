import type { DigitName, Side } from '../src/hand/digits.ts';
import type { Hand } from '../src/hand/hand.ts';
import { readHand } from '../src/hand/read-hand.ts';

export type Measures = readonly [width: number, circumference: number, palmarRoom: number, dorsalLength: number];

/** The worked hand of docs/model.md; the demo hand file has the same figures. Invented. */
export const WORKED: Readonly<Record<DigitName, Measures>> = {
  index: [17.5, 57, 25, 44],
  long: [17.5, 57, 27, 48],
  ring: [16.5, 53, 25, 45],
  little: [14.5, 47, 19, 36],
};

/** About the smallest hand at six years, and about the largest adult's; invented, from memory of such hands. */
export const SMALLEST: Readonly<Record<DigitName, Measures>> = {
  index: [10.5, 36, 17, 26],
  long: [10.5, 36, 18, 28],
  ring: [10, 34, 17, 26],
  little: [9, 30, 16, 22],
};
export const LARGEST: Readonly<Record<DigitName, Measures>> = {
  index: [25, 80, 32, 55],
  long: [25, 80, 34, 60],
  ring: [24, 76, 32, 56],
  little: [21, 68, 25, 45],
};

/** Web setbacks of the worked hand, mm. */
export const WORKED_WEBS = { 'index-long': 0, 'long-ring': 0, 'ring-little': 12.5 };

/** A hand file's JSON for the measures, mm; the worked hand with its webs, others without. */
export function handJson(measures: Readonly<Record<DigitName, Measures>>, side: Side = 'left'): object {
  const digits = Object.fromEntries(
    Object.entries(measures).map(([digit, [width, circumference, palmarRoom, dorsalLength]]) => [
      digit,
      { width, circumference, palmarRoom, dorsalLength },
    ]),
  );
  return {
    schema: 'knucklewright/hand@1',
    code: 'TEST-01',
    side,
    units: 'mm',
    invented: true,
    digits,
    ...(measures === WORKED ? { webSetback: WORKED_WEBS } : {}),
  };
}

/** The hand that the reader makes of it; throws when it refuses it. */
export function handOf(measures: Readonly<Record<DigitName, Measures>>, side: Side = 'left'): Hand {
  const hand = readHand(handJson(measures, side));
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  return hand.value;
}
