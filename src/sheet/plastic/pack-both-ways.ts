import { exchanged, exchangedPut, type PackPart, type Put, type Room } from './pack-box.ts';
import { fillRoom } from './pack-rows.ts';

/**
 * For parts that may lie either way, sheet by sheet: the lower part of the sheet in rows along x, the rest in columns along y, cut where the
 * sheet takes most. Null when there are more parts than this is meant for.
 */
export function packBothWays(parts: readonly PackPart[], room: Room, mostParts = 400): readonly (readonly Put[])[] | null {
  if (parts.length > mostParts) return null;
  const sheets: (readonly Put[])[] = [];
  let left = parts;
  while (left.length > 0) {
    const put = fullestSheet(left, room);
    if (put.length === 0) return null;
    sheets.push(put);
    const taken = new Set(put.map((p) => p.part));
    left = left.filter((p) => !taken.has(p.part));
  }
  return sheets;
}

export function fullestSheet(parts: readonly PackPart[], room: Room): readonly Put[] {
  const heights = [0, room.across];
  const narrowest = Math.min(...parts.map((p) => p.width));
  for (let h = narrowest; h < room.across; h += narrowest) heights.push(h);
  const size = new Map(parts.map((p) => [p.part, p.length * p.width]));
  let best: readonly Put[] = [];
  let most = 0;
  for (const height of heights) {
    const lower = fillRoom(parts, { along: room.along, across: height });
    const taken = new Set(lower.map((p) => p.part));
    const rest = parts.filter((p) => !taken.has(p.part));
    // What the rows did not use of their height belongs to the columns.
    const used = Math.max(0, ...lower.map((p) => p.y + (parts.find((q) => q.part === p.part)?.width ?? 0)));
    const upper = fillRoom(rest, exchanged({ along: room.along, across: room.across - used })).map(exchangedPut);
    const put = [...lower, ...upper.map((p) => ({ ...p, y: p.y + used }))];
    const filled = put.reduce((sum, p) => sum + (size.get(p.part) ?? 0), 0);
    if (filled > most) {
      most = filled;
      best = put;
    }
  }
  return best;
}
