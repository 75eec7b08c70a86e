const MAX_STEPS = 100;

/**
 * A root of a continuous `f` between `low` and `high`, where it must change sign; null when it does not.
 * Chandrupatla's method (Adv. Eng. Software 1997;28:145-149): inverse quadratic steps where they are safe, halving otherwise,
 * so that it can neither diverge nor leave the bracket.
 * @param tolerance where to stop, in the unit of the argument
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, tolerance: number): number | null {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return null;
  let t = 0.5;
  for (let step = 0; ; step++) {
    const x = a + t * (b - a);
    const fx = f(x);
    let c = a;
    let fc = fa;
    if (fx * fa <= 0) {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const limit = tolerance / Math.abs(b - a);
    if (limit > 0.5 || fa === 0 || step === MAX_STEPS) return best;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const safe = phi * phi < xi && (1 - phi) ** 2 < 1 - xi;
    const quadratic = safe ? (fa / (fb - fa)) * (fc / (fb - fc)) + (((c - a) / (b - a)) * fa * fb) / ((fc - fa) * (fc - fb)) : 0.5;
    t = Math.min(1 - limit, Math.max(limit, quadratic));
  }
}
