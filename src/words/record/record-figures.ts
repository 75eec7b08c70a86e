import type { DigitName, Side } from '../../hand/digits.ts';

/** What the sentences of a report are put together from. Degrees, mm, ISO dates. */
export interface RecordFigures {
  readonly who: { readonly side: Side; readonly digit: DigitName };
  readonly span: { readonly visits: number; readonly first: string; readonly last: string };
  /** `last`: counted from 1. */
  readonly shown: { readonly first: number; readonly last: number; readonly of: number };
  /** Digits held apart from the others, above or below them; null where a figure was not noted. */
  readonly strip: {
    readonly held: readonly DigitName[];
    readonly higher: boolean;
    readonly others: readonly DigitName[];
    readonly differential: number | null;
    readonly length: number | null;
  };
  readonly plate: { readonly faces: 'dorsal' | 'palmar' | 'both'; readonly mpAngle: number; readonly length: number | null };
  readonly amended: {
    readonly kind: 'corrected' | 'withdrawn';
    readonly was: string;
    readonly on: string | undefined;
    readonly why: string | undefined;
  };
  readonly closed: {
    readonly date: string;
    readonly reason: 'goal' | 'plateau' | 'harm' | 'lost' | 'other';
    readonly note?: string | undefined;
  };
  /** Each as it is shown. */
  readonly option: { readonly name: string; readonly value: string; readonly unit: string; readonly usual: string };
  readonly total: {
    readonly degrees: number;
    readonly percent: number;
    readonly reference: number;
    readonly otherHand: boolean;
    /** In words. */
    readonly grade: string;
  };
}

export type TotalGrade = 'excellent' | 'good' | 'fair' | 'poor';
