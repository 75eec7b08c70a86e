import type { Solid } from './hand-solid.ts';
import { add, unit, type Vec } from './vec.ts';

/** Triangles with a normal at each corner; three corners a triangle. */
export interface Mesh {
  readonly points: readonly Vec[];
  readonly normals: readonly Vec[];
  readonly triangles: readonly (readonly [number, number, number])[];
}

/** Cells of a block that is skipped when the surface cannot pass through it. */
const BLOCK = 8;
/** How much nearer than it says the surface may be, by fillets. mm */
const SLACK = 4;

/**
 * The surface of a solid as triangles (surface nets: one point in each cell that the surface passes, where its edges are crossed on average).
 * Gibson, MICCAI 1998.
 * @param step size of a cell, mm
 */
export function surfaceMesh({ distance, box }: Solid, step: number): Mesh {
  const count = [0, 1, 2].map((k) => Math.ceil(((box.max[k] as number) - (box.min[k] as number)) / step) + 2) as [number, number, number];
  const [nx, ny, nz] = count;
  const at = (k: 0 | 1 | 2, i: number) => box.min[k] + (i - 0.5) * step;
  const values = new Float32Array(nx * ny * nz).fill(1e3);
  const index = (i: number, j: number, k: number) => (k * ny + j) * nx + i;
  const reach = (BLOCK * step * Math.sqrt(3)) / 2 + step + SLACK;
  const near: (readonly [number, number, number])[] = [];
  for (let k = 0; k < nz; k += BLOCK) {
    for (let j = 0; j < ny; j += BLOCK) {
      for (let i = 0; i < nx; i += BLOCK) {
        const half = BLOCK / 2;
        const d = distance(at(0, i + half), at(1, j + half), at(2, k + half));
        if (Math.abs(d) <= reach) near.push([i, j, k]);
        else if (d < 0) fillBlock(values, count, index, [i, j, k], () => -1e3);
      }
    }
  }
  for (const from of near) fillBlock(values, count, index, from, (i, j, k) => distance(at(0, i), at(1, j), at(2, k)));
  return netOf(values, count, near, at, index, distance);
}

function fillBlock(
  values: Float32Array,
  [nx, ny, nz]: readonly [number, number, number],
  index: (i: number, j: number, k: number) => number,
  [i0, j0, k0]: readonly [number, number, number],
  value: (i: number, j: number, k: number) => number,
): void {
  for (let k = k0; k < Math.min(nz, k0 + BLOCK); k++) {
    for (let j = j0; j < Math.min(ny, j0 + BLOCK); j++) {
      for (let i = i0; i < Math.min(nx, i0 + BLOCK); i++) values[index(i, j, k)] = value(i, j, k);
    }
  }
}

const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7].map((c) => [c & 1, (c >> 1) & 1, c >> 2] as const);
const EDGES = CORNERS.flatMap((_, c) => [1, 2, 4].flatMap((bit) => ((c & bit) === 0 ? [[c, c | bit] as const] : [])));

function netOf(
  values: Float32Array,
  [nx, ny, nz]: readonly [number, number, number],
  near: readonly (readonly [number, number, number])[],
  at: (k: 0 | 1 | 2, i: number) => number,
  index: (i: number, j: number, k: number) => number,
  distance: Solid['distance'],
): Mesh {
  const points: Vec[] = [];
  const cell = new Int32Array(nx * ny * nz).fill(-1);
  const corner = new Float64Array(8);
  /** Only where the surface may be. */
  const cells = (from: number, visit: (i: number, j: number, k: number) => void) => {
    for (const [bi, bj, bk] of near) {
      for (let k = Math.max(from, bk); k < Math.min(nz - 1, bk + BLOCK); k++) {
        for (let j = Math.max(from, bj); j < Math.min(ny - 1, bj + BLOCK); j++) {
          for (let i = Math.max(from, bi); i < Math.min(nx - 1, bi + BLOCK); i++) visit(i, j, k);
        }
      }
    }
  };
  cells(0, (i, j, k) => {
    let inside = 0;
    for (let c = 0; c < 8; c++) {
      const v = values[index(i + (c & 1), j + ((c >> 1) & 1), k + (c >> 2))] as number;
      corner[c] = v;
      if (v < 0) inside++;
    }
    if (inside === 0 || inside === 8) return;
    let [x, y, z, n] = [0, 0, 0, 0];
    for (const [p, q] of EDGES) {
      const [vp, vq] = [corner[p] as number, corner[q] as number];
      if (vp < 0 === vq < 0) continue;
      const t = vp / (vp - vq);
      const [cp, cq] = [CORNERS[p] as readonly number[], CORNERS[q] as readonly number[]];
      x += (cp[0] as number) + t * ((cq[0] as number) - (cp[0] as number));
      y += (cp[1] as number) + t * ((cq[1] as number) - (cp[1] as number));
      z += (cp[2] as number) + t * ((cq[2] as number) - (cp[2] as number));
      n++;
    }
    cell[index(i, j, k)] = points.length;
    points.push([at(0, i + x / n), at(1, j + y / n), at(2, k + z / n)]);
  });
  const triangles: (readonly [number, number, number])[] = [];
  const steps = [index(1, 0, 0), index(0, 1, 0), index(0, 0, 1)] as const;
  cells(1, (i, j, k) => {
    const here = index(i, j, k);
    for (const axis of [0, 1, 2] as const) {
      const inside = (values[here] as number) < 0;
      if (inside === (values[here + steps[axis]] as number) < 0) continue;
      const [u, v] = [steps[(axis + 1) % 3] as number, steps[(axis + 2) % 3] as number];
      const [a, b, c, d] = [cell[here] as number, cell[here - u] as number, cell[here - u - v] as number, cell[here - v] as number];
      if (a < 0 || b < 0 || c < 0 || d < 0) continue;
      if (inside) triangles.push([a, b, c], [a, c, d]);
      else triangles.push([a, c, b], [a, d, c]);
    }
  });
  return { ...ontoSurface(points, distance), triangles };
}

/** Over how far a slope is taken, mm: wider than a cell's irregularities, so that light falls evenly. */
const REACH = 0.9;

/** Moves each point along the slope onto the surface, where the net lies beside it; with the normal there. */
function ontoSurface(points: readonly Vec[], distance: Solid['distance']): Pick<Mesh, 'points' | 'normals'> {
  const moved: Vec[] = [];
  const normals: Vec[] = [];
  for (const point of points) {
    let p = point;
    let slope: Vec = [0, 0, 1];
    for (let k = 0; k < 2; k++) {
      const [x, y, z] = p;
      slope = [
        (distance(x + REACH, y, z) - distance(x - REACH, y, z)) / (2 * REACH),
        (distance(x, y + REACH, z) - distance(x, y - REACH, z)) / (2 * REACH),
        (distance(x, y, z + REACH) - distance(x, y, z - REACH)) / (2 * REACH),
      ];
      const square = Math.max(0.2, slope[0] ** 2 + slope[1] ** 2 + slope[2] ** 2);
      const step = Math.max(-REACH, Math.min(REACH, distance(x, y, z) / square));
      p = add(p, slope, -step);
    }
    moved.push(p);
    normals.push(unit(slope));
  }
  return { points: moved, normals };
}
