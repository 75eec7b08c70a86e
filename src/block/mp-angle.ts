import { rounded } from '../units/number.ts';
import type { Motion } from './plan-notes.ts';

/** The angle at which a plate holds the MP joint: a starting point with its range, degrees of MP flexion. */
export interface MpAngle {
  readonly degrees: number;
  /** Where it may go: the side of the middle that the deficits ask for, inside the passive MP motion. */
  readonly range: readonly [number, number];
  /** What the deficits alone would give. */
  readonly wanted: number;
}

/** Passive motion of the MP joint, degrees of flexion; a bound that was not measured is absent. */
export interface MpMotion {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

const MIDDLE = 45;
const FULL = 90;
const STEP = 5;
/** Decimals kept before rounding up, so that 6.0000000000000001 steps are six and not seven. */
const STEP_DECIMALS = 9;

/**
 * The MP angle of a plate for a PIP joint that lacks both motions: 45 + 45 (e - f) / (e + f), rounded up to the next 5 degrees and kept inside
 * the passive MP motion. It stays on its side of 45 (e > f: 45 to 90, f > e: 0 to 45, equal: 45), so it is null where the joint does not reach
 * that side: such a plate would favour the other motion. Common practice; no published source for the interpolation.
 * @param extensionDeficit e, degrees, more than 0
 * @param flexionDeficit f, degrees, more than 0
 * @param most degrees of MP flexion that are not to be passed whatever the deficits say
 * @throws RangeError when a deficit is not a finite number over 0: then a strip, or nothing, is what serves
 */
export function mpAngle(extensionDeficit: number, flexionDeficit: number, motion: MpMotion = {}, most: number = FULL): MpAngle | null {
  for (const deficit of [extensionDeficit, flexionDeficit]) {
    if (!(Number.isFinite(deficit) && deficit > 0)) throw new RangeError(`a plate's angle needs two deficits over 0, not ${deficit}`);
  }
  // 45 + 45 (e - f) / (e + f) is 90 e / (e + f).
  const steps = (FULL * extensionDeficit) / (extensionDeficit + flexionDeficit) / STEP;
  const wanted = STEP * Math.ceil(rounded(steps, STEP_DECIMALS));
  const favoured = favours(extensionDeficit, flexionDeficit);
  const low = Math.max(favoured === 'flexion' ? 0 : MIDDLE, motion.from ?? 0);
  const high = Math.min(favoured === 'extension' ? FULL : MIDDLE, motion.to ?? FULL, most);
  if (low > high) return null;
  return { degrees: within(wanted, low, high), range: [low, high], wanted };
}

/** The motion that a plate for these deficits makes easier; neither where they are equal. */
export function favours(extensionDeficit: number, flexionDeficit: number): Motion | null {
  if (extensionDeficit === flexionDeficit) return null;
  return extensionDeficit > flexionDeficit ? 'extension' : 'flexion';
}

/** The nearest angle inside the range, in fives where a five lies inside. */
function within(wanted: number, low: number, high: number): number {
  if (wanted > high) return Math.floor(high / STEP) * STEP >= low ? Math.floor(high / STEP) * STEP : high;
  if (wanted < low) return Math.ceil(low / STEP) * STEP <= high ? Math.ceil(low / STEP) * STEP : low;
  return wanted;
}
