import { DIGITS, type DigitName } from '../hand/digits.ts';
import { averageDigit } from '../hand/estimate.ts';
import { completePalm } from '../hand/estimate-palm.ts';
import type { Hand } from '../hand/hand.ts';
import { digitSection } from '../hand/section.ts';
import { radians } from '../units/angle.ts';
import { dot, minus, type Point3 } from './space.ts';

/** PIP crease to PIP joint: 2 to 3 mm, Bugbee & Botte, Clin Orthop 1993. */
const CREASE_TO_JOINT = 2.5;

/** A finger that stands at the MP angle: an elliptic cylinder from its MP joint on. mm */
export interface ModelFinger {
  readonly digit: DigitName;
  /** Centre of its MP joint; z 0 lies in the plate's own middle over the hand. */
  readonly joint: Point3;
  readonly halfWidth: number;
  readonly halfDepth: number;
  /** Where it lies across at mid phalanx, beside its neighbours. */
  readonly lateral: number;
  /** Along it, from the joint to the line that must stay free: the PIP joint on the back, the PIP crease on the palm side. */
  readonly length: number;
}

/** A hand built from its measures alone, for one face of a plate. mm; see `Point3` for the axes, y 0 at the long finger's MP joint line. */
export interface HandModel {
  readonly face: 'dorsal' | 'palmar';
  readonly angle: number;
  /** MP axis to the skin on the plate's side. */
  readonly skin: number;
  readonly fingers: readonly ModelFinger[];
  /** Along the finger, to the fingertip; and away from it, on the plate's side. */
  readonly direction: Point3;
  readonly normal: Point3;
  /** Half way round the hand at the metacarpal heads, from the middle of the face to the mid-lateral line, in the plate's middle. */
  readonly quarter: number;
  readonly metacarpalLength: number;
  readonly thumbWeb: number;
}

/**
 * The hand with its MP joints at the angle. Joints share the breadth by the digits' widths, fingers lie side by side at mid phalanx; knuckles are
 * round about the joint with the dorsal radius, on the palm side skin of palm and finger meets in a corner. Null where a measure is missing
 * that cannot be estimated.
 * @param middle skin to the plate's middle: free space and half of its thickness
 */
export function handModel(
  hand: Hand,
  face: HandModel['face'],
  digits: readonly DigitName[],
  angle: number,
  webGap: number,
  middle: number,
): HandModel | null {
  const thickness = (breadth: number, circumference: number) => (circumference - 2 * breadth) / (Math.PI - 2);
  const { palm, problems } = completePalm(hand, thickness);
  if (problems.length > 0) return null;
  const skin = face === 'dorsal' ? palm.mpDorsalRadius : palm.mpDepth / 2;
  const known = DIGITS.flatMap((d) => (hand.digits[d] ? [hand.digits[d].width / averageDigit(d).circumference] : []));
  const typical = known.reduce((sum, ratio) => sum + ratio, 0) / known.length;
  const widths = DIGITS.map((d) => hand.digits[d]?.width ?? typical * averageDigit(d).circumference);
  const share = palm.handBreadth / widths.reduce((sum, w) => sum + w, 0);
  let edge = -palm.handBreadth / 2;
  const joints = new Map(
    DIGITS.map((d, k) => {
      const wide = share * (widths[k] as number);
      edge += wide;
      return [d, { x: edge - wide / 2, y: -palm.setbacks[d], z: -skin - middle }];
    }),
  );
  const placed: ModelFinger[] = [];
  let beside = 0;
  for (const digit of digits) {
    const measures = hand.digits[digit];
    const section = measures && digitSection(measures.width, measures.circumference);
    if (!measures || !section?.ok) return null;
    const { halfWidth, halfDepth } = section.value;
    const length = measures.dorsalLength - (face === 'dorsal' ? 0 : CREASE_TO_JOINT);
    placed.push({ digit, joint: joints.get(digit) as Point3, halfWidth, halfDepth, lateral: beside + halfWidth, length });
    beside += 2 * halfWidth + webGap;
  }
  // The row at mid phalanx lies, on average, straight ahead of the joints.
  const off = placed.reduce((sum, f) => sum + f.joint.x - f.lateral, 0) / placed.length;
  const a = radians(angle);
  const down = face === 'dorsal' ? -1 : 1;
  return {
    face,
    angle,
    skin,
    fingers: placed.map((f) => ({ ...f, lateral: f.lateral + off })),
    direction: { x: 0, y: Math.cos(a), z: down * Math.sin(a) },
    normal: { x: 0, y: -down * Math.sin(a), z: Math.cos(a) },
    quarter: (palm.handCircumference / 2 + Math.PI * middle) / 2,
    metacarpalLength: palm.metacarpalLength,
    thumbWeb: -palm.thumbWebSetback,
  };
}

/** Where a point lies by a finger: along it and away from it from its joint, and beside its middle. */
export function byFinger(model: HandModel, finger: ModelFinger, p: Point3): { along: number; height: number; beside: number } {
  const from = minus(p, finger.joint);
  const along = dot(from, model.direction);
  const straight = Math.max(0, Math.min(1, (2 * along) / finger.length));
  const middle = finger.joint.x + straight * (finger.lateral - finger.joint.x);
  return { along, height: dot(from, model.normal), beside: p.x - middle };
}

/** The finger of those that a point lies over: the one whose side it is furthest inside of. */
export function fingerUnder(model: HandModel, digits: readonly DigitName[], p: Point3): ModelFinger {
  const near = model.fingers.filter((f) => digits.includes(f.digit));
  const outside = (f: ModelFinger) => Math.abs(byFinger(model, f, p).beside) - f.halfWidth;
  return near.reduce((a, b) => (outside(b) < outside(a) ? b : a));
}

/**
 * Skin to point, measured over the finger's own width: negative inside. Null beside it, where no skin lies under the sheet.
 */
export function skinGap(model: HandModel, finger: ModelFinger, p: Point3): number | null {
  const { along, height, beside } = byFinger(model, finger, p);
  if (Math.abs(beside) >= finger.halfWidth) return null;
  // The skin falls away to both sides as the finger's section does.
  const fall = finger.halfDepth * (1 - Math.sqrt(1 - (beside / finger.halfWidth) ** 2));
  const skin = model.skin - fall;
  const from = minus(p, finger.joint);
  const overFinger = along >= 0 ? height - skin : Number.POSITIVE_INFINITY;
  const overHand = from.y <= 0 ? from.z - skin : Number.POSITIVE_INFINITY;
  if (model.face === 'palmar') return Math.min(overFinger, overHand);
  return along < 0 && from.y > 0 ? Math.hypot(from.y, from.z) - skin : Math.min(overFinger, overHand);
}
