/** Set by `npm run nightly`: everything is tried. By day a handful of telling cases stands for the rest. */
export const BY_NIGHT = process.env.KNUCKLEWRIGHT_NIGHTLY !== undefined;

/** All cases by night; by day those that are named, each of which must be one of them. */
export function tried<Case>(all: readonly Case[], byDay: (each: Case) => boolean): readonly Case[] {
  const day = all.filter(byDay);
  if (day.length === 0) throw new Error('no case is left by day');
  return BY_NIGHT ? all : day;
}

/** How often random cases are drawn for a property: the second by night. */
export function times(byDay: number, byNight: number): number {
  return BY_NIGHT ? byNight : byDay;
}
