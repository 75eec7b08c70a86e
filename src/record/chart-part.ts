import type { Case, Made, Visit } from './case.ts';
import { madeInOrder } from './made-text.ts';

/** First and last visit of a picture, counted from 0. */
export interface ShownVisits {
  readonly first: number;
  readonly last: number;
}

/** The visits of one picture of a case, with what was made at them or is still worn from before. */
export interface ChartPart {
  readonly visits: readonly Visit[];
  /** `visit` counts within the part; null: made before its first visit and not replaced until then. */
  readonly made: readonly PartMade[];
}

export interface PartMade {
  readonly letter: string;
  readonly made: Made;
  readonly visit: number | null;
  /** ISO date on which it was made. */
  readonly date: string;
}

/** Letters are those of the whole case, so that one thing has one name in every picture. */
export function chartPart({ visits }: Pick<Case, 'visits'>, { first, last }: ShownVisits): ChartPart {
  const all = madeInOrder(visits);
  const carried = all.findLast(({ visit }) => visit < first);
  const shown = all.filter(({ visit }) => visit >= first && visit <= last);
  // What is made at the first visit shown takes the place of what was worn until then.
  const before = carried !== undefined && shown[0]?.visit !== first ? [carried] : [];
  const made = [...before, ...shown].map(
    ({ letter, visit, made: one }): PartMade => ({
      letter,
      made: one,
      visit: visit < first ? null : visit - first,
      date: visits[visit]?.date ?? '',
    }),
  );
  return { visits: visits.slice(first, last + 1), made };
}

/** Most visits in one picture on paper: at the narrowest distance they still give letters of 1.4 mm across A4. */
const MOST_SHOWN = 8;

/** A long case in pictures of about equal length; each begins with the last visit of the one before, so that no change is lost. */
export function chartParts(count: number, most: number = MOST_SHOWN): readonly ShownVisits[] {
  const pictures = Math.max(1, Math.ceil((count - 1) / (most - 1)));
  const at = (k: number) => Math.round(((count - 1) * k) / pictures);
  return Array.from({ length: pictures }, (_, k) => ({ first: at(k), last: at(k + 1) }));
}
