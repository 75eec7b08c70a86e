/** A point or direction in space, mm: x from the thumb side to the little finger, y dorsal, z distal. */
export type Vec = readonly [x: number, y: number, z: number];

export const add = (a: Vec, b: Vec, times = 1): Vec => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
export const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec, b: Vec): Vec => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const mix = (a: Vec, b: Vec, t: number): Vec => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];

export function unit(a: Vec): Vec {
  const size = Math.sqrt(dot(a, a)) || 1;
  return [a[0] / size, a[1] / size, a[2] / size];
}
