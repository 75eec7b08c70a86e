import type { PosedFinger, PosedHand } from './posed-hand.ts';
import { add, cross, dot, minus, mix, unit, type Vec } from './vec.ts';

/** A solid as a function of space: how far a point lies outside (mm, about; negative inside). */
export interface Solid {
  readonly distance: (x: number, y: number, z: number) => number;
  readonly box: { readonly min: Vec; readonly max: Vec };
}

/** A rounded rod with an elliptic section that changes from end to end; plain numbers, since a hand is asked some ten thousand times. */
interface Rod {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly axisX: number;
  readonly axisY: number;
  readonly axisZ: number;
  readonly length: number;
  readonly sideX: number;
  readonly sideY: number;
  readonly sideZ: number;
  readonly upX: number;
  readonly upY: number;
  readonly upZ: number;
  /** Half breadth and half depth at the near end, and how they change toward the other. */
  readonly a: number;
  readonly b: number;
  readonly aMore: number;
  readonly bMore: number;
  readonly to: Vec;
  readonly reach: number;
}

function rod(from: Vec, to: Vec, lateral: Vec, a: readonly [number, number], b: readonly [number, number]): Rod {
  const axis = unit(minus(to, from));
  // The lateral direction squared to the axis.
  const side = unit(add(lateral, axis, -dot(lateral, axis)));
  const up = cross(axis, side);
  return {
    x: from[0],
    y: from[1],
    z: from[2],
    axisX: axis[0],
    axisY: axis[1],
    axisZ: axis[2],
    length: Math.hypot(...minus(to, from)),
    sideX: side[0],
    sideY: side[1],
    sideZ: side[2],
    upX: up[0],
    upY: up[1],
    upZ: up[2],
    a: a[0],
    b: b[0],
    aMore: a[1] - a[0],
    bMore: b[1] - b[0],
    to,
    reach: Math.max(...a, ...b),
  };
}

/** Distance to a rod: exact on its surface, too small away from it, which a search over space may be. */
function rodDistance(r: Rod, x: number, y: number, z: number): number {
  const dx = x - r.x;
  const dy = y - r.y;
  const dz = z - r.z;
  const along = dx * r.axisX + dy * r.axisY + dz * r.axisZ;
  const held = Math.max(0, Math.min(r.length, along));
  const t = held / r.length;
  const a = r.a + t * r.aMore;
  const b = r.b + t * r.bMore;
  const l = (dx * r.sideX + dy * r.sideY + dz * r.sideZ) / a;
  const n = (dx * r.upX + dy * r.upY + dz * r.upZ) / b;
  const least = Math.min(a, b);
  const e = (along - held) / least;
  return (Math.sqrt(l * l + n * n + e * e) - 1) * least;
}

/** Union with a fillet of about k mm (polynomial smooth minimum). */
function blended(a: number, b: number, k: number): number {
  const least = Math.min(a, b);
  const h = k - Math.abs(a - b);
  return h <= 0 ? least : least - (h * h) / (4 * k);
}

const LATERAL: Vec = [1, 0, 0];

interface Group {
  readonly rods: readonly Rod[];
  readonly blend: number;
  readonly min: Vec;
  readonly max: Vec;
}

function group(rods: readonly Rod[], blend: number): Group {
  const reach = Math.max(...rods.map((r) => r.reach));
  const ends = rods.flatMap((r): Vec[] => [[r.x, r.y, r.z], r.to]);
  const edge = (k: number, pick: typeof Math.min) => pick(...ends.map((p) => p[k] as number));
  return {
    rods,
    blend,
    min: [edge(0, Math.min) - reach, edge(1, Math.min) - reach, edge(2, Math.min) - reach],
    max: [edge(0, Math.max) + reach, edge(1, Math.max) + reach, edge(2, Math.max) + reach],
  };
}

