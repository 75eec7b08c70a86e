import type { Point } from '../geometry/path.ts';

/** A flat outline cut into triangles: its points, triangles counter-clockwise, and the sides that lie on the edge. */
export interface FlatMesh {
  readonly points: readonly Point[];
  readonly triangles: readonly (readonly [number, number, number])[];
  readonly rim: readonly (readonly [number, number])[];
}

/** Where the grid begins before the outline, in steps: a share that lays no row of it on a straight edge, where the last digit of a sine would say what is inside. */
const BEFORE = 0.62;

/**
 * Cuts a closed outline, its arcs as chords, into triangles of about `step` mm: a grid whose triangles are cut where the distance to the edge is
 * nothing (marching triangles), so that the edge is as smooth as the outline. Ones that lie apart by less than a step may melt.
 */
export function flatMesh(polygon: readonly Point[], step: number): FlatMesh {
  const xs = polygon.map((p) => p.x);
  const ys = polygon.map((p) => p.y);
  const [minX, minY] = [Math.min(...xs) - BEFORE * step, Math.min(...ys) - BEFORE * step];
  const columns = Math.ceil((Math.max(...xs) - minX) / step) + 2;
  const rows = Math.ceil((Math.max(...ys) - minY) / step) + 2;
  const inside = distances(polygon, { minX, minY, step, columns, rows });
  const points: Point[] = [];
  const triangles: (readonly [number, number, number])[] = [];
  const rim: (readonly [number, number])[] = [];
  const made = new Map<number, number>();
  const put = (key: number, point: () => Point): number => {
    const before = made.get(key);
    if (before !== undefined) return before;
    made.set(key, points.length);
    points.push(point());
    return points.length - 1;
  };
  const at = (k: number): Point => ({ x: minX + (k % columns) * step, y: minY + Math.floor(k / columns) * step });
  const corner = (k: number) => put(k, () => at(k));
  const total = columns * rows;
  /** The point of the edge on a grid side. */
  const crossing = (a: number, b: number): number => {
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    return put(total * (1 + low) + high, () => {
      const [da, db] = [inside[low] as number, inside[high] as number];
      const [p, q] = [at(low), at(high)];
      const t = da / (da - db);
      return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
    });
  };
  const cut = (corners: readonly [number, number, number]) => {
    const held = corners.map((k) => (inside[k] as number) > 0);
    const count = held.filter(Boolean).length;
    if (count === 0) return;
    if (count === 3) {
      triangles.push([corner(corners[0]), corner(corners[1]), corner(corners[2])]);
      return;
    }
    // Turned so that the one corner that differs comes first.
    const odd = held.indexOf(count === 1);
    const [a, b, c] = [corners[odd], corners[(odd + 1) % 3], corners[(odd + 2) % 3]] as [number, number, number];
    const [ab, ca] = [crossing(a, b), crossing(c, a)];
    if (count === 1) {
      triangles.push([corner(a), ab, ca]);
      rim.push([ab, ca]);
    } else {
      triangles.push([ab, corner(b), corner(c)], [ab, corner(c), ca]);
      rim.push([ca, ab]);
    }
  };
  for (let j = 0; j + 1 < rows; j++) {
    for (let i = 0; i + 1 < columns; i++) {
      const k = j * columns + i;
      cut([k, k + 1, k + columns + 1]);
      cut([k, k + columns + 1, k + columns]);
    }
  }
  return { points, triangles, rim };
}

interface Grid {
  readonly minX: number;
  readonly minY: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** Distance of each grid point to the edge, positive inside, exact within two steps of it. */
function distances(polygon: readonly Point[], { minX, minY, step, columns, rows }: Grid): Float64Array {
  const found = new Float64Array(columns * rows).fill(Number.POSITIVE_INFINITY);
  const near = 2 * step;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length] as Point;
    const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2 || 1;
    const from = { i: Math.floor((Math.min(a.x, b.x) - near - minX) / step), j: Math.floor((Math.min(a.y, b.y) - near - minY) / step) };
    const to = { i: Math.ceil((Math.max(a.x, b.x) + near - minX) / step), j: Math.ceil((Math.max(a.y, b.y) + near - minY) / step) };
    for (let j = Math.max(0, from.j); j <= Math.min(rows - 1, to.j); j++) {
      for (let k = Math.max(0, from.i); k <= Math.min(columns - 1, to.i); k++) {
        const [x, y] = [minX + k * step, minY + j * step];
        const t = Math.max(0, Math.min(1, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / square));
        const d = Math.hypot(x - a.x - t * (b.x - a.x), y - a.y - t * (b.y - a.y));
        if (d < (found[j * columns + k] as number)) found[j * columns + k] = d;
      }
    }
  }
  // Even-odd, one row at a time.
  for (let j = 0; j < rows; j++) {
    const y = minY + j * step;
    const crossings = polygon
      .flatMap((a, i) => {
        const b = polygon[(i + 1) % polygon.length] as Point;
        return a.y > y !== b.y > y ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
      })
      .sort((p, q) => p - q);
    let [k, isIn] = [0, false];
    for (let i = 0; i < columns; i++) {
      const x = minX + i * step;
      while (k < crossings.length && (crossings[k] as number) < x) {
        isIn = !isIn;
        k++;
      }
      const at = j * columns + i;
      const d = Math.min(found[at] as number, 10 * step);
      // A point on the edge itself would give triangles without an area.
      found[at] = isIn ? Math.max(d, 1e-6) : Math.min(-d, -1e-6);
    }
  }
  return found;
}
