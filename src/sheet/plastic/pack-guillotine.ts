import type { PackPart, Put, Room } from './pack-box.ts';

interface Free {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly along: number;
  readonly across: number;
}

/** What is left of a free rectangle along and across when a box is put into its corner. */
type Rest = readonly [along: number, across: number];

/** Into which free rectangle a box goes: the one with the least of this (Jylänki, A thousand ways to pack the bin, 2010, guillotine placing rules). */
const PLACINGS = {
  area: ([along, across]: Rest, box: Rest) => (along + box[0]) * (across + box[1]) - box[0] * box[1],
  shortSide: ([along, across]: Rest) => Math.min(along, across),
  longSide: ([along, across]: Rest) => Math.max(along, across),
  worstArea: ([along, across]: Rest, box: Rest) => -((along + box[0]) * (across + box[1]) - box[0] * box[1]),
};
/** Whether the rest above the box reaches over the whole rectangle, else the rest beside it (Jylänki, guillotine splitting rules). */
const SPLITTINGS = {
  shorterRest: ([along, across]: Rest) => along < across,
  longerRest: ([along, across]: Rest) => along >= across,
  smallerArea: ([along, across]: Rest, box: Rest) => along * box[1] > across * box[0],
  largerArea: ([along, across]: Rest, box: Rest) => along * box[1] <= across * box[0],
  shorterSide: ([along, across]: Rest, box: Rest) => along + box[0] <= across + box[1],
  longerSide: ([along, across]: Rest, box: Rest) => along + box[0] > across + box[1],
};

export interface PackRule {
  readonly placing: keyof typeof PLACINGS;
  readonly splitting: keyof typeof SPLITTINGS;
}

/** Every placing with every splitting, the usual first. */
export const PACK_RULES: readonly PackRule[] = (Object.keys(PLACINGS) as PackRule['placing'][]).flatMap((placing) =>
  (Object.keys(SPLITTINGS) as PackRule['splitting'][]).map((splitting) => ({ placing, splitting })),
);

/**
 * Boxes of any sizes, in the order given: each into the free rectangle that the placing rule likes best, which is then split by one cut from edge to
 * edge, as the splitting rule says. Every layout can be cut with shears.
 */
export function packGuillotine(
  parts: readonly PackPart[],
  room: Room,
  turns: readonly boolean[],
  { placing, splitting }: PackRule,
): readonly (readonly Put[])[] {
  const sheets: Put[][] = [];
  const free: Free[] = [];
  for (const part of parts) {
    let best = bestPlace(part, free, turns, PLACINGS[placing]);
    if (!best) {
      free.push({ sheet: sheets.length, x: 0, y: 0, ...room });
      sheets.push([]);
      best = bestPlace(part, free, turns, PLACINGS[placing]);
      if (!best) throw new RangeError(`part ${part.part} does not fit an empty sheet`);
    }
    const [place] = free.splice(best.at, 1) as [Free];
    const along = best.turned ? part.width : part.length;
    const across = best.turned ? part.length : part.width;
    sheets[place.sheet]?.push({ part: part.part, x: place.x, y: place.y, turned: best.turned });
    free.push(...split(place, along, across, SPLITTINGS[splitting]));
  }
  return sheets;
}

function bestPlace(
  part: PackPart,
  free: readonly Free[],
  turns: readonly boolean[],
  dislike: (rest: Rest, box: Rest) => number,
): { readonly at: number; readonly turned: boolean } | null {
  let best: { at: number; turned: boolean } | null = null;
  let least = Number.POSITIVE_INFINITY;
  let sheet = Number.POSITIVE_INFINITY;
  for (const [at, place] of free.entries()) {
    for (const turned of turns) {
      const along = turned ? part.width : part.length;
      const across = turned ? part.length : part.width;
      if (along > place.along || across > place.across) continue;
      // Earlier sheets first.
      if (place.sheet > sheet) continue;
      const rest = dislike([place.along - along, place.across - across], [along, across]);
      if (place.sheet < sheet || rest < least) {
        least = rest;
        sheet = place.sheet;
        best = { at, turned };
      }
    }
  }
  return best;
}

function split(place: Free, along: number, across: number, isAboveWhole: (rest: Rest, box: Rest) => boolean): readonly Free[] {
  const right = place.along - along;
  const above = place.across - across;
  const cutAlong = isAboveWhole([right, above], [along, across]);
  const pieces = [
    { ...place, x: place.x + along, along: right, across: cutAlong ? across : place.across },
    { ...place, y: place.y + across, across: above, along: cutAlong ? place.along : along },
  ];
  return pieces.filter((p) => p.along > 0 && p.across > 0);
}
