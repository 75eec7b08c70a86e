import type { Side } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import type { DashPattern } from './dashes.ts';
import type { Drawn } from './marks.ts';
import type { PlateFigures } from './plate/plate-report.ts';
import type { StripFigures } from './strip/strip-report.ts';

/** One row of a cut list: a distance in mm from the starting end, and what stands there. */
export interface CutListRow {
  readonly at: number;
  readonly title: string;
  /** Levels of the proximal and the distal edge there, mm, where they are not straight. */
  readonly edges?: readonly [number, number];
}

/** One piece as it can be cut with a ruler alone; mm. */
export interface CutList {
  readonly title: string;
  readonly length: number;
  readonly width: number;
  /** Where `at` is counted from, in words. */
  readonly from: string;
  readonly rows: readonly CutListRow[];
  /** What the rows do not say: how the outline departs from a rectangle. */
  readonly remarks: readonly string[];
}

/** A line of the drawing and what it means. */
export interface LegendRow {
  readonly dashes: DashPattern;
  readonly layer: 'CUT' | 'MARK';
  readonly title: string;
}

/** What a pattern was made from, for the pictures and words that go with it. */
export type MadeDevice =
  | { readonly kind: 'strip'; readonly figures: StripFigures; readonly hand: Hand }
  | { readonly kind: 'plate'; readonly figures: PlateFigures; readonly hand: Hand };

/**
 * All that a person needs beside the outline to make the thing and to judge it: words and drawings, free of any page. Each kind of
 * pattern fills it; the printed sheet lays it out. Paper gauges (an angle to hold against a joint) go into `gauges`, at 1:1.
 */
export interface MakingNotes {
  /** Case code: the one thing that tells whose it is. */
  readonly code: string;
  readonly side: Side;
  readonly block: string;
  readonly invented: boolean;
  readonly facts: readonly string[];
  readonly legend: readonly LegendRow[];
  /** How it lies on the hand; mm at 1:1, may be shown larger. */
  readonly view: { readonly heading: string; readonly caption: string; readonly drawn: Drawn } | null;
  readonly cutLists: readonly CutList[];
  readonly gauges: readonly { readonly title: string; readonly drawn: Drawn }[];
  readonly steps: readonly string[];
  /** What is left to be said of the steps where they are shown in pictures; null: all of them. */
  readonly besidePictures: readonly string[] | null;
  readonly checks: readonly string[];
  readonly cautions: readonly string[];
  readonly made: MadeDevice;
}
