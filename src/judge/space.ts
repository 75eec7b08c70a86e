/** A point or direction in space, mm: x across the hand from radial to ulnar, y along it to the fingers, z away from the skin on the plate's side. */
export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export function minus(a: Point3, b: Point3): Point3 {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

export function dot(a: Point3, b: Point3): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function size(a: Point3): number {
  return Math.hypot(a.x, a.y, a.z);
}
