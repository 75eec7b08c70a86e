import { DIGITS, type DigitName } from '../hand/digits.ts';
import { DIGIT_FIELDS } from '../hand/fields.ts';
import type { Case } from './case.ts';

/** A circumference that was measured at least twice, mm. */
export interface CircumferenceChange {
  readonly digit: DigitName;
  readonly field: 'circumference' | 'pipCircumference';
  readonly label: string;
  readonly before: number;
  readonly after: number;
  /** `opening` for the hand that the case was opened with, else the ISO date of the visit. */
  readonly measured: readonly [before: string, after: string];
}

/** The last two measurements of each circumference, where the later one is of the last visit: what swelling is read from. */
export function circumferenceChanges(record: Pick<Case, 'hand' | 'visits'>): readonly CircumferenceChange[] {
  const last = record.visits.at(-1);
  if (last === undefined) return [];
  return DIGITS.flatMap((digit) =>
    (['circumference', 'pipCircumference'] as const).flatMap((field): CircumferenceChange[] => {
      const after = last.measures.digits[digit]?.[field];
      if (after === undefined) return [];
      const earlier = record.visits.slice(0, -1).findLast((visit) => visit.measures.digits[digit]?.[field] !== undefined);
      const before = earlier?.measures.digits[digit]?.[field] ?? record.hand?.digits[digit]?.[field];
      if (before === undefined) return [];
      const label = `${digit} ${DIGIT_FIELDS[field].label}`;
      return [{ digit, field, label, before, after, measured: [earlier?.date ?? 'opening', last.date] }];
    }),
  );
}
