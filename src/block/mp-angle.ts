import { plain, rounded } from '../units/number.ts';

/** The angle at which a plate holds the MP joint: a starting point with its range, degrees of MP flexion. */
export interface MpAngle {
  readonly degrees: number;
  readonly range: readonly [number, number];
  /** Plain sentences: how the angle came about and what stands behind it. */
  readonly reasoning: string;
  /** What to try if one motion lags. */
  readonly next: string;
}

const MIDDLE = 45;
const FULL = 90;
const STEP = 5;
const NEXT = 'If PIP extension lags, try 5 to 10 degrees more MP flexion; if PIP flexion lags, 5 to 10 less (common practice, no source).';
/** Decimals kept before rounding up, so that 6.0000000000000001 steps are six and not seven. */
const STEP_DECIMALS = 9;

/**
 * The MP angle of a plate for a PIP joint that lacks both motions (plate model, "Angle"): 45 + 45 (e - f) / (e + f), rounded up to the
 * next 5 degrees, with the range that practice gives (e > f: 45 to 90, f > e: 0 to 45, equal: 45). Common practice; no published
 * source for the interpolation.
 * @param extensionDeficit e, degrees, more than 0
 * @param flexionDeficit f, degrees, more than 0
 * @throws RangeError when a deficit is not a finite number over 0: then a strip, or nothing, is what serves
 */
export function mpAngle(extensionDeficit: number, flexionDeficit: number): MpAngle {
  for (const deficit of [extensionDeficit, flexionDeficit]) {
    if (!(Number.isFinite(deficit) && deficit > 0)) throw new RangeError(`a plate's angle needs two deficits over 0, not ${deficit}`);
  }
  // 45 + 45 (e - f) / (e + f) is 90 e / (e + f).
  const steps = (FULL * extensionDeficit) / (extensionDeficit + flexionDeficit) / STEP;
  const degrees = STEP * Math.ceil(rounded(steps, STEP_DECIMALS));
  const [range, why] = rangeFor(extensionDeficit, flexionDeficit);
  const reasoning = [
    `PIP extension lacks ${plain(extensionDeficit)} degrees and flexion ${plain(flexionDeficit)}: ${why}.`,
    ...(extensionDeficit === flexionDeficit ? [] : [interpolation(degrees)]),
    'Common practice, no published source for the interpolation. A starting point for your judgement, not a prescription.',
  ].join(' ');
  return { degrees, range, reasoning, next: NEXT };
}

function interpolation(degrees: number): string {
  return `${degrees} degrees lies where the two deficits divide 0 to ${FULL}, rounded up to the next ${STEP}: more MP flexion makes PIP extension easier, and extension is the weaker motion.`;
}

function rangeFor(e: number, f: number): [readonly [number, number], string] {
  if (e > f) return [[MIDDLE, FULL], `extension lacks more, so the MP joint is held between ${MIDDLE} and ${FULL} degrees of flexion`];
  if (f > e) return [[0, MIDDLE], `flexion lacks more, so the MP joint is held between 0 and ${MIDDLE} degrees of flexion`];
  return [[MIDDLE, MIDDLE], `they are equal, so the MP joint is held in the middle of 0 to ${FULL}, at ${MIDDLE} degrees of flexion`];
}
