import fc from 'fast-check';
import { DIGITS, type DigitName } from '../src/hand/digits.ts';
import type { Hand } from '../src/hand/hand.ts';
import { readHand } from '../src/hand/read-hand.ts';

/** Width, circumference, palmar room and dorsal length of an invented adult hand, mm. */
const ADULT: Readonly<Record<DigitName, readonly [number, number, number, number]>> = {
  index: [17.5, 57, 25, 44],
  long: [17.5, 57, 27, 48],
  ring: [16.5, 53, 25, 45],
  little: [14.5, 47, 19, 36],
};
const ADULT_BREADTH = 82;
const ADULT_METACARPAL = 88;

const share = (spread: number) => fc.double({ min: 1 - spread, max: 1 + spread, noNaN: true });

/**
 * Hands from a child of six (0.62 of an adult) to the largest plausible (1.28), each measure off by itself; palm measures, setbacks and depth there or
 * not. Every one is read by `readHand`, so that it is a hand that a person could give.
 */
export const plausibleHand: fc.Arbitrary<Hand> = fc
  .record({
    size: fc.double({ min: 0.62, max: 1.28, noNaN: true }),
    side: fc.constantFrom('left', 'right'),
    off: fc.array(fc.tuple(share(0.08), share(0.06), share(0.12), share(0.1)), { minLength: 4, maxLength: 4 }),
    breadth: fc.option(fc.tuple(share(0.06), fc.double({ min: 2.3, max: 2.5, noNaN: true })), { nil: undefined }),
    metacarpal: fc.option(share(0.12), { nil: undefined }),
    setback: fc.option(fc.double({ min: 8, max: 16, noNaN: true }), { nil: undefined }),
  })
  .map(({ size, side, off, breadth, metacarpal, setback }) => {
    const digits = DIGITS.map((digit, k) => {
      const [width, circumference, palmarRoom, dorsalLength] = ADULT[digit].map((mm, i) => mm * size * (off[k]?.[i] ?? 1));
      const own = digit === 'little' && setback !== undefined ? { mpSetback: setback * size } : {};
      return [digit, { width, circumference, palmarRoom, dorsalLength, ...own }];
    });
    const handBreadth = breadth ? ADULT_BREADTH * size * breadth[0] : undefined;
    return {
      schema: 'knucklewright/hand@1',
      code: 'TEST-1',
      side,
      units: 'mm',
      invented: true,
      digits: Object.fromEntries(digits),
      ...(breadth && handBreadth ? { handBreadth, handCircumference: handBreadth * breadth[1] } : {}),
      ...(metacarpal ? { metacarpalLength: ADULT_METACARPAL * size * metacarpal } : {}),
    };
  })
  .map((file) => {
    const hand = readHand(file);
    if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
    return hand.value;
  });

/** Every row of neighbouring digits. */
export const NEIGHBOURS: readonly (readonly DigitName[])[] = DIGITS.flatMap((_, from) =>
  DIGITS.slice(from).map((_, more) => DIGITS.slice(from, from + more + 1)),
);
