import type { Raster } from './raster.ts';
import { unit } from './vec.ts';

/** Direction to the light on the screen: from the upper left, before the picture. */
const LIGHT = unit([-0.42, 0.62, 0.66]);
/** Depth by which one thing stands before another where a line is drawn, mm. */
export const JUMP = 1.1;

/** The light on a square, by its normal: 1 where it faces the light. */
export function lightOn(normal: Float32Array, at: number): number {
  return (normal[3 * at] as number) * LIGHT[0] + (normal[3 * at + 1] as number) * LIGHT[1] + (normal[3 * at + 2] as number) * LIGHT[2];
}

/** How far light is evened out over skin, mm, so that shadows have quiet borders. */
const EVENED = 1.3;

/** The light on each square; on skin the mean of its surroundings on the same surface. */
export function evenLight({ width, height, mesh, normal, depth, pixel }: Raster): Float32Array {
  const light = new Float32Array(width * height);
  for (let at = 0; at < light.length; at++) if (mesh[at] !== 0) light[at] = lightOn(normal, at);
  const reach = Math.max(1, Math.round(EVENED / pixel));
  // Whether the skin runs on from a square to the next one to the right, or upward.
  const runsOn = (stride: number) => {
    const on = new Uint8Array(mesh.length);
    for (let at = 0; at + stride < mesh.length; at++) {
      if (mesh[at] !== 1 || mesh[at + stride] !== 1) continue;
      if (Math.abs((depth[at + stride] as number) - (depth[at] as number)) <= JUMP + 2 * pixel) on[at] = 1;
    }
    return on;
  };
  const ways = [
    { stride: 1, on: runsOn(1) },
    { stride: width, on: runsOn(width) },
  ];
  let from = light;
  for (const { stride, on } of [...ways, ...ways]) {
    const to = new Float32Array(from);
    for (let at = 0; at < to.length; at++) {
      if (mesh[at] !== 1) continue;
      let sum = from[at] as number;
      let count = 1;
      for (let k = 1, next = at; k <= reach && on[next] === 1; k++) {
        next += stride;
        sum += from[next] as number;
        count++;
      }
      for (let k = 1, next = at - stride; k <= reach && on[next] === 1; k++) {
        sum += from[next] as number;
        count++;
        next -= stride;
      }
      to[at] = sum / count;
    }
    from = to;
  }
  return from;
}
