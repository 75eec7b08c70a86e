import { JOINTS, type Joint } from '../hand/target-motion.ts';
import type { TotalGrade } from '../words/record/record-figures.ts';
import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';
import type { Case, Motion, Visit } from './case.ts';

/** Normal total active motion of a finger: flexion 85 + 110 + 65, no deficit. Worked cases of total active motion in teaching material. */
export const NORMAL_TOTAL = 260;

/** A named scheme of grades by percentage, best first; a percentage of at least `from` (or above, where `above`) has the grade. */
interface GradeScheme {
  readonly name: string;
  readonly source: string;
  readonly grades: readonly { readonly grade: TotalGrade; readonly from: number; readonly above: boolean }[];
}

/** Exactly 50 % is in no grade of the scheme as it is handed down; it is counted as the lower one. */
export const ASSH_SCHEME: GradeScheme = {
  name: 'ASSH total active motion',
  source:
    "American Society for Surgery of the Hand, as handed down in teaching material (second-hand; the society's own text was not read)",
  grades: [
    { grade: 'excellent', from: 100, above: false },
    { grade: 'good', from: 75, above: true },
    { grade: 'fair', from: 50, above: true },
    { grade: 'poor', from: Number.NEGATIVE_INFINITY, above: true },
  ],
};

/** Total active motion of a finger at one visit, degrees. */
export interface TotalActiveMotion {
  readonly degrees: number;
  /** What it is a percentage of: the other hand's total where it was measured, else the normal 260. */
  readonly comparedWith: 'otherHand' | 'normal';
  readonly reference: number;
  readonly percent: number;
  readonly grade: TotalGrade;
  readonly scheme: string;
}

/**
 * (MP + PIP + DIP flexion) - (sum of the extension deficits), degrees; null where a joint is missing. A joint that goes beyond straight
 * lacks no extension and adds none (common practice, no source). Formula: worked cases in teaching material.
 */
export function totalActiveMotion(joints: Readonly<Partial<Record<Joint, Motion>>>): number | null {
  let total = 0;
  for (const joint of JOINTS) {
    const motion = joints[joint];
    if (motion === undefined) return null;
    total += motion.flexion - Math.max(0, motion.extensionDeficit);
  }
  return total;
}

/** Total active motion at a visit with its percentage and grade; null where a joint was not measured. */
export function totalAtVisit(visit: Visit, other: number | null): TotalActiveMotion | null {
  const { mp, pip, dip } = visit.goniometry;
  const degrees = totalActiveMotion({ ...(mp.active && { mp: mp.active }), pip: pip.active, ...(dip.active && { dip: dip.active }) });
  if (degrees === null) return null;
  const reference = other !== null && other > 0 ? other : NORMAL_TOTAL;
  const percent = (100 * degrees) / reference;
  return {
    degrees,
    comparedWith: reference === other ? 'otherHand' : 'normal',
    reference,
    percent,
    grade: gradeOf(percent, ASSH_SCHEME),
    scheme: ASSH_SCHEME.name,
  };
}

/** Total passive motion at a visit, in the same way; null where a joint was not moved by the examiner. */
export function totalPassiveMotion({ goniometry: { mp, pip, dip } }: Visit): number | null {
  return totalActiveMotion({
    ...(mp.passive && { mp: mp.passive }),
    ...(pip.passive && { pip: pip.passive }),
    ...(dip.passive && { dip: dip.passive }),
  });
}

/** Total active motion of the other hand: each joint's newest measurement; null where a joint was never measured. */
export function otherHandTotal(record: Pick<Case, 'visits'>): number | null {
  return totalActiveMotion(newestOtherHand(record));
}

/** The other hand's joints, each as it was measured last. */
export function newestOtherHand({ visits }: Pick<Case, 'visits'>): Readonly<Partial<Record<Joint, Motion>>> {
  return Object.assign({}, ...visits.map((visit) => visit.otherHand));
}

export function gradeOf(percent: number, scheme: GradeScheme): TotalGrade {
  return scheme.grades.find(({ from, above }) => (above ? percent > from : percent >= from))?.grade ?? 'poor';
}

/** What TAM and TPM are, what TAM is compared with, and the scheme of its grades with its source; null where no visit has a total. */
export function totalNote(record: Pick<Case, 'visits'>, words: RecordWords = RECORD_WORDS.en): string | null {
  const other = otherHandTotal(record);
  const against = record.visits.map((visit) => totalAtVisit(visit, other)).find((total) => total !== null);
  if (against === undefined) return record.visits.some((visit) => totalPassiveMotion(visit) !== null) ? words.aboutTpm : null;
  return `${words.aboutTam({ reference: against.reference, otherHand: against.comparedWith === 'otherHand' })} ${words.aboutTpm}`;
}
