import type { PosedFinger, PosedHand } from './posed-hand.ts';
import { cross, dot, minus, unit, type Vec } from './vec.ts';

export const NAIL = 9;
/** Share of a finger's breadth about its bones within which skin is its own. */
const OWN = 0.75;

type Test = (x: number, y: number, z: number) => number;

/** Which part of the hand a point of its skin belongs to: 0 palm and thumb, 1 to 4 fingers, `NAIL` a nail of either. */
export function partOfHand({ fingers, thumb, thumbNail, shape }: PosedHand): Test {
  const near = fingers.map(nearness);
  const nails = fingers.map(({ joints, dorsal, shape: f }) => onNail(joints[2], joints[3], dorsal[2], 0.3 * f.width, f.halfDepth * 0.3));
  const onThumbNail = onNail(thumb[2], thumb[3], thumbNail, 6.4 * shape.scale, 2.4 * shape.scale);
  return (x, y, z) => {
    let best = 0;
    let least = OWN;
    for (let k = 0; k < near.length; k++) {
      const found = (near[k] as Test)(x, y, z);
      if (found < least) {
        best = k + 1;
        least = found;
      }
    }
    const nail = best > 0 ? nails[best - 1] : onThumbNail;
    return nail?.(x, y, z) ? NAIL : best;
  };
}

/** Distance from a finger's bones over its breadth; at least `OWN` where the skin is not the finger's. A finger bends in one plane across x. */
function nearness({ joints: [mp, pip, dip, tip], shape }: PosedFinger): Test {
  const axis = unit(minus(pip, mp));
  const { width } = shape;
  const rootAt = shape.root - shape.mp;
  return (x, y, z) => {
    const aside = Math.abs(x - mp[0]);
    if (aside >= OWN * width) return OWN;
    const middle = inPlane(y, z, pip, dip);
    // Behind its root a finger is palm, but for a bent one, whose middle phalanx may lie there.
    if (aside * aside + middle * middle > width * width && (y - mp[1]) * axis[1] + (z - mp[2]) * axis[2] < rootAt) return OWN;
    const along = Math.min(inPlane(y, z, mp, pip), middle, inPlane(y, z, dip, tip));
    return Math.sqrt(aside * aside + along * along) / width;
  };
}

/** Distance from a line between two points, in the plane across x. */
function inPlane(y: number, z: number, a: Vec, b: Vec): number {
  const ay = b[1] - a[1];
  const az = b[2] - a[2];
  const py = y - a[1];
  const pz = z - a[2];
  const t = (py * ay + pz * az) / (ay * ay + az * az);
  const held = Math.max(0, Math.min(1, t));
  const [offY, offZ] = [py - held * ay, pz - held * az];
  // Asked for each square of a picture: Math.hypot takes ten times as long.
  return Math.sqrt(offY * offY + offZ * offZ);
}

/** A rounded plate on the back of the last phalanx. */
function onNail(from: Vec, to: Vec, dorsal: Vec, half: number, above: number): (x: number, y: number, z: number) => boolean {
  const axis = unit(minus(to, from));
  const long = Math.hypot(...minus(to, from));
  const lateral = cross(axis, dorsal);
  return (x, y, z) => {
    const d: Vec = [x - from[0], y - from[1], z - from[2]];
    const along = dot(d, axis) / long;
    if (along < 0.35 || along > 1.05 || dot(d, dorsal) < above) return false;
    return Math.abs(dot(d, lateral) / half) ** 3 + Math.abs((along - 0.68) / 0.28) ** 3 < 1;
  };
}
