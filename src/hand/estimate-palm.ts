import { formatLength, type LengthUnit } from '../units/length.ts';
import type { Problem, Warning } from '../units/result.ts';
import { DIGITS, type DigitName, WEBS, type WebName } from './digits.ts';
import { averageDigit, noChildNorms } from './estimate.ts';
import { DIGIT_FIELDS, digitPath, digitsIn, type Field, PALM_FIELDS } from './fields.ts';
import type { Hand } from './hand.ts';

/** A hand's palm with nothing missing, mm. */
export interface CompletePalm {
  readonly handBreadth: number;
  readonly handCircumference: number;
  readonly metacarpalLength: number;
  readonly mpDepth: number;
  /** MP axis to the skin on the back of the knuckle. */
  readonly mpDorsalRadius: number;
  /** How far the thumb web lies nearer to the wrist than the long finger's MP joint line. */
  readonly thumbWebSetback: number;
  /** How far each MP joint line lies nearer to the wrist than the long finger's. */
  readonly setbacks: Readonly<Record<DigitName, number>>;
}

/** A length of the palm that was not measured; every output says so. */
interface PalmEstimate {
  /** Path of the field, e.g. `handBreadth`, `digits.ring.mpSetback`. */
  readonly where: string;
  readonly mm: number;
  readonly basis: string;
}

/** Means of women and men. ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, computed from the public raw data. mm */
const MEAN_BREADTH = [78.15, 88.26] as const;
const MEAN_CIRCUMFERENCE = [186.55, 212.28] as const;
const MEAN_PALM_LENGTH = [108.7, 116.46] as const;
/** Proximal digital crease to MP joint, the middle of 14 to 20 mm. Bugbee & Botte, Clin Orthop 1993. */
const CREASE_TO_MP = 17;
/** MP joint lines behind the long finger's in an average adult, mm: from memory. */
const AVERAGE_SETBACKS: Readonly<Record<DigitName, number>> = { index: 2, long: 0, ring: 5, little: 13 };

/**
 * MP axis to dorsal skin over MP depth, from memory: the axis lies in the metacarpal head, nearer to the back than to the palm, whose fat pad
 * is the thicker. Half of the depth would make the bend of an adult's plate 2 mm too long at 45 degrees, 4 at 90.
 */
const DORSAL_SHARE = 0.41;
/**
 * Thumb web below the MP joint line over metacarpal length. Web heights 62.8 and 69.1 (Greiner 1991, NATICK/TR-92/011, second-hand) of 91.7 and
 * 99.5 (ANSUR II less 17) leave 0.315 and 0.305; a little less is taken, so that a plate's wing ends sooner.
 */
const THUMB_WEB_SHARE = 0.302;

const AVERAGE_BREADTH = mean(MEAN_BREADTH);
/** Hand circumference over breadth. */
const ROUND_TO_BREADTH = mean(MEAN_CIRCUMFERENCE) / AVERAGE_BREADTH;
/** Wrist crease to MP joint over breadth. */
const METACARPAL_TO_BREADTH = (mean(MEAN_PALM_LENGTH) - CREASE_TO_MP) / AVERAGE_BREADTH;

interface CompletedPalm {
  readonly palm: CompletePalm;
  readonly estimated: readonly PalmEstimate[];
  /** `ESTIMATED`, one for each length. */
  readonly warnings: readonly Warning[];
  /** `NOT_ESTIMABLE` where an estimate leaves the field's range, with how to measure; `NO_CHILD_NORMS` once for all that is missing of a child. */
  readonly problems: readonly Problem[];
}

/**
 * Fills in what a plate needs and was not measured, for the digits it looks at: breadth and circumference from each other by the mean ratio of
 * ANSUR II, or both from the digits' circumferences; the metacarpal length by the ratio of palm length to breadth; MP setbacks by an average
 * adult's, made smaller or larger with the breadth; MP depth as the thickness of the palm's section; dorsal radius and thumb web as shares of
 * MP depth and metacarpal length.
 * @param thicknessOf thickness of the section of a breadth and circumference, mm, or null where they contradict
 */
