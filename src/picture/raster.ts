import type { Mesh } from './surface-mesh.ts';
import type { Vec } from './vec.ts';

/** From space to the screen: x to the right, y up, z toward the viewer; mm. A turn and a mirror, without a shift. */
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
  /** Normals on the screen, three a square. */
  readonly normal: Float32Array;
}

/**
 * An empty screen that holds everything when it is looked at.
 * @param squares along the longer side
 */
export function screenFor(meshes: readonly Mesh[], project: Projection, squares: number): Raster {
  let [minX, minY, maxX, maxY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { points } of meshes) {
    const seen = turned(points, project);
    for (let k = 0; k < seen.length; k += 3) {
      const x = seen[k] as number;
      const y = seen[k + 1] as number;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  const pixel = Math.max(maxX - minX, maxY - minY) / squares;
  // Two squares are left free at each side. The longer side is a whole number of squares but for the last digit.
  const squaresOver = (span: number) => Math.ceil(span / pixel - 1e-6) + 4;
  const width = squaresOver(maxX - minX);
  const height = squaresOver(maxY - minY);
  return {
    width,
    height,
    pixel,
    minX: minX - 2 * pixel,
    minY: minY - 2 * pixel,
    depth: new Float32Array(width * height).fill(Number.NEGATIVE_INFINITY),
    mesh: new Uint8Array(width * height),
    normal: new Float32Array(3 * width * height),
  };
}

/** A screen to go on drawing on, the first left as it is. */
export function copyOf(raster: Raster): Raster {
  return { ...raster, depth: raster.depth.slice(), mesh: raster.mesh.slice(), normal: raster.normal.slice() };
}

/** Finds what each square of the screen shows, nearest first (a depth buffer; nothing of it is a picture yet). `first` is the number of the first mesh. */
export function show(raster: Raster, meshes: readonly Mesh[], project: Projection, first: number): void {
  for (const [k, mesh] of meshes.entries()) {
    const points = turned(mesh.points, project);
    const normals = turned(mesh.normals, project);
    for (let p = 0; p < points.length; p += 3) {
      points[p] = ((points[p] as number) - raster.minX) / raster.pixel - 0.5;
      points[p + 1] = ((points[p + 1] as number) - raster.minY) / raster.pixel - 0.5;
    }
    for (const [a, b, c] of mesh.triangles) fillTriangle(raster, first + k, points, normals, 3 * a, 3 * b, 3 * c);
  }
}

/** Points or directions as the screen has them, three numbers each. */
function turned(points: readonly Vec[], project: Projection): Float64Array {
  const [ax, ay, az] = project([1, 0, 0]);
  const [bx, by, bz] = project([0, 1, 0]);
  const [cx, cy, cz] = project([0, 0, 1]);
  const seen = new Float64Array(3 * points.length);
  let k = 0;
  for (const p of points) {
    seen[k++] = p[0] * ax + p[1] * bx + p[2] * cx;
    seen[k++] = p[0] * ay + p[1] * by + p[2] * cy;
    seen[k++] = p[0] * az + p[1] * bz + p[2] * cz;
  }
  return seen;
}

/** @param a,b,c where the corners' numbers begin */
function fillTriangle(raster: Raster, id: number, points: Float64Array, normals: Float64Array, a: number, b: number, c: number): void {
  const { width, depth, mesh, normal } = raster;
  const ax = points[a] as number;
  const ay = points[a + 1] as number;
  const bx = points[b] as number;
  const by = points[b + 1] as number;
  const cx = points[c] as number;
  const cy = points[c + 1] as number;
  const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (area === 0) return;
  const x0 = Math.ceil(Math.min(ax, bx, cx));
  const x1 = Math.floor(Math.max(ax, bx, cx));
  const y0 = Math.ceil(Math.min(ay, by, cy));
  const y1 = Math.floor(Math.max(ay, by, cy));
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      const wb = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area;
      const wc = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area;
      const wa = 1 - wb - wc;
      if (wa < -1e-9 || wb < -1e-9 || wc < -1e-9) continue;
      const z = wa * (points[a + 2] as number) + wb * (points[b + 2] as number) + wc * (points[c + 2] as number);
      const at = y * width + x;
      if (z <= (depth[at] as number)) continue;
      depth[at] = z;
      mesh[at] = id;
      for (let k = 0; k < 3; k++)
        normal[3 * at + k] = wa * (normals[a + k] as number) + wb * (normals[b + k] as number) + wc * (normals[c + k] as number);
    }
  }
}
