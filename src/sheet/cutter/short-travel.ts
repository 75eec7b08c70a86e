import type { Point } from '../../geometry/path.ts';

/** Rounds of improvement; each round that helps shortens the way, and the order is good long before this. */
const MOST_ROUNDS = 40;

/**
 * The order in which to visit the places, as indices, so that the way of the lifted tool from (0, 0) is short: rows from below, each in the
 * direction that continues the last (to and fro), then improved by turning stretches of the way over (2-opt). Never longer than the rows.
 * Deterministic. `rowHeight` (mm): places whose heights differ by less stand in one row.
 */
export function shortTravel(places: readonly Point[], rowHeight: number): readonly number[] {
  const order = serpentine(places, rowHeight);
  const at = (k: number): Point => (k < 0 ? { x: 0, y: 0 } : (places[order[k] as number] as Point));
  const gap = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
  for (let round = 0, better = true; better && round < MOST_ROUNDS; round++) {
    better = false;
    for (let i = 0; i < order.length - 1; i++) {
      for (let j = i + 1; j < order.length; j++) {
        const after = j + 1 < order.length ? at(j + 1) : null;
        const now = gap(at(i - 1), at(i)) + (after ? gap(at(j), after) : 0);
        const turned = gap(at(i - 1), at(j)) + (after ? gap(at(i), after) : 0);
        if (turned >= now - 1e-9) continue;
        order.splice(i, j - i + 1, ...order.slice(i, j + 1).reverse());
        better = true;
      }
    }
  }
  return order;
}

function serpentine(places: readonly Point[], rowHeight: number): number[] {
  const byHeight = places.map((p, index) => ({ ...p, index })).sort((a, b) => a.y - b.y || a.x - b.x);
  const rows: (typeof byHeight)[] = [];
  for (const place of byHeight) {
    const row = rows.at(-1);
    if (row && place.y - (row[0]?.y ?? 0) < rowHeight) row.push(place);
    else rows.push([place]);
  }
  return rows.flatMap((row, k) => row.sort((a, b) => (k % 2 === 0 ? a.x - b.x : b.x - a.x)).map((place) => place.index));
}