export function completePalm(hand: Hand, thicknessOf: (breadth: number, circumference: number) => number | null): CompletedPalm {
  const { palm } = hand;
  const estimated: PalmEstimate[] = [];
  const problems: Problem[] = [];
  const missing: string[] = [];
  const estimate = (where: string, field: Field, mm: number, basis: string): number => {
    if (hand.child) {
      missing.push(where);
      return mm;
    }
    if (Number.isFinite(mm) && mm >= field.refuse.from && mm <= field.refuse.to) estimated.push({ where, mm, basis });
    else problems.push(notEstimable(where, field, mm, hand.units));
    return mm;
  };
  const handBreadth =
    palm.handBreadth ??
    (palm.handCircumference === undefined
      ? estimate('handBreadth', PALM_FIELDS.handBreadth, AVERAGE_BREADTH * digitScale(hand), BREADTH_FROM_DIGITS)
      : estimate('handBreadth', PALM_FIELDS.handBreadth, palm.handCircumference / ROUND_TO_BREADTH, FROM_EACH_OTHER));
  const handCircumference =
    palm.handCircumference ?? estimate('handCircumference', PALM_FIELDS.handCircumference, handBreadth * ROUND_TO_BREADTH, FROM_EACH_OTHER);
  const metacarpalLength =
    palm.metacarpalLength ??
    estimate('metacarpalLength', PALM_FIELDS.metacarpalLength, handBreadth * METACARPAL_TO_BREADTH, LENGTH_FROM_BREADTH);
  const mpDepth =
    palm.mpDepth ??
    estimate(
      'mpDepth',
      PALM_FIELDS.mpDepth,
      thicknessOf(handBreadth, handCircumference) ?? Number.NaN,
      'the thickness of the palm section',
    );
  const mpDorsalRadius =
    palm.mpDorsalRadius ?? estimate('mpDorsalRadius', PALM_FIELDS.mpDorsalRadius, DORSAL_SHARE * mpDepth, DORSAL_BASIS);
  const thumbWebSetback =
    palm.thumbWebSetback ?? estimate('thumbWebSetback', PALM_FIELDS.thumbWebSetback, THUMB_WEB_SHARE * metacarpalLength, THUMB_WEB_BASIS);
  const setback = (digit: DigitName): number => {
    const measured = hand.digits[digit]?.mpSetback;
    if (measured !== undefined || digit === 'long') return measured ?? 0;
    const average = (AVERAGE_SETBACKS[digit] * handBreadth) / AVERAGE_BREADTH;
    return estimate(digitPath(digit, 'mpSetback'), DIGIT_FIELDS.mpSetback, average, SETBACK_BASIS);
  };
  const setbacks = Object.fromEntries(DIGITS.map((digit) => [digit, setback(digit)])) as Record<DigitName, number>;
  const warnings = estimated.map((entry) => estimatedWarning(entry, hand.units));
  return {
    palm: { handBreadth, handCircumference, metacarpalLength, mpDepth, mpDorsalRadius, thumbWebSetback, setbacks },
    estimated,
    warnings,
    problems: [...problems, ...noChildNorms(missing)],
  };
}

/** The hand breadth as measured, or else as a plate estimates it; mm. */
export function handBreadthOf(hand: Pick<Hand, 'palm' | 'digits'>): number {
  const { handBreadth, handCircumference } = hand.palm;
  return handBreadth ?? (handCircumference === undefined ? AVERAGE_BREADTH * digitScale(hand) : handCircumference / ROUND_TO_BREADTH);
}

