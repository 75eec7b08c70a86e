import type { Block } from './block.ts';
import { targetEffect } from './candidate-blocks.ts';
import { DIFFERENTIAL_STEP, SURVEYED_DIFFERENTIAL } from './figures.ts';
import type { NextArrangement, Plan } from './plan.ts';

export type { NextArrangement };

/** Something that was made, in the order of making. */
export type Tried =
  | { readonly kind: 'strip'; readonly block: Pick<Block, 'id' | 'places'>; readonly differential: number }
  | { readonly kind: 'plate'; readonly degrees: number };

/**
 * The next step of a plan after what was tried: once a larger differential, then the next block at that differential, never one that holds the
 * target's MP joint less than the last; when no block is left, on to the largest differential in surveyed use; then the plan's other device;
 * then back to the referrer. Common practice, no source.
 * @param tried first to last; empty gives the plan's first device
 */
export function nextArrangement(
  plan: Pick<Plan, 'target' | 'order' | 'stripNeed' | 'suggestions' | 'plate'>,
  tried: readonly Tried[],
): NextArrangement {
  const last = tried.at(-1);
  if (last?.kind === 'strip') {
    const onward = nextStrip(plan, tried, last);
    if (onward) return onward;
  }
  for (const device of plan.order) {
    if (tried.some(({ kind }) => kind === device)) continue;
    const [first] = plan.suggestions;
    if (device === 'strip' && first) return { kind: 'block', block: first.block, differential: first.differential };
    if (device === 'plate' && plan.plate) return { kind: 'plate', degrees: plan.plate.degrees };
  }
  return { kind: 'refer' };
}

/** All that follows what was tried, as far as the next thing that is made anew: larger differentials of the strip in use come before it. */
export function nextArrangements(plan: Parameters<typeof nextArrangement>[0], tried: readonly Tried[]): readonly NextArrangement[] {
  const next = nextArrangement(plan, tried);
  const last = tried.at(-1);
  if (next.kind !== 'differential' || last?.kind !== 'strip') return [next];
  return [next, ...nextArrangements(plan, [...tried, { ...last, differential: next.to }])];
}

function nextStrip(
  { target, stripNeed, suggestions }: Pick<Plan, 'target' | 'stripNeed' | 'suggestions'>,
  tried: readonly Tried[],
  last: Extract<Tried, { kind: 'strip' }>,
): NextArrangement | null {
  if (stripNeed === null) return null;
  const { differential } = last;
  const strips = tried.filter((t) => t.kind === 'strip');
  const larger = Math.min(SURVEYED_DIFFERENTIAL.high, differential + DIFFERENTIAL_STEP);
  const raised: NextArrangement | null = larger > differential ? { kind: 'differential', from: differential, to: larger } : null;
  // A remake for size is not another try.
  const isFirstTry = new Set(strips.filter((t) => t.block.id === last.block.id).map((t) => t.differential)).size === 1;
  if (isFirstTry && raised) return raised;
  const holdOf = (block: Pick<Block, 'places'>) => targetEffect(block, target.digit, stripNeed).others;
  const next = suggestions.find(({ block }) => !strips.some((t) => t.block.id === block.id) && holdOf(block) >= holdOf(last.block));
  return next ? { kind: 'block', block: next.block, differential } : raised;
}
