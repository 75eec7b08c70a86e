import type { LaidSheet, LayRules, Placement, SheetPart, StockSheet } from './layout.ts';
import { type OutlineProfile, outlineProfile, ROW } from './outline-profile.ts';
import { turnsOf } from './pack-box.ts';

/** A part in all the ways it may lie. */
export interface NestPart {
  readonly part: number;
  readonly ways: readonly OutlineProfile[];
}

/** All ways of the parts with the grain kept; a half turn always keeps it. */
export function nestParts(parts: readonly SheetPart[], which: readonly number[], rules: LayRules, swapped: boolean): readonly NestPart[] {
  return which.map((part) => ({
    part,
    ways: turnsOf(rules.grain).flatMap((turned) =>
      [false, true].map((half) => outlineProfile(parts[part] as SheetPart, turned, half, rules.gap, swapped)),
    ),
  }));
}

/** How a place is judged: by the least far end, or by the least room lost before the part. */
export type Liking = 'end' | 'loss';

/** A sheet being filled from its left edge: up to where every row is taken. */
interface Filled {
  readonly front: Float64Array;
  readonly placements: Placement[];
}

interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly at: number;
  readonly way: OutlineProfile;
}

/** Millimetres are placed in hundredths, rounded up. */
const GRID = 100;

/**
 * Parts in the order given, each on the first sheet that takes it, pushed against what lies there as far as its outline lets it; only on sheets up to
 * `mostSheets`. What found no room is returned as `rest`. Positions count from the sheet's corner, x and y exchanged when `swapped`.
 */
export function packOutlines(
  parts: readonly NestPart[],
  stock: StockSheet,
  rules: LayRules,
  swapped: boolean,
  liking: Liking,
  mostSheets: number,
): { readonly sheets: readonly LaidSheet[]; readonly rest: readonly number[]; readonly work: number } {
  const [along, across] = swapped ? [stock.across, stock.along] : [stock.along, stock.across];
  const sheets: Filled[] = [];
  const rest: number[] = [];
  let work = 0;
  const lead = Math.max(0, ...parts.flatMap(({ ways }) => ways.map((way) => way.lead)));
  const rows = Math.ceil((across - 2 * rules.margin) / ROW) + 2 * lead + 1;
  for (const { part, ways } of parts) {
    let place: Place | null = null;
    for (let sheet = 0; sheet < mostSheets && !place; sheet++) {
      sheets[sheet] ??= { front: new Float64Array(rows).fill(Number.NEGATIVE_INFINITY), placements: [] };
      const found = bestPlace(sheets[sheet] as Filled, sheet, ways, along, across, rules.margin, lead, liking);
      work += found.work;
      place = found.place;
    }
    if (!place) {
      rest.push(part);
      continue;
    }
    const { sheet, row, at, way } = place;
    const { front, placements } = sheets[sheet] as Filled;
    const from = row + lead - way.lead;
    for (let k = 0; k < way.right.length; k++) front[from + k] = Math.max(front[from + k] as number, at + (way.right[k] as number));
    const y = rules.margin + row * ROW;
    placements.push({ part, ...(swapped ? { x: y, y: at } : { x: at, y }), turned: way.turned, ...(way.half ? { half: true } : {}) });
  }
  const used = sheets.filter(({ placements }) => placements.length > 0);
  return { sheets: used.map(({ placements }) => ({ stock, isRemnant: false, byOutline: true, placements })), rest, work };
}

function bestPlace(
  { front }: Filled,
  sheet: number,
  ways: readonly OutlineProfile[],
  along: number,
  across: number,
  margin: number,
  lead: number,
  liking: Liking,
): { place: Place | null; work: number } {
  let place: Place | null = null;
  let least = Number.POSITIVE_INFINITY;
  let work = 0;
  for (const way of ways) {
    const high = along - margin - way.along;
    if (high < margin) continue;
    const lastRow = Math.floor((across - 2 * margin - way.across) / ROW + 1e-9);
    const size = way.left.length;
    for (let row = 0; row <= lastRow; row++) {
      const from = row + lead - way.lead;
      // Where it is pushed to, and no farther than is still of interest.
      const most = liking === 'end' ? Math.min(high, least - way.along) : high;
      let at = margin;
      let k = 0;
      for (; k < size && at <= most; k++) at = Math.max(at, (front[from + k] as number) - (way.left[k] as number));
      work += k;
      at = Math.ceil(at * GRID - 1e-6) / GRID;
      if (at > most) continue;
      let cost = at + way.along;
      if (liking === 'loss') {
        cost = 1e-3 * cost;
        for (k = 0; k < size; k++) cost += at + (way.left[k] as number) - Math.max(margin, front[from + k] as number);
        work += size;
      }
      if (cost >= least - 1e-9) continue;
      least = cost;
      place = { sheet, row, at, way };
    }
  }
  return { place, work };
}
