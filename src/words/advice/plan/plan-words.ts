import type { NextArrangement } from '../../../block/plan.ts';
import type { Ask, PlanFigures, PlanRule, ReasonFigures, ReasonRule } from '../../../block/plan-notes.ts';

/** What the sentences of a plan need beside the figures. */
export interface PlanSpeech {
  /** A block's name as the reader knows it. */
  readonly blockName: (block: Extract<NextArrangement, { kind: 'block' }>['block']) => string;
}

/** Every sentence of the plan in one language, by its rule; degrees, mm and chances as they come. */
export interface PlanWords {
  /** Whom to ask, and how soon: a sentence. */
  readonly ask: Readonly<Record<Ask, string>>;
  readonly note: { readonly [R in PlanRule]: (figures: PlanFigures[R]) => string };
  readonly reason: { readonly [R in ReasonRule]: (figures: ReasonFigures[R]) => string };
  readonly next: {
    readonly [K in NextArrangement['kind']]: (step: Extract<NextArrangement, { kind: K }>, speech: PlanSpeech) => string;
  };
  /** One sentence of what follows when a suggestion does not redirect. */
  readonly ifNot: (steps: readonly string[]) => string;
}
