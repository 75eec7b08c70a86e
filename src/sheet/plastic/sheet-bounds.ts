import { type Scale, scalesFor } from '../bars/bar-bounds.ts';
import type { PackPart, Room } from './pack-box.ts';

/** Scales by length at most; the bound stays valid with fewer. */
const MOST_SCALES = 45;
const ROUNDING = 1e-7;

/**
 * Sheets that all layouts need at least, whatever their cuts: products of dual feasible functions of both sides (Fekete & Schepers, Math Methods Oper
 * Res 2004;60:311-329). A part that may be turned counts with its smaller product.
 */
export function sheetsAtLeast(parts: readonly PackPart[], room: Room, turns: readonly boolean[]): number {
  const kinds = new Map<string, { part: PackPart; count: number }>();
  for (const part of parts) {
    const key = `${part.length} ${part.width}`;
    const kind = kinds.get(key);
    if (kind) kind.count++;
    else kinds.set(key, { part, count: 1 });
  }
  const sides = parts.flatMap((p) => turns.map((turned) => (turned ? [p.width, p.length] : [p.length, p.width]) as [number, number]));
  const alongScales = fewer(
    scalesFor(
      sides.map(([along]) => along).filter((s) => s <= room.along),
      room.along,
    ),
  );
  const acrossScales = fewer(
    scalesFor(
      sides.map(([, across]) => across).filter((s) => s <= room.across),
      room.across,
    ),
  );
  const all = [...kinds.values()];
  // For each way to lie its share under every scale, once: a part that does not lie so counts as much as can be.
  const ways = turns.map((turned) => {
    const lying = all.map(({ part }) => (turned ? ([part.width, part.length] as const) : ([part.length, part.width] as const)));
    const share = (scales: readonly Scale[], side: 0 | 1) =>
      scales.map((scale) =>
        Float64Array.from(lying, (sides) =>
          sides[0] <= room.along && sides[1] <= room.across ? scale(sides[side]) : Number.POSITIVE_INFINITY,
        ),
      );
    return { along: share(alongScales, 0), across: share(acrossScales, 1) };
  });
  const counts = Float64Array.from(all, ({ count }) => count);
  let best = 0;
  for (let u = 0; u < alongScales.length; u++) {
    for (let v = 0; v < acrossScales.length; v++) {
      const sides = ways.map(({ along, across }) => [along[u], across[v]] as [Float64Array, Float64Array]);
      let sum = 0;
      for (let k = 0; k < counts.length; k++) {
        let least = Number.POSITIVE_INFINITY;
        for (const [along, across] of sides) least = Math.min(least, (along[k] as number) * (across[k] as number));
        sum += (counts[k] as number) * least;
      }
      best = Math.max(best, Math.ceil(sum - ROUNDING));
    }
  }
  return best;
}

function fewer(scales: readonly Scale[]): readonly Scale[] {
  if (scales.length <= MOST_SCALES) return scales;
  return Array.from({ length: MOST_SCALES }, (_, i) => scales[Math.floor((i * scales.length) / MOST_SCALES)] as Scale);
}
