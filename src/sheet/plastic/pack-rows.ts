import type { CutBars, CutEffort } from '../bars/cut-bars.ts';
import { fillBar, kindsOf } from '../bars/fill-bar.ts';
import type { PackPart, Put, Room } from './pack-box.ts';

/** Parts of one width side by side; all lie along x. */
interface Row {
  readonly height: number;
  readonly filled: number;
  readonly parts: readonly PackPart[];
}

/** `cutBars`, or one that proves more. */
export type BarCutter = (lengths: readonly number[], capacity: number, effort: CutEffort) => CutBars;

export interface PackedRows {
  /** One list for each sheet. */
  readonly sheets: readonly (readonly Put[])[];
  /** By width: no fewer rows can hold the parts of that width, proven. */
  readonly rowsAtLeast: ReadonlyMap<number, number>;
}

/**
 * Parts along x in rows of one width each, rows on sheets: bar cutting twice. For parts of one width no layout of parts lying that way needs fewer
 * sheets than the fewest rows do: lines one width apart across the sheet meet every part exactly once, and what one line meets lies side by side.
 */
export function packRows(parts: readonly PackPart[], room: Room, effort: CutEffort, cutter: BarCutter): PackedRows {
  const rows: Row[] = [];
  const rowsAtLeast = new Map<number, number>();
  for (const [width, same] of byNumber(parts, (p) => p.width)) {
    const cut = cutter(
      same.map((p) => p.length),
      room.along,
      effort,
    );
    rowsAtLeast.set(width, cut.atLeast);
    const waiting = byNumber(same, (p) => p.length);
    for (const bar of cut.bars) {
      const inRow = bar.toSorted((a, b) => b - a).map((length) => waiting.get(length)?.shift() as PackPart);
      rows.push({ height: width, filled: bar.reduce((sum, length) => sum + length, 0), parts: inRow });
    }
  }
  // Full rows first, so that what is left over comes together on the last sheet.
  rows.sort((a, b) => b.height - a.height || b.filled - a.filled);
  const stacked = cutter(
    rows.map((row) => row.height),
    room.across,
    effort,
  ).bars;
  const waiting = byNumber(rows, (row) => row.height);
  const sheets = stacked
    .toSorted((a, b) => total(b) - total(a))
    .map((heights) => putRows(heights.toSorted((a, b) => b - a).map((height) => waiting.get(height)?.shift() as Row)));
  return { sheets, rowsAtLeast };
}

/** As many parts as the greedy fill finds into one room, row by row, each row of the width that fills it best; for remnants. */
export function fillRoom(parts: readonly PackPart[], room: Room): readonly Put[] {
  let left = parts.filter((p) => p.length <= room.along && p.width <= room.across);
  const rows: Row[] = [];
  let height = room.across;
  for (;;) {
    let best: Row | null = null;
    for (const [width, same] of byNumber(left, (p) => p.width)) {
      if (width > height) continue;
      const row = fullestRow(same, width, room.along);
      if (!best || row.filled * row.height > best.filled * best.height) best = row;
    }
    if (!best) return putRows(rows);
    rows.push(best);
    height -= best.height;
    const taken = new Set(best.parts.map((p) => p.part));
    left = left.filter((p) => !taken.has(p.part));
  }
}

export function fullestRow(same: readonly PackPart[], width: number, along: number): Row {
  const kinds = kindsOf(same.map((p) => p.length));
  const chosen = fillBar(kinds, along);
  const waiting = byNumber(same, (p) => p.length);
  const inRow = chosen.flatMap((count, i) => (waiting.get(kinds.lengths[i] as number) ?? []).slice(0, count));
  return { height: width, filled: inRow.reduce((sum, p) => sum + p.length, 0), parts: inRow };
}

function putRows(rows: readonly Row[]): readonly Put[] {
  let y = 0;
  return rows.flatMap((row) => {
    let x = 0;
    const put = row.parts.map((p): Put => {
      const at = { part: p.part, x, y, turned: false };
      x += p.length;
      return at;
    });
    y += row.height;
    return put;
  });
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, n) => sum + n, 0);
}

/** Items by a number, in the order of the list. */
function byNumber<T>(items: readonly T[], numberOf: (item: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const group = groups.get(numberOf(item));
    if (group) group.push(item);
    else groups.set(numberOf(item), [item]);
  }
  return groups;
}
