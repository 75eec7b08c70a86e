import type { PackPart, Put, Room } from './pack-box.ts';

interface Free {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly along: number;
  readonly across: number;
}

/**
 * Boxes of any sizes, in the order given: each into the free rectangle that it leaves least of, which is then split by one cut from edge to edge, along
 * the side where the larger rest stays whole (Jylänki, A thousand ways to pack the bin, 2010: best area fit). Every layout can be cut with shears.
 */
export function packGuillotine(parts: readonly PackPart[], room: Room, turns: readonly boolean[]): readonly (readonly Put[])[] {
  const sheets: Put[][] = [];
  const free: Free[] = [];
  for (const part of parts) {
    let best = bestPlace(part, free, turns);
    if (!best) {
      free.push({ sheet: sheets.length, x: 0, y: 0, ...room });
      sheets.push([]);
      best = bestPlace(part, free, turns);
      if (!best) throw new RangeError(`part ${part.part} does not fit an empty sheet`);
    }
    const [place] = free.splice(best.at, 1) as [Free];
    const along = best.turned ? part.width : part.length;
    const across = best.turned ? part.length : part.width;
    sheets[place.sheet]?.push({ part: part.part, x: place.x, y: place.y, turned: best.turned });
    free.push(...split(place, along, across));
  }
  return sheets;
}

function bestPlace(
  part: PackPart,
  free: readonly Free[],
  turns: readonly boolean[],
): { readonly at: number; readonly turned: boolean } | null {
  let best: { at: number; turned: boolean } | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [at, place] of free.entries()) {
    for (const turned of turns) {
      const along = turned ? part.width : part.length;
      const across = turned ? part.length : part.width;
      if (along > place.along || across > place.across) continue;
      // Earlier sheets first, then the least rest.
      const rest = place.sheet * 1e12 + place.along * place.across - along * across;
      if (rest < least) {
        least = rest;
        best = { at, turned };
      }
    }
  }
  return best;
}

function split(place: Free, along: number, across: number): readonly Free[] {
  const right = place.along - along;
  const above = place.across - across;
  const cutAlong = right < above;
  const pieces = [
    { ...place, x: place.x + along, along: right, across: cutAlong ? across : place.across },
    { ...place, y: place.y + across, across: above, along: cutAlong ? place.along : along },
  ];
  return pieces.filter((p) => p.along > 0 && p.across > 0);
}
