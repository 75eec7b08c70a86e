import type * as fc from 'fast-check';

/** A way into the program for what others wrote, and how to try it. */
export interface Target<Recipe = unknown> {
  readonly name: string;
  /** What the target promises, in words for the list. */
  readonly holds: string;
  /** Small, printable recipes of hostile inputs: models, damages of valid files, bombs by name. */
  readonly recipes: fc.Arbitrary<Recipe>;
  /** Makes the input, feeds it, and throws where something that must hold does not. */
  feed(recipe: Recipe): void | Promise<void>;
}

/** Gives up a target's own recipe type, so that targets of every kind stand in one list. */
export function target<Recipe>(own: Target<Recipe>): Target {
  return { ...own, feed: (recipe) => own.feed(recipe as Recipe) };
}
