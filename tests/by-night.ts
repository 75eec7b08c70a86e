/** Set by `npm run nightly`: everything is tried. By day a handful of telling cases stands for the rest. */
export const BY_NIGHT = process.env.KNUCKLEWRIGHT_NIGHTLY !== undefined;

/** All cases by night; by day those that are named, each of which must be one of them. */
export function tried<Case>(all: readonly Case[], byDay: (each: Case) => boolean): readonly Case[] {
  const day = all.filter(byDay);
  if (day.length === 0) throw new Error('no case is left by day');
  return BY_NIGHT ? all : day;
}

/** Every one with every other by night; by day every second pair, so that each value of both is there. `shift` 1 gives the other half. */
export function pairs<A, B>(some: readonly A[], others: readonly B[], shift: 0 | 1 = 0): readonly (readonly [A, B])[] {
  const all = some.flatMap((a, i) => others.map((b, k) => ({ pair: [a, b] as const, byDay: (i + k) % 2 === shift })));
  return tried(all, ({ byDay }) => byDay).map(({ pair }) => pair);
}

/** How often random cases are drawn for a property: the second by night. */
export function times(byDay: number, byNight: number): number {
  return BY_NIGHT ? byNight : byDay;
}
