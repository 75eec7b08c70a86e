import type { DigitName } from '../hand/digits.ts';
import type { Target } from '../hand/hand.ts';
import type { Problem, Warning } from '../units/result.ts';
import type { Block } from './block.ts';
import type { Alternative, Decision } from './decide.ts';
import type { Reason } from './plan-notes.ts';
import type { ScoreTerm } from './rank-blocks.ts';

/** What comes next when the last thing did not do its work. */
export type NextArrangement =
  | { readonly kind: 'differential'; readonly from: number; readonly to: number }
  | { readonly kind: 'block'; readonly block: Block; readonly differential: number }
  | { readonly kind: 'plate'; readonly degrees: number }
  | { readonly kind: 'refer' };

/** One block to try, with why it stands where it stands. */
export interface Suggestion {
  readonly block: Block;
  /** degrees */
  readonly differential: number;
  /** Of 100; the sum of the terms. */
  readonly score: number;
  readonly terms: Readonly<Record<ScoreTerm, number>>;
  /** One for each term, in their order. */
  readonly reasons: readonly Reason[];
  /** mm */
  readonly flatLength: number;
  /** degrees, of the digits with plastic on their palmar side */
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
  /** What to try if it does not redirect, first to last, as far as the next arrangement. */
  readonly next: readonly NextArrangement[];
  readonly warnings: readonly Warning[];
}

/** A block that would serve but cannot be made for this hand. */
export interface NotMakeable {
  readonly block: Block;
  readonly reasons: readonly Problem[];
}

/** The strips that serve one motion, best first, and those that would but cannot be made. */
export interface Strips {
  readonly suggestions: readonly Suggestion[];
  readonly notMakeable: readonly NotMakeable[];
}

/** The decision for one hand: what it needs and what serves, best first. */
export interface Plan extends Omit<Decision, 'alternatives'>, Strips {
  readonly target: Target;
  /** The other plan of each motion that measuring leaves open, with its strips. */
  readonly alternatives: readonly (Alternative & Strips)[];
  /** Why nothing is suggested although something is lacking; empty when something is. In English; page and papers say the notes. */
  readonly refusals: readonly Problem[];
  readonly warnings: readonly Warning[];
}
