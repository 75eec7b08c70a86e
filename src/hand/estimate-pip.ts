import type { DigitName } from './digits.ts';
import type { Hand } from './hand.ts';

/** Mean circumference at the PIP joint, women and men, mm. Greiner 1991, NATICK/TR-92/011, second-hand: means only. */
export const PIP_CIRCUMFERENCE: Readonly<Record<DigitName, readonly [number, number]>> = {
  index: [61.2, 68.4],
  long: [61.3, 69.6],
  ring: [57.4, 64.9],
  little: [50.6, 57.8],
};

/** Mean circumference and breadth of the hand, women and men, mm. ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, from the public raw data. */
const HAND_CIRCUMFERENCE = [186.55, 212.28] as const;
const HAND_BREADTH = [78.15, 88.26] as const;

/** Standard deviation of a PIP circumference about its estimate, as a share: that of finger circumferences altogether, from memory. */
const SPREAD = 0.055;

/**
 * The circumference of a PIP joint that was not measured, mm, with its standard deviation: the published mean (Greiner 1991) made larger or
 * smaller with the measured circumference or breadth of the hand (ANSUR II). Null where neither was measured or the hand is a child's: an estimate
 * from the digit itself would only return what was put in. A regression on age, sex and weight exists (Nakamura et al., Open J Rheumatol
 * Autoimmune Dis 2017;7(4), abstract seen); its coefficients were not readable, and a hand file knows none of the three.
 */
export function estimatePipCircumference(
  hand: Pick<Hand, 'palm' | 'child'>,
  digit: DigitName,
): { readonly mm: number; readonly sd: number } | null {
  if (hand.child) return null;
  const { handCircumference, handBreadth } = hand.palm;
  const size =
    handCircumference !== undefined
      ? handCircumference / mean(HAND_CIRCUMFERENCE)
      : handBreadth === undefined
        ? null
        : handBreadth / mean(HAND_BREADTH);
  if (size === null) return null;
  const mm = mean(PIP_CIRCUMFERENCE[digit]) * size;
  return { mm, sd: SPREAD * mm };
}

function mean(values: readonly [number, number]): number {
  return (values[0] + values[1]) / 2;
}
