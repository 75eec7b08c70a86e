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
  let best = 0;
  for (const u of alongScales) {
    for (const v of acrossScales) {
      let sum = 0;
      for (const { part, count } of kinds.values()) {
        const ways = turns.flatMap((turned) => {
          const [along, across] = turned ? [part.width, part.length] : [part.length, part.width];
          return along <= room.along && across <= room.across ? [u(along) * v(across)] : [];
        });
        sum += count * Math.min(...ways);
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
