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

/** Numbers from 0 (included) to 1, the same row of them for the same seed in every engine: splitmix32 over 32-bit integers. */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let t = state ^ (state >>> 16);
    t = Math.imul(t, 0x21f0aaad);
    t ^= t >>> 15;
    t = Math.imul(t, 0x735a2d97);
    return ((t ^ (t >>> 15)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers from such a row (Box and Muller, Ann Math Stat 1958;29:610-611). */
export function seededNormal(random: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    // 1 - u is never 0, so the logarithm is finite.
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
