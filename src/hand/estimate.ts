import { formatLength, type LengthUnit } from '../units/length.ts';
import type { Problem, Warning } from '../units/result.ts';
import type { DigitName } from './digits.ts';
import { DIGIT_FIELDS, digitPath, digitsIn } from './fields.ts';
import type { DigitMeasures, Estimate, Hand } from './hand.ts';

/** Digits' measures with the two lengths not yet all known, mm. */
export type MeasuredDigits = Readonly<Partial<Record<DigitName, PartlyMeasured>>>;
export type PartlyMeasured = Omit<DigitMeasures, 'palmarRoom' | 'dorsalLength'> & {
  readonly palmarRoom?: number;
  readonly dorsalLength?: number;
};
type EstimatedField = Estimate['field'];

/** Mean length of the proximal phalanx, mm. Buryanov & Kotiuk, Int J Morphol 2010;28:755-758, second-hand. */
const PHALANX_LENGTH: Readonly<Record<DigitName, number>> = { index: 39.78, long: 44.63, ring: 41.37, little: 32.74 };

/** How much larger the digit is round the PIP joint than at mid proximal phalanx, mm: the middle of 5 to 9, from memory. */
const PIP_EXCESS = 7;

/** Mean distance from web to PIP crease, women and men, mm; the ring finger's on both of its sides. Computed from Greiner 1991, second-hand. */
const WEB_TO_PIP_CREASE: Readonly<Record<DigitName, readonly number[]>> = {
  index: [25.6, 27.2],
  long: [27.4, 29.2],
  ring: [19.7, 21.1, 32.1, 34.4],
  little: [17.8, 18.8],
};

/**
 * What lies at least between the two lengths, mm: MP joint to proximal digital crease (14 to 20) and PIP crease to PIP joint (2 to 3).
 * Bugbee & Botte, Clin Orthop 1993. It caps the room: a strip too narrow leaves the PIP joint free, one too wide blocks it.
 */
const LEAST_OUTSIDE_CREASES = 14 + 2;

/** Spread of an estimate, mm: about what hands of one size differ by, from memory. */
const ESTIMATE_SPREAD: Readonly<Record<EstimatedField, number>> = { palmarRoom: 3, dorsalLength: 4 };

const SOURCES = 'Greiner 1991, Buryanov & Kotiuk 2010, Bugbee & Botte 1993';

/** The average adult digit that the estimates scale, mm. */
export function averageDigit(digit: DigitName): Readonly<Record<EstimatedField | 'circumference', number>> {
  const dorsalLength = PHALANX_LENGTH[digit];
  return {
    dorsalLength,
    palmarRoom: Math.min(mean(WEB_TO_PIP_CREASE[digit]), dorsalLength - LEAST_OUTSIDE_CREASES),
    circumference: mean(PIP_CIRCUMFERENCE[digit]) - PIP_EXCESS,
  };
}

export interface Completed {
  readonly digits: Readonly<Partial<Record<DigitName, DigitMeasures>>>;
  readonly estimated: readonly Estimate[];
  /** `ESTIMATED`, one for each length. */
  readonly warnings: readonly Warning[];
  /** `NOT_ESTIMABLE` where the estimate leaves the field's range. */
  readonly problems: readonly Problem[];
}

/**
 * Fills in `palmarRoom` and `dorsalLength` where they were not measured: from the digit's other length by the ratio of the two in
 * the average digit, or else from the average digit by the hand's circumferences (the middle of the digits' ratios, so that one
 * swollen digit does not count). Of a child nothing is filled in: what is missing is refused in one problem.
 */
export function completeDigits(digits: MeasuredDigits, unit: LengthUnit = 'mm', child = false): Completed {
  const scale = median(digitsIn(digits).map((digit) => (digits[digit]?.circumference ?? 0) / averageDigit(digit).circumference));
  const completed: Partial<Record<DigitName, DigitMeasures>> = {};
  const estimated: Estimate[] = [];
  const warnings: Warning[] = [];
  const problems: Problem[] = [];
  const missing: string[] = [];
  for (const digit of digitsIn(digits)) {
    const measured = digits[digit];
    if (measured === undefined) continue;
    const estimate = (field: EstimatedField, other: EstimatedField): number => {
      if (child) missing.push(digitPath(digit, field));
      const average = averageDigit(digit);
      const known = measured[other];
      const mm = known === undefined ? average[field] * scale : (known * average[field]) / average[other];
      const basis =
        known === undefined
          ? `an average adult ${digit} finger (${SOURCES}) times the hand's circumferences over the average ones (PIP less ${PIP_EXCESS} mm, from memory)`
          : `the measured ${DIGIT_FIELDS[other].label} by the ratio of the two in an average adult (${SOURCES})`;
      const entry: Estimate = { where: digitPath(digit, field), digit, field, mm, spread: ESTIMATE_SPREAD[field], basis };
      const { refuse } = DIGIT_FIELDS[field];
      if (child) return mm;
      if (mm < refuse.from || mm > refuse.to) problems.push(notEstimable(entry, unit));
      else {
        estimated.push(entry);
        warnings.push(estimatedWarning(entry, unit));
      }
      return mm;
    };
    completed[digit] = {
      ...measured,
      palmarRoom: measured.palmarRoom ?? estimate('palmarRoom', 'dorsalLength'),
      dorsalLength: measured.dorsalLength ?? estimate('dorsalLength', 'palmarRoom'),
    };
  }
  return { digits: completed, estimated, warnings, problems: [...problems, ...noChildNorms(missing)] };
}

/** Why there are no norms for children, in words that a refusal can end with. */
export const NO_CHILD_NORMS =
  'there are no norms for children: their fingers gain length faster than girth (37 and 24 % from 3 to 10 years, Ann Anat 2010;192:156-161, abstract seen), and no published table of web, crease and girth by age was found';

/** `NO_CHILD_NORMS`: one problem for all that is missing of a child's hand; none where nothing is. */
export function noChildNorms(missing: readonly string[]): readonly Problem[] {
  const [where] = missing;
  if (where === undefined) return [];
  return [{ code: 'NO_CHILD_NORMS', where, message: `${NO_CHILD_NORMS}. Measure ${missing.join(', ')}.`, kind: 'input' }];
}

function estimatedWarning({ where, digit, field, mm, spread, basis }: Estimate, unit: LengthUnit): Warning {
  const { label, howToMeasure } = DIGIT_FIELDS[field];
  const message = `${where}: ${digit} ${label} was not measured; ${formatLength(mm, unit)} (give or take ${formatLength(spread, unit)}) is estimated from ${basis}`;
  return { code: 'ESTIMATED', message, where, value: mm, next: `Measure it: ${howToMeasure}` };
}

function notEstimable({ where, digit, field, mm }: Estimate, unit: LengthUnit): Problem {
  const { label, howToMeasure, refuse } = DIGIT_FIELDS[field];
  const range = `${formatLength(refuse.from, unit)} to ${formatLength(refuse.to, unit)}`;
  const message = `${where}: ${digit} ${label} is missing, and its estimate, ${formatLength(mm, unit)}, lies outside ${range}. Measure it: ${howToMeasure}`;
  return { code: 'NOT_ESTIMABLE', where, message, kind: 'input' };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return mean(sorted.slice(Math.ceil(half) - 1, Math.floor(half) + 1));
}

/** Mean circumference at the PIP joint, women and men, mm. Greiner 1991, NATICK/TR-92/011, second-hand: means only. */
const PIP_CIRCUMFERENCE: Readonly<Record<DigitName, readonly [number, number]>> = {
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
