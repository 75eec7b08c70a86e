/**
 * By day a test tries what tells the cases apart, so that the whole suite is run before each change; `npm run nightly` tries everything.
 * Nothing is asserted otherwise by day than by night: there are fewer cases.
 */
export const BY_NIGHT = process.env.KNUCKLEWRIGHT_NIGHTLY !== undefined;

/** How often a random case is drawn. */
export const times = (byDay: number, byNight: number): number => (BY_NIGHT ? byNight : byDay);

/** All of them by night; by day those that the test chooses, of which there must be one. */
export function casesOf<T>(all: readonly T[], byDay: (each: T, place: number) => boolean): readonly T[] {
  const chosen = BY_NIGHT ? all : all.filter(byDay);
  if (chosen.length === 0) throw new Error('no case is chosen by day');
  return chosen;
}
