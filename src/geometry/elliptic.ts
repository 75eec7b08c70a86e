/**
 * Elliptic integrals of the second kind, parameter m = k². Radians.
 * Complete: arithmetic-geometric mean (Abramowitz & Stegun 17.6.3 and 17.6.4).
 * Incomplete: Carlson's symmetric forms by duplication (DLMF 19.25.9, 19.36).
 */

const MAX_STEPS = 60;
/** Relative spread at which Carlson's duplication stops; the series error is its sixth power. */
const CARLSON_SPREAD = 1e-3;

/**
 * E(m), complete, for m in 0..1.
 * @throws RangeError outside that range
 */
export function completeE(m: number): number {
  if (!(m >= 0 && m <= 1)) throw new RangeError(`elliptic parameter ${String(m)} outside 0..1`);
  if (m === 1) return 1;
  let a = 1;
  let g = Math.sqrt(1 - m);
  let power = 0.5;
  let sum = power * m;
  for (let step = 0; step < MAX_STEPS && Math.abs(a - g) > Number.EPSILON * a; step++) {
    const c = (a - g) / 2;
    const mean = (a + g) / 2;
    g = Math.sqrt(a * g);
    a = mean;
    power *= 2;
    sum += power * c * c;
  }
  return (Math.PI / (2 * a)) * (1 - sum);
}

/** E(phi | m), incomplete, for any phi in radians and m in 0..1. Odd in phi; one half period adds 2 E(m). */
export function incompleteE(phi: number, m: number): number {
  const halfTurns = Math.round(phi / Math.PI);
  const rest = phi - halfTurns * Math.PI;
  const s = Math.sin(rest);
  const c2 = Math.cos(rest) ** 2;
  const q = 1 - m * s * s;
  const part = s === 0 ? 0 : s * carlsonRF(c2, q, 1) - (m / 3) * s ** 3 * carlsonRD(c2, q, 1);
  return halfTurns === 0 ? part : part + 2 * halfTurns * completeE(m);
}

/** R_F(x, y, z), at most one argument zero (DLMF 19.16.1, series 19.36.1). */
function carlsonRF(x0: number, y0: number, z0: number): number {
  let [x, y, z] = [x0, y0, z0];
  for (let step = 0; ; step++) {
    const mean = (x + y + z) / 3;
    const dx = 1 - x / mean;
    const dy = 1 - y / mean;
    const dz = 1 - z / mean;
    if (Math.max(Math.abs(dx), Math.abs(dy), Math.abs(dz)) < CARLSON_SPREAD || step === MAX_STEPS) {
      const e2 = dx * dy - dz * dz;
      const e3 = dx * dy * dz;
      return (1 - e2 / 10 + e3 / 14 + (e2 * e2) / 24 - (3 * e2 * e3) / 44) / Math.sqrt(mean);
    }
    const lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x);
    [x, y, z] = [(x + lambda) / 4, (y + lambda) / 4, (z + lambda) / 4];
  }
}

/** R_D(x, y, z), z > 0, at most one of x, y zero (DLMF 19.16.5, series 19.36.2). */
function carlsonRD(x0: number, y0: number, z0: number): number {
  let [x, y, z] = [x0, y0, z0];
  let factor = 1;
  let sum = 0;
  for (let step = 0; ; step++) {
    const mean = (x + y + 3 * z) / 5;
    const dx = 1 - x / mean;
    const dy = 1 - y / mean;
    const dz = 1 - z / mean;
    if (Math.max(Math.abs(dx), Math.abs(dy), Math.abs(dz)) < CARLSON_SPREAD || step === MAX_STEPS) {
      const ea = dx * dy;
      const eb = dz * dz;
      const ec = ea - eb;
      const ed = ea - 6 * eb;
      const ee = ed + 2 * ec;
      const series =
        1 + ed * (-3 / 14 + (9 / 88) * ed - (4.5 / 26) * dz * ee) + dz * ((1 / 6) * ee + dz * (-(9 / 22) * ec + dz * (3 / 26) * ea));
      return 3 * sum + (factor * series) / (mean * Math.sqrt(mean));
    }
    const lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x);
    sum += factor / (Math.sqrt(z) * (z + lambda));
    factor /= 4;
    [x, y, z] = [(x + lambda) / 4, (y + lambda) / 4, (z + lambda) / 4];
  }
}
