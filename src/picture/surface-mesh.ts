import type { Solid } from './hand-solid.ts';
import { add, unit, type Vec } from './vec.ts';

/** Triangles with a normal at each corner; three corners a triangle. */
export interface Mesh {
  readonly points: readonly Vec[];
  readonly normals: readonly Vec[];
  readonly triangles: readonly (readonly [number, number, number])[];
}

/** Cells of a block that is skipped when the surface cannot pass through it: halved until two are left. */
const BLOCK = 8;
const LEAST_BLOCK = 2;
/** How much nearer than it says the surface may be, where rods change from end to end. mm */
const SLACK = 1;

/**
 * The surface of a solid as triangles (surface nets: one point in each cell that the surface passes, where its edges are crossed on average).
 * Gibson, MICCAI 1998.
 * @param step size of a cell, mm
 */
export function surfaceMesh({ distance, box }: Solid, step: number): Mesh {
  const count = [0, 1, 2].map((k) => Math.ceil(((box.max[k] as number) - (box.min[k] as number)) / step) + 2) as [number, number, number];
  const [nx, ny, nz] = count;
  const at = (k: 0 | 1 | 2, i: number) => box.min[k] + (i - 0.5) * step;
  const near: (readonly [number, number, number])[] = [];
  const search = (i: number, j: number, k: number, size: number): void => {
    if (i >= nx || j >= ny || k >= nz) return;
    const half = size / 2;
    // A block's cells end at the corners that the next block begins with.
    const reach = size * step * (Math.sqrt(3) / 2) + SLACK;
    if (Math.abs(distance(at(0, i + half), at(1, j + half), at(2, k + half))) > reach) return;
    if (size === LEAST_BLOCK) {
      near.push([i, j, k]);
      return;
    }
    for (const dk of [0, half]) for (const dj of [0, half]) for (const di of [0, half]) search(i + di, j + dj, k + dk, half);
  };
  for (let k = 0; k < nz; k += BLOCK) for (let j = 0; j < ny; j += BLOCK) for (let i = 0; i < nx; i += BLOCK) search(i, j, k, BLOCK);
  const values = new Float32Array(nx * ny * nz).fill(Number.NaN);
  for (const [i0, j0, k0] of near) {
    for (let k = k0; k <= Math.min(nz - 1, k0 + LEAST_BLOCK); k++) {
      for (let j = j0; j <= Math.min(ny - 1, j0 + LEAST_BLOCK); j++) {
        for (let i = i0; i <= Math.min(nx - 1, i0 + LEAST_BLOCK); i++) {
          const here = (k * ny + j) * nx + i;
          if (Number.isNaN(values[here])) values[here] = distance(at(0, i), at(1, j), at(2, k));
        }
      }
    }
  }
  return netOf(values, count, near, at, distance);
}

function netOf(
  values: Float32Array,
  [nx, ny, nz]: readonly [number, number, number],
  near: readonly (readonly [number, number, number])[],
  at: (k: 0 | 1 | 2, i: number) => number,
  distance: Solid['distance'],
): Mesh {
  const points: Vec[] = [];
  const crossed: (readonly [i: number, j: number, k: number])[] = [];
  const cell = new Int32Array(nx * ny * nz).fill(-1);
  const steps = [1, nx, nx * ny] as const;
  // Corners of a cell, one bit an axis.
  const offset = Int32Array.from({ length: 8 }, (_, c) => (c & 1) * steps[0] + ((c >> 1) & 1) * steps[1] + (c >> 2) * steps[2]);
  const corner = new Float64Array(8);
  for (const [i0, j0, k0] of near) {
    for (let k = k0; k < Math.min(nz - 1, k0 + LEAST_BLOCK); k++) {
      for (let j = j0; j < Math.min(ny - 1, j0 + LEAST_BLOCK); j++) {
        for (let i = i0; i < Math.min(nx - 1, i0 + LEAST_BLOCK); i++) {
          const here = (k * ny + j) * nx + i;
          let inside = 0;
          for (let c = 0; c < 8; c++) {
            const v = values[here + (offset[c] as number)] as number;
            corner[c] = v;
            if (v < 0) inside++;
          }
          if (inside === 0 || inside === 8) continue;
          let [x, y, z, n] = [0, 0, 0, 0];
          for (let axis = 0; axis < 3; axis++) {
            const bit = 1 << axis;
            for (let p = 0; p < 8; p++) {
              if ((p & bit) !== 0) continue;
              const vp = corner[p] as number;
              const vq = corner[p | bit] as number;
              if (vp < 0 === vq < 0) continue;
              const t = vp / (vp - vq);
              x += axis === 0 ? t : p & 1;
              y += axis === 1 ? t : (p >> 1) & 1;
              z += axis === 2 ? t : p >> 2;
              n++;
            }
          }
          cell[here] = points.length;
          points.push([at(0, i + x / n), at(1, j + y / n), at(2, k + z / n)]);
          crossed.push([i, j, k]);
        }
      }
    }
  }
  const triangles: (readonly [number, number, number])[] = [];
  for (const [i, j, k] of crossed) {
    if (i === 0 || j === 0 || k === 0) continue;
    const here = (k * ny + j) * nx + i;
    for (let axis = 0; axis < 3; axis++) {
      const inside = (values[here] as number) < 0;
      if (inside === (values[here + (steps[axis] as number)] as number) < 0) continue;
      const u = steps[(axis + 1) % 3] as number;
      const v = steps[(axis + 2) % 3] as number;
      const a = cell[here] as number;
      const b = cell[here - u] as number;
      const c = cell[here - u - v] as number;
      const d = cell[here - v] as number;
      if (b < 0 || c < 0 || d < 0) continue;
      if (inside) triangles.push([a, b, c], [a, c, d]);
      else triangles.push([a, c, b], [a, d, c]);
    }
  }
  return { ...ontoSurface(points, distance), triangles };
}

/** Over how far a slope is taken, mm: wider than a cell's irregularities, so that light falls evenly. */
const REACH = 0.9;

/** Moves each point along the slope onto the surface, where the net lies beside it; with the normal there. */
function ontoSurface(points: readonly Vec[], distance: Solid['distance']): Pick<Mesh, 'points' | 'normals'> {
  const moved: Vec[] = [];
  const normals: Vec[] = [];
  for (const p of points) {
    const [x, y, z] = p;
    // The slope from the corners of a tetrahedron, whose mean is the distance in its middle.
    const a = distance(x + REACH, y + REACH, z + REACH);
    const b = distance(x + REACH, y - REACH, z - REACH);
    const c = distance(x - REACH, y + REACH, z - REACH);
    const d = distance(x - REACH, y - REACH, z + REACH);
    const slope: Vec = [(a + b - c - d) / (4 * REACH), (a - b + c - d) / (4 * REACH), (a - b - c + d) / (4 * REACH)];
    const square = Math.max(0.2, slope[0] ** 2 + slope[1] ** 2 + slope[2] ** 2);
    moved.push(add(p, slope, -Math.max(-REACH, Math.min(REACH, (a + b + c + d) / 4 / square))));
    normals.push(unit(slope));
  }
  return { points: moved, normals };
}
