import type { DigitName, Side } from '../../hand/digits.ts';

/** What the sentences of a letter are put together from. Degrees; motion in neutral-zero notation. */
export interface LetterFigures {
  readonly who: { readonly side: Side; readonly digit: DigitName; readonly diagnosis: string | null; readonly weeks: number | null };
  /** `from` is null for a case of one visit; `hours` worn a day, the mean of what was noted. */
  readonly course: { readonly from: string | null; readonly to: string; readonly weeks: number; readonly hours: number | null };
  readonly strip: {
    readonly held: readonly DigitName[];
    readonly higher: boolean;
    readonly others: readonly DigitName[];
    readonly differential: number | null;
  };
  /** `own`: the patient has a goal of their own; `other`: full flexion is the other hand's. */
  readonly goal: { readonly degrees: number; readonly own: boolean; readonly flexionFull: number; readonly other: boolean };
}
