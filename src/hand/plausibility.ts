import { formatLength, type LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import type { Problem, Warning } from '../units/result.ts';
import { type DigitName, WEBS } from './digits.ts';
import { handBreadthOf, webLevels } from './estimate-palm.ts';
import { type DigitFieldId, digitPath, digitsIn } from './fields.ts';
import type { Hand } from './hand.ts';
import type { ReadMeasures } from './read-measures.ts';
import { digitSection, digitTaper } from './section.ts';

export interface Judged {
  readonly problems: readonly Problem[];
  readonly warnings: readonly Warning[];
}

/** Twice the measuring spread of a circumference, and three times that of a width, mm: less is no order at all. */
const CIRCUMFERENCE_ORDER_SLACK = 2;
const WIDTH_ORDER_SLACK = 1.5;

/**
 * Palmar room over dorsal length in published means. Least: little finger, 32.74 (Buryanov & Kotiuk 2010) less 20 and 3 (Bugbee &
 * Botte 1993). Most: index finger, 26.4 (computed from Greiner 1991) of 39.78; 0.70 leaves room for the measuring error.
 */
const LENGTH_RATIO = { from: 0.3, to: 0.7 };

/** P5 of women to P95 of men, 2.31 to 2.49 (ANSUR II, Gordon et al. 2014), widened by the measuring error of 1 mm in breadth, 2 in circumference. */
const PALM_RATIO = { from: 2.26, to: 2.54 };

/**
 * How far a web may lie behind the foremost, in hand breadths: 22 and 30 mm, the ends of the measure's own ranges (`WEB_FIELDS`), on the mean breadth of 83.2
 * (ANSUR II, Gordon et al. 2014). The means of the web that lies farthest back are 0.159 and 0.156 (Greiner 1991, second-hand).
 */
const SETBACK_SHARE = { usual: 0.26, most: 0.36 };

/** 95 % of one rater's repeats of a held joint lie within 4 to 5 degrees: Ellis & Bruton, Clin Rehabil 2002;16:562, abstract seen. */
const GONIOMETRY_REPEAT = 5;
/** PIP motion 0 to 100 in AAOS-type tables. */
const PIP_MOTION = 100;

/** What the measurements say of each other, over whatever was read; lengths in mm, shown in `unit`. */
export function judgeMeasures(
  measures: Pick<ReadMeasures, 'digits' | 'palm' | 'target'> & Partial<Pick<ReadMeasures, 'webs'>>,
  unit: LengthUnit,
): Judged {
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  for (const digit of digitsIn(measures.digits)) {
    const judged = judgeDigit(digit, measures.digits[digit] ?? {}, unit);
    problems.push(...judged.problems);
    warnings.push(...judged.warnings);
  }
  warnings.push(
    ...orderWarnings(measures.digits, 'circumference', CIRCUMFERENCE_ORDER, CIRCUMFERENCE_ORDER_SLACK, unit),
    ...orderWarnings(measures.digits, 'width', WIDTH_ORDER, WIDTH_ORDER_SLACK, unit),
    ...targetWarnings(measures.target),
  );
  const palm = judgePalm(measures.palm, unit);
  const webs = judgeWebs(measures, unit);
  return {
    problems: [...problems, ...palm.problems, ...webs.problems],
    warnings: [...warnings, ...palm.warnings, ...webs.warnings],
  };
}

function judgeDigit(digit: DigitName, measures: Readonly<Partial<Record<DigitFieldId, number>>>, unit: LengthUnit): Judged {
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  const { width, circumference, palmarRoom, dorsalLength, pipCircumference, rootCircumference } = measures;
  if (width !== undefined && circumference !== undefined) {
    const section = digitSection(width, circumference, `digits.${digit}`, unit);
    if (section.ok) warnings.push(...section.warnings);
    else problems.push(...section.problems);
  }
  if (palmarRoom !== undefined && dorsalLength !== undefined) {
    const where = digitPath(digit, 'palmarRoom');
    const ratio = palmarRoom / dorsalLength;
    const shown = `${where}: ${digit} palmar room ${formatLength(palmarRoom, unit)}`;
    if (ratio >= 1) {
      const message = `${shown} cannot reach the dorsal length, ${formatLength(dorsalLength, unit)}: both creases lie between the MP and the PIP joint. Measure both again.`;
      problems.push({ code: 'LENGTHS_CONTRADICT', where, message, kind: 'refused' });
    } else if (ratio < LENGTH_RATIO.from || ratio > LENGTH_RATIO.to) {
      const message = `${shown} is ${plain(ratio)} of the dorsal length, ${formatLength(dorsalLength, unit)}; ${LENGTH_RATIO.from} to ${LENGTH_RATIO.to} is usual`;
      const limit = ratio < LENGTH_RATIO.from ? LENGTH_RATIO.from : LENGTH_RATIO.to;
      warnings.push({ code: 'LENGTH_RATIO_UNUSUAL', message, where, value: ratio, limit, next: 'Measure both lengths again.' });
    }
  }
  if (rootCircumference !== undefined && circumference !== undefined && palmarRoom !== undefined) {
    const taper = digitTaper({ circumference, rootCircumference, palmarRoom }, digitPath(digit, 'rootCircumference'), unit);
    if (taper.ok) warnings.push(...taper.warnings);
    else problems.push(...taper.problems);
  }
  if (pipCircumference !== undefined && circumference !== undefined && pipCircumference < circumference) {
    const where = digitPath(digit, 'pipCircumference');
    const message = `${where}: the PIP joint of the ${digit} finger, ${formatLength(pipCircumference, unit)}, is thinner than its proximal phalanx, ${formatLength(circumference, unit)}`;
    const next = 'Measure both again; swelling of the phalanx may make it so.';
    warnings.push({ code: 'PIP_THINNER', message, where, value: pipCircumference, limit: circumference, next });
  }
  return { problems, warnings };
}

interface Order {
  /** From the largest to the smallest; digits whose published means lie within a measuring error of each other share a place. */
  readonly places: readonly (readonly DigitName[])[];
  readonly words: string;
  readonly source: string;
}

/** PIP circumferences: index and long 61.2 / 61.3 and 68.4 / 69.6, ring 57.4 and 64.9, little 50.6 and 57.8 (women and men). */
const CIRCUMFERENCE_ORDER: Order = {
  places: [['index', 'long'], ['ring'], ['little']],
  words: 'index and long, ring, little',
  source: 'Greiner 1991; index over ring also in Yun et al., Arch Hand Microsurg 29(2)',
};
/** PIP breadths: index and long 19.9 / 19.3 (women), 23.0 / 22.5 (men); ring 21.4 and little 19.2 (men). */
const WIDTH_ORDER: Order = {
  places: [['index', 'long'], ['ring'], ['little']],
  words: 'index and long, ring, little',
  source: 'PIP breadths of Greiner 1991',
};

/** Each measured digit against the largest of the next place measured, so that a swapped pair gives one warning. */
function orderWarnings(
  digits: ReadMeasures['digits'],
  field: 'circumference' | 'width',
  order: Order,
  slack: number,
  unit: LengthUnit,
): Warning[] {
  const code = field === 'circumference' ? 'CIRCUMFERENCE_ORDER' : 'WIDTH_ORDER';
  const present = order.places.flatMap((place) => {
    const measured = place.flatMap((digit) => {
      const value = digits[digit]?.[field];
      return value === undefined ? [] : [{ digit, value }];
    });
    const [largest] = measured.toSorted((a, b) => b.value - a.value);
    return largest === undefined ? [] : [largest];
  });
  return present.slice(1).flatMap((smaller, i) => {
    const larger = present[i];
    if (larger === undefined || smaller.value <= larger.value + slack) return [];
    const where = digitPath(smaller.digit, field);
    const values = `${formatLength(smaller.value, unit)} against ${formatLength(larger.value, unit)}`;
    const message = `${where}: the ${smaller.digit} finger has a larger ${field} than the ${larger.digit} finger, ${values}; from the largest they are usually ${order.words} (${order.source})`;
    const next = 'Check that the two were not swapped; swelling or an old injury may make it so.';
    return [{ code, message, where, value: smaller.value, limit: larger.value + slack, next }];
  });
}

function targetWarnings(target: ReadMeasures['target']): Warning[] {
  const warnings: Warning[] = [];
  for (const motion of ['Extension', 'Flexion'] as const) {
    const active = target[`pip${motion}Deficit`];
    const passive = target[`pip${motion}DeficitPassive`];
    if (active === undefined || passive === undefined || passive <= active + GONIOMETRY_REPEAT) continue;
    const where = `target.pip${motion}DeficitPassive`;
    const message = `${where}: the passive deficit, ${plain(passive)} degrees, is larger than the active one, ${plain(active)} degrees, by more than measuring differs (${GONIOMETRY_REPEAT} degrees)`;
    warnings.push({
      code: 'PASSIVE_EXCEEDS_ACTIVE',
      message,
      where,
      value: passive,
      limit: active + GONIOMETRY_REPEAT,
      next: 'Check that the two were not swapped.',
    });
  }
  const { pipExtensionDeficit: extension, pipFlexionDeficit: flexion } = target;
  if (extension !== undefined && flexion !== undefined && extension + flexion > PIP_MOTION) {
    const message = `target: the two deficits together, ${plain(extension + flexion)} degrees, leave no PIP motion of the usual ${PIP_MOTION}`;
    const next = 'Check that each is a deficit, not the angle reached.';
    warnings.push({ code: 'NO_MOTION_LEFT', message, where: 'target', value: extension + flexion, limit: PIP_MOTION, next });
  }
  return warnings;
}

/** The palm's section is a stadium, whose perimeter lies between 2 and pi breadths. */
function judgePalm({ handBreadth, handCircumference }: ReadMeasures['palm'], unit: LengthUnit): Judged {
  if (handBreadth === undefined || handCircumference === undefined) return { problems: [], warnings: [] };
  const where = 'handCircumference';
  const ratio = handCircumference / handBreadth;
  const shown = `${where}: hand circumference ${formatLength(handCircumference, unit)} is ${plain(ratio)} times the breadth, ${formatLength(handBreadth, unit)}`;
  if (ratio <= 2 || ratio >= Math.PI) {
    const message = `${shown}; it must be more than 2 and less than ${plain(Math.PI)} times. Measure both again.`;
    return { problems: [{ code: 'PALM_IMPOSSIBLE', where, message, kind: 'refused' }], warnings: [] };
  }
  if (ratio >= PALM_RATIO.from && ratio <= PALM_RATIO.to) return { problems: [], warnings: [] };
  const limit = ratio < PALM_RATIO.from ? PALM_RATIO.from : PALM_RATIO.to;
  const message = `${shown}; ${PALM_RATIO.from} to ${PALM_RATIO.to} is usual (ANSUR II)`;
  return {
    problems: [],
    warnings: [{ code: 'PALM_RATIO_UNUSUAL', message, where, value: ratio, limit, next: 'Measure both again, without the thumb.' }],
  };
}

/** Each measured web against the foremost one, by the size of the hand; what is estimated always lies near the means. */
function judgeWebs(
  { digits, palm, webs }: Pick<ReadMeasures, 'digits' | 'palm'> & Partial<Pick<ReadMeasures, 'webs'>>,
  unit: LengthUnit,
): Judged {
  const round = digitsIn(digits).filter((digit) => digits[digit]?.circumference !== undefined);
  const hand = {
    digits: Object.fromEntries(round.map((digit) => [digit, digits[digit]])) as Hand['digits'],
    palm,
    ...(webs ? { webs } : {}),
  };
  const isSized = palm.handBreadth !== undefined || palm.handCircumference !== undefined || round.length > 0;
  if (!isSized) return { problems: [], warnings: [] };
  const breadth = handBreadthOf(hand);
  const { level } = webLevels(hand);
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  for (const web of WEBS.filter((w) => webs?.webSetback?.[w] !== undefined)) {
    const share = -level[web] / breadth;
    if (share <= SETBACK_SHARE.usual) continue;
    const where = `webSetback.${web}`;
    const of = `${formatLength(breadth, unit)}${palm.handBreadth === undefined ? ', estimated' : ''}`;
    const shown = `${where}: this web lies ${formatLength(-level[web], unit)} behind the foremost, ${plain(share, 3)} of the hand breadth (${of})`;
    const limit = SETBACK_SHARE.usual * breadth;
    const next = `Measure the web setbacks again, fingers straight and together, ruler along the long finger${palm.handBreadth === undefined ? '; measure handBreadth too' : ''}.`;
    if (share > SETBACK_SHARE.most) {
      const most = SETBACK_SHARE.most * breadth;
      const message = `${shown}; it must be at most ${SETBACK_SHARE.most} of it, ${formatLength(most, unit)}. ${next}`;
      problems.push({ code: 'SETBACK_CONTRADICTS', where, message, kind: 'refused', limit: most });
    } else {
      const message = `${shown}; up to ${SETBACK_SHARE.usual} of it, ${formatLength(limit, unit)}, is usual`;
      warnings.push({ code: 'SETBACK_UNUSUAL', message, where, value: -level[web], limit, next });
    }
  }
  return { problems, warnings };
}
