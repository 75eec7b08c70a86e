import type { DigitName } from '../hand/digits.ts';
import { radians } from '../units/angle.ts';
import { type FingerShape, type HandShape, THUMB_BONES } from './hand-shape.ts';
import { add, unit, type Vec } from './vec.ts';

/** How a hand is held; degrees of flexion. */
export interface HandPose {
  /** Of all MP joints together, fingers against the palm. */
  readonly mp: number;
  /** Of one finger's MP joint more than that. */
  readonly mpMore?: Readonly<Partial<Record<DigitName, number>>>;
  /** Of every PIP joint, and of single ones instead. A DIP joint bends two thirds of its PIP joint (common practice, no source). */
  readonly pip: number;
  readonly pipOf?: Readonly<Partial<Record<DigitName, number>>>;
  /**
   * How far each MP joint lies nearer to the wrist than the long finger's, mm along the palm: knuckles then stand where a bent palm holds them, each
   * finger in a plane of its own. Usual: where the skin's levels put them, all in one plane.
   */
  readonly setbacks?: Readonly<Record<DigitName, number>>;
}

/** Where a finger stands when it is not where average fingers stand: its MP joint and its turn about it. Radians, flexion positive. */
export interface StandingFinger {
  readonly x: number;
  readonly mp: number;
  readonly theta: number;
}

export interface PosedFinger {
  readonly shape: FingerShape;
  /** MP, PIP, DIP joint and tip. */
  readonly joints: readonly [Vec, Vec, Vec, Vec];
  /** Dorsal directions of the proximal, middle and distal phalanx. */
  readonly dorsal: readonly [Vec, Vec, Vec];
}

/** A hand in space: the proximal phalanges point along z, the palm hangs behind them. mm, x 0 in the middle of the fingers. */
export interface PosedHand {
  readonly shape: HandShape;
  readonly fingers: readonly PosedFinger[];
  /** x here is x of the standing fingers less this. */
  readonly shift: number;
  /** MP flexion, radians. */
  readonly bend: number;
  /** Directions of the palm: toward the fingers, and dorsal. */
  readonly along: Vec;
  readonly dorsal: Vec;
  /** Where each metacarpal ends at the wrist. */
  readonly bases: readonly Vec[];
  readonly wrist: Vec;
  /** CMC, MP, IP joint and tip. */
  readonly thumb: readonly [Vec, Vec, Vec, Vec];
  readonly thumbNail: Vec;
}

/** Skin between neighbouring fingers that no strip stands between, mm. */
const GAP = 1.2;
/** A wrist's breadth over the hand's: from memory, for pictures only. */
const BASE_SPREAD = 0.6;

/** @param standing where the strip's model stands fingers; the others join them side by side */
export function posedHand(shape: HandShape, pose: HandPose, standing: ReadonlyMap<DigitName, StandingFinger> = new Map()): PosedHand {
  const places = sideBySide(shape, standing);
  const middle = ((places[0]?.x ?? 0) + (places.at(-1)?.x ?? 0)) / 2;
  const bend = radians(pose.mp);
  const along: Vec = [0, Math.sin(bend), Math.cos(bend)];
  const dorsal: Vec = [0, Math.cos(bend), -Math.sin(bend)];
  const foremost = shape.fingers.find((f) => f.digit === 'long')?.mp ?? Math.max(...shape.fingers.map((f) => f.mp));
  const fingers = shape.fingers.map((finger, k): PosedFinger => {
    const { x, mp, theta } = places[k] as StandingFinger;
    const turn = theta + radians(pose.mpMore?.[finger.digit] ?? 0);
    const pip = radians(pose.pipOf?.[finger.digit] ?? pose.pip);
    const setback = pose.setbacks?.[finger.digit];
    const joint: Vec = setback === undefined ? [x - middle, 0, mp] : add([x - middle, 0, foremost], along, -setback);
    return posedFinger(finger, joint, [turn, turn + pip, turn + pip * (5 / 3)]);
  });
  const middleMp = fingers[Math.min(1, fingers.length - 1)]?.joints[0] ?? [0, 0, 0];
  const back = middleMp[2] - shape.wrist;
  const wrist = add([0, middleMp[1], middleMp[2]], along, -back);
  const bases = fingers.map(({ joints }) => add([BASE_SPREAD * joints[0][0], wrist[1], wrist[2]], along, 6 * shape.scale));
  const first = fingers[0]?.joints[0] ?? wrist;
  const s = shape.scale;
  const cmc = add(add([first[0] * 0.75 - 4 * s, wrist[1], wrist[2]], along, 13 * s), dorsal, -8 * s);
  const towards = (aside: number, ahead: number, down: number): Vec => unit(add(add([-aside, 0, 0], along, ahead), dorsal, -down));
  const mpThumb = add(cmc, towards(0.62, 0.7, 0.42), THUMB_BONES.metacarpal * s);
  const ip = add(mpThumb, towards(0.36, 0.9, 0.2), THUMB_BONES.proximal * s);
  const tip = add(ip, towards(0.2, 0.97, 0.12), THUMB_BONES.distal * s);
  return {
    shape,
    fingers,
    shift: middle,
    bend,
    along,
    dorsal,
    bases,
    wrist,
    thumb: [cmc, mpThumb, ip, tip],
    thumbNail: unit(add([-0.8, 0, 0], dorsal, 0.6)),
  };
}

function sideBySide(shape: HandShape, standing: ReadonlyMap<DigitName, StandingFinger>): readonly StandingFinger[] {
  const { fingers } = shape;
  const places: (StandingFinger | undefined)[] = fingers.map((f) => standing.get(f.digit));
  const apart = (k: number) => ((fingers[k]?.width ?? 0) + (fingers[k + 1]?.width ?? 0)) / 2 + GAP;
  const own = (k: number, x: number): StandingFinger => ({ x, mp: fingers[k]?.mp ?? 0, theta: 0 });
  const known = Math.max(
    0,
    places.findIndex((p) => p !== undefined),
  );
  places[known] ??= own(known, 0);
  for (let k = known + 1; k < fingers.length; k++) places[k] ??= own(k, (places[k - 1]?.x ?? 0) + apart(k - 1));
  for (let k = known - 1; k >= 0; k--) places[k] ??= own(k, (places[k + 1]?.x ?? 0) - apart(k));
  return places as readonly StandingFinger[];
}

/** @param turns of the three phalanges against z, radians, flexion positive */
function posedFinger(shape: FingerShape, mp: Vec, turns: readonly [number, number, number]): PosedFinger {
  const directions = turns.map((t): Vec => [0, -Math.sin(t), Math.cos(t)]) as [Vec, Vec, Vec];
  const dorsal = turns.map((t): Vec => [0, Math.cos(t), Math.sin(t)]) as [Vec, Vec, Vec];
  const pip = add(mp, directions[0], shape.proximal);
  const dip = add(pip, directions[1], shape.middle);
  const tip = add(dip, directions[2], shape.distal);
  return { shape, joints: [mp, pip, dip, tip], dorsal };
}
