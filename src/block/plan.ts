import type { DigitName } from '../hand/digits.ts';
import type { Target } from '../hand/hand.ts';
import type { Problem, Warning } from '../units/result.ts';
import type { Block } from './block.ts';
import type { Caution } from './cautions-for.ts';
import type { Need } from './deficit-kind.ts';
import type { MpAngle } from './mp-angle.ts';
import type { ScoreTerm } from './score-terms.ts';

/** One block to try, with why it stands where it stands. */
export interface Suggestion {
  readonly block: Block;
  /** degrees */
  readonly differential: number;
  /** Of 100; the sum of the terms. */
  readonly score: number;
  readonly terms: Readonly<Record<ScoreTerm, number>>;
  readonly reasons: readonly string[];
  /** mm */
  readonly flatLength: number;
  /** degrees, of the digits with plastic on their palmar side */
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
  /** What to try if it does not redirect. */
  readonly next: string;
  readonly warnings: readonly Warning[];
}

/** A block that would serve but cannot be made for this hand. */
export interface NotMakeable {
  readonly block: Block;
  readonly reasons: readonly Problem[];
}

/** The decision for one hand: what it needs and what serves, best first. */
export interface Plan {
  readonly target: Target;
  readonly need: Need;
  readonly suggestions: readonly Suggestion[];
  readonly notMakeable: readonly NotMakeable[];
  /** Only when both motions are lacking and nothing is refused. */
  readonly plate: MpAngle | null;
  readonly cautions: readonly Caution[];
  /** Why nothing is suggested although something is lacking; empty when something is. */
  readonly refusals: readonly Problem[];
  readonly warnings: readonly Warning[];
}
