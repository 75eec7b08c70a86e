/** Beyond it the tail is under 1e-15 and the series below would lose it by rounding. */
const FARTHEST = 8;
const MOST_TERMS = 400;

/**
 * Phi(z), the standard normal distribution: the chance that a standard normal value is `z` or less. Series of Marsaglia, J Stat Softw 2004;11(4);
 * right to about 1e-14. Positive and negative infinity give 1 and 0.
 * @throws RangeError when z is no number
 */
export function normalDistribution(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('the normal distribution needs a number');
  if (z > FARTHEST) return 1;
  if (z < -FARTHEST) return 0;
  let term = z;
  let sum = z;
  for (let k = 3; k < MOST_TERMS; k += 2) {
    term *= (z * z) / k;
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return Math.min(1, Math.max(0, 0.5 + (sum * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI)));
}