const FROM_EACH_OTHER = 'the other of breadth and circumference by the mean ratio of ANSUR II (Gordon et al. 2014)';
const BREADTH_FROM_DIGITS =
  "the mean breadth of ANSUR II (Gordon et al. 2014) times the digits' circumferences over the average ones (from memory)";
const LENGTH_FROM_BREADTH =
  'the hand breadth by the mean ratio of palm length to breadth of ANSUR II (Gordon et al. 2014), less 17 mm from crease to joint (Bugbee & Botte 1993)';
const DORSAL_BASIS = `the MP depth: ${DORSAL_SHARE} of it, from memory`;
const THUMB_WEB_BASIS = `the metacarpal length: ${THUMB_WEB_SHARE} of it, after the web heights of Greiner 1991 (second-hand)`;
const SETBACK_BASIS = 'an average adult (from memory), made smaller or larger with the hand breadth';

/** How much larger the measured digits are round than average adult ones: the middle of the ratios, so that one swollen digit does not count. */
function digitScale(hand: Pick<Hand, 'digits'>): number {
  const ratios = digitsIn(hand.digits)
    .map((digit) => (hand.digits[digit]?.circumference ?? 0) / averageDigit(digit).circumference)
    .sort((a, b) => a - b);
  const half = ratios.length / 2;
  return mean(ratios.slice(Math.ceil(half) - 1, Math.floor(half) + 1));
}

function fieldOf(where: string): Field {
  const key = where.split('.').at(-1);
  const field = Object.values({ ...PALM_FIELDS, ...DIGIT_FIELDS }).find(({ id }) => id === key);
  if (!field) throw new Error(`no field ${where}`);
  return field;
}

function estimatedWarning({ where, mm, basis }: PalmEstimate, unit: LengthUnit): Warning {
  const { label, howToMeasure } = fieldOf(where);
  const message = `${where}: ${label} was not measured; ${formatLength(mm, unit)} is estimated from ${basis}`;
  return { code: 'ESTIMATED', message, where, value: mm, next: `Measure it: ${howToMeasure}` };
}

function notEstimable(where: string, field: Field, mm: number, unit: LengthUnit): Problem {
  const range = `${formatLength(field.refuse.from, unit)} to ${formatLength(field.refuse.to, unit)}`;
  const shown = Number.isFinite(mm) ? `its estimate, ${formatLength(mm, unit)}, lies outside ${range}` : 'it cannot be estimated';
  const message = `${where}: ${field.label} is missing, and ${shown}. Measure it: ${field.howToMeasure}`;
  return { code: 'NOT_ESTIMABLE', where, message, kind: 'input' };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * How far each web lies behind the foremost in an average adult, in hand breadths: web heights of women and men (Greiner 1991, NATICK/TR-92/011,
 * second-hand) over the breadths of ANSUR II (Gordon et al. 2014).
 */
const SETBACK_SHARE: Readonly<Record<WebName, number>> = { 'index-long': 0, 'long-ring': 0.004, 'ring-little': 0.159 };

interface WebLevels {
  /** Along the digits, mm, distal positive: 0 at the foremost web, the others below. */
  readonly level: Readonly<Record<WebName, number>>;
  /** Webs whose setback was not measured. */
  readonly estimated: readonly WebName[];
}

/** Levels of the webs from their measured setbacks, or estimated from the hand breadth (model rule 11). */
export function webLevels(hand: Pick<Hand, 'webs' | 'palm' | 'digits'>): WebLevels {
  const measured = hand.webs?.webSetback ?? {};
  const estimated = WEBS.filter((web) => measured[web] === undefined);
  const breadth = estimated.length > 0 ? handBreadthOf(hand) : 0;
  const setbacks = WEBS.map((web) => measured[web] ?? SETBACK_SHARE[web] * breadth);
  const foremost = Math.min(...setbacks);
  return {
    level: Object.fromEntries(WEBS.map((web, k) => [web, foremost - (setbacks[k] ?? 0)])) as Record<WebName, number>,
    estimated,
  };
}