/** How far outside a group's box a point lies: no more than its distance to what is in it. */
function outside({ min, max }: Group, x: number, y: number, z: number): number {
  const dx = x < min[0] ? min[0] - x : x > max[0] ? x - max[0] : 0;
  const dy = y < min[1] ? min[1] - y : y > max[1] ? y - max[1] : 0;
  const dz = z < min[2] ? min[2] - z : z > max[2] ? z - max[2] : 0;
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

function groupDistance(g: Group, x: number, y: number, z: number): number {
  // Far beyond all fillets: nothing is blended with it.
  let d = 1e6;
  for (const r of g.rods) d = blended(d, rodDistance(r, x, y, z), g.blend);
  return d;
}

/** Fillets: between finger and palm, finger and thumb's ball. mm */
const ROOT_BLEND = 5;
/** Beyond this a group is not looked into; its box tells enough. mm */
const FAR = 14;

/** How much of the forearm is shown, mm at average size. */
const FOREARM = 20;

/**
 * The hand as one solid: each finger runs smoothly into the palm, neighbours touch without melting.
 * @param cutOff where it ends behind the wrist, mm at average size; negative: before it
 */
export function handSolid(hand: PosedHand, cutOff = FOREARM): Solid {
  const palm = group(palmRods(hand), 9 * hand.shape.scale);
  const thumb = group(thumbRods(hand), 4);
  const fingers = hand.fingers.map((f) => group(fingerRods(f), 0.8));
  const webs = webRods(hand);
  const skinBetween = group(webs, 5);
  const distance = (x: number, y: number, z: number): number => {
    const farPalm = outside(palm, x, y, z);
    let body = farPalm > FAR ? farPalm : groupDistance(palm, x, y, z);
    const farThumb = outside(thumb, x, y, z);
    if (farThumb <= FAR) body = blended(body, groupDistance(thumb, x, y, z), 7);
    else body = Math.min(body, farThumb);
    if (outside(skinBetween, x, y, z) <= FAR) for (const web of webs) body = blended(body, rodDistance(web, x, y, z), 5);
    let all = body;
    for (const finger of fingers) {
      const far = outside(finger, x, y, z);
      all = Math.min(all, far > FAR ? far : blended(body, groupDistance(finger, x, y, z), ROOT_BLEND));
    }
    // It ends in a flat cut.
    const [ax, ay, az] = hand.along;
    const cut = (hand.wrist[0] - x) * ax + (hand.wrist[1] - y) * ay + (hand.wrist[2] - z) * az - cutOff * hand.shape.scale;
    return Math.max(all, cut);
  };
  const groups = [palm, thumb, ...fingers];
  const edge = (k: 0 | 1 | 2, end: 'min' | 'max', pick: typeof Math.min) => pick(...groups.map((g) => g[end][k]));
  return {
    distance,
    box: {
      min: [edge(0, 'min', Math.min) - 3, edge(1, 'min', Math.min) - 3, edge(2, 'min', Math.min) - 3],
      max: [edge(0, 'max', Math.max) + 3, edge(1, 'max', Math.max) + 3, edge(2, 'max', Math.max) + 3],
    },
  };
}

/** Breadth and depth along a finger over those at mid proximal phalanx: for pictures only, from memory. */
function fingerRods({ shape, joints: [mp, pip, dip, tip] }: PosedFinger): readonly Rod[] {
  const [a, b] = [shape.width / 2, shape.halfDepth];
  const middle = mix(mp, pip, 0.62);
  const pad = 0.7 * b;
  const end = mix(dip, tip, 1 - pad / shape.distal);
  return [
    rod(mp, middle, LATERAL, [shape.rootWidth / 2, a], [b * 1.02, b]),
    rod(middle, pip, LATERAL, [a, shape.pipWidth / 2], [b, b * 0.96]),
    rod(pip, mix(pip, dip, 0.5), LATERAL, [shape.pipWidth / 2, a * 0.93], [b * 0.96, b * 0.88]),
    rod(mix(pip, dip, 0.5), dip, LATERAL, [a * 0.93, a * 0.92], [b * 0.88, b * 0.8]),
    rod(dip, end, LATERAL, [a * 0.92, a * 0.8], [b * 0.8, pad]),
  ];
}

function palmRods(hand: PosedHand): readonly Rod[] {
  const { shape, fingers, bases, dorsal, along, wrist } = hand;
  const s = shape.scale;
  const deep = shape.depth / 2;
  const rods = fingers.map(({ joints: [mp] }, k): Rod => {
    const share = [1, 1, 0.95, 0.88][k] ?? 0.9;
    const sunk = -0.16 * deep;
    return rod(
      add(mp, dorsal, sunk),
      add(bases[k] as Vec, dorsal, sunk),
      LATERAL,
      [11.2 * s * share, 11 * s],
      [deep * 0.86 * share, deep * 0.95],
    );
  });
  // Knuckles stand up; the ball of the little finger lies in the palm.
  const knuckles = fingers.map(({ joints: [mp], shape: f }) =>
    rod(
      add(mp, dorsal, 0.1 * deep),
      add(add(mp, along, -7 * s), dorsal, -0.05 * deep),
      LATERAL,
      [0.5 * f.width, 0.42 * f.width],
      [0.75 * deep, 0.7 * deep],
    ),
  );
  const little = fingers.at(-1)?.joints[0] ?? wrist;
  const base = bases.at(-1) ?? wrist;
  const ball = rod(
    add(mix(little, base, 0.25), dorsal, -6 * s),
    add(mix(little, base, 0.9), dorsal, -6 * s),
    LATERAL,
    [9 * s, 10 * s],
    [9 * s, 10 * s],
  );
  const half = 0.335 * shape.breadth;
  const forearm = rod(add(wrist, along, 4 * s), add(wrist, along, -34 * s), LATERAL, [half, half * 1.04], [deep * 1.05, deep * 1.25]);
  return [...rods, ...knuckles, ball, forearm];
}

function thumbRods({ shape: { scale: s }, thumb: [cmc, mp, ip, tip], dorsal, along }: PosedHand): readonly Rod[] {
  const end = mix(ip, tip, 0.74);
  return [
    rod(cmc, mp, LATERAL, [13.5 * s, 11 * s], [14 * s, 11 * s]),
    rod(add(cmc, dorsal, -3 * s), add(mix(cmc, mp, 0.7), along, 4 * s), LATERAL, [11 * s, 9 * s], [12 * s, 9 * s]),
    rod(mp, ip, LATERAL, [10.4 * s, 9.6 * s], [10.4 * s, 9.4 * s]),
    rod(ip, end, LATERAL, [9.6 * s, 7.4 * s], [9.2 * s, 6.6 * s]),
  ];
}

/** Skin between neighbours up to their web. */
function webRods({ fingers, shape }: PosedHand): readonly Rod[] {
  return fingers.slice(1).map((finger, k) => {
    const before = fingers[k] as PosedFinger;
    const level =
      shape.webs[`${before.shape.digit}-${finger.shape.digit}` as keyof typeof shape.webs] ??
      Math.min(before.shape.root, finger.shape.root);
    const thick = 4.6 * shape.scale;
    const x = (before.joints[0][0] + before.shape.width / 2 + finger.joints[0][0] - finger.shape.width / 2) / 2;
    const mp = mix(before.joints[0], finger.joints[0], 0.5);
    // A web goes with its two knuckles.
    const low = mp[1] - Math.min(before.shape.halfDepth, finger.shape.halfDepth) * 0.25;
    const end = level + mp[2] - (before.shape.mp + finger.shape.mp) / 2 - thick;
    return rod([x, low, Math.max(mp[2], end - 9.4 * shape.scale)], [x, low, end], LATERAL, [thick, thick], [thick * 1.3, thick]);
  });
}
