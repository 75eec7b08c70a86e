import type { Mesh } from './surface-mesh.ts';
import type { Vec } from './vec.ts';

/** From space to the screen: x to the right, y up, z toward the viewer; mm. */
export type Projection = (p: Vec) => Vec;

/** What is seen at each small square of the screen; row by row from below. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Side of a square, mm, and the screen's lower left corner. */
  readonly pixel: number;
  readonly minX: number;
  readonly minY: number;
  /** z toward the viewer; -Infinity where nothing is. */
  readonly depth: Float32Array;
  /** Which mesh, counted from 1; 0 is nothing. */
  readonly mesh: Uint8Array;
  /** Normals on the screen, three a square; a value of the mesh's own. */
  readonly normal: Float32Array;
  readonly value: Float32Array;
}

/** A mesh with a value at each corner that is carried to the squares. */
export interface Drawable {
  readonly mesh: Mesh;
  readonly values: Float32Array | null;
}

/**
 * Finds what each square of the screen shows, nearest first (a depth buffer; nothing of it is a picture yet).
 * @param pixel side of a square, mm
 */
export function rasterOf(drawables: readonly Drawable[], project: Projection, pixel: number): Raster {
  const seen = drawables.map(({ mesh }) => mesh.points.map(project));
  // Normals turn as points do, without the shift.
  const origin = project([0, 0, 0]);
  const turned = drawables.map(({ mesh }) =>
    mesh.normals.map((n) => {
      const p = project(n);
      return [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]] as Vec;
    }),
  );
  let [minX, minY, maxX, maxY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const points of seen) {
    for (const p of points) {
      if (p[0] < minX) minX = p[0];
      if (p[0] > maxX) maxX = p[0];
      if (p[1] < minY) minY = p[1];
      if (p[1] > maxY) maxY = p[1];
    }
  }
  minX -= 2 * pixel;
  minY -= 2 * pixel;
  const width = Math.ceil((maxX - minX) / pixel) + 2;
  const height = Math.ceil((maxY - minY) / pixel) + 2;
  const raster: Raster = {
    width,
    height,
    pixel,
    minX,
    minY,
    depth: new Float32Array(width * height).fill(Number.NEGATIVE_INFINITY),
    mesh: new Uint8Array(width * height),
    normal: new Float32Array(3 * width * height),
    value: new Float32Array(width * height),
  };
  for (const [k, { mesh, values }] of drawables.entries()) {
    const points = seen[k] as readonly Vec[];
    const normals = turned[k] as readonly Vec[];
    for (const [a, b, c] of mesh.triangles) fillTriangle(raster, k + 1, points, normals, values, a, b, c);
  }
  return raster;
}

function fillTriangle(
  raster: Raster,
  id: number,
  points: readonly Vec[],
  normals: readonly Vec[],
  values: Float32Array | null,
  ia: number,
  ib: number,
  ic: number,
): void {
  const { pixel, minX, minY, width, depth, mesh, normal, value } = raster;
  const [a, b, c] = [points[ia] as Vec, points[ib] as Vec, points[ic] as Vec];
  const [ax, ay] = [(a[0] - minX) / pixel - 0.5, (a[1] - minY) / pixel - 0.5];
  const [bx, by] = [(b[0] - minX) / pixel - 0.5, (b[1] - minY) / pixel - 0.5];
  const [cx, cy] = [(c[0] - minX) / pixel - 0.5, (c[1] - minY) / pixel - 0.5];
  const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (area === 0) return;
  const x0 = Math.ceil(Math.min(ax, bx, cx));
  const x1 = Math.floor(Math.max(ax, bx, cx));
  const y0 = Math.ceil(Math.min(ay, by, cy));
  const y1 = Math.floor(Math.max(ay, by, cy));
  const [na, nb, nc] = [normals[ia] as Vec, normals[ib] as Vec, normals[ic] as Vec];
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      const wb = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area;
      const wc = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area;
      const wa = 1 - wb - wc;
      if (wa < -1e-9 || wb < -1e-9 || wc < -1e-9) continue;
      const z = wa * a[2] + wb * b[2] + wc * c[2];
      const at = y * width + x;
      if (z <= (depth[at] as number)) continue;
      depth[at] = z;
      mesh[at] = id;
      normal[3 * at] = wa * na[0] + wb * nb[0] + wc * nc[0];
      normal[3 * at + 1] = wa * na[1] + wb * nb[1] + wc * nc[1];
      normal[3 * at + 2] = wa * na[2] + wb * nb[2] + wc * nc[2];
      if (values) value[at] = wa * (values[ia] as number) + wb * (values[ib] as number) + wc * (values[ic] as number);
    }
  }
}
