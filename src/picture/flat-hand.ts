import type { Point } from '../geometry/path.ts';
import type { DigitName } from '../hand/digits.ts';
import { type FingerShape, type HandShape, THUMB_BONES, type WebName } from './hand-shape.ts';
import { smooth } from './spline.ts';

/** A finger in the flat hand: its axis from the MP joint to the tip, turned by `turn` (radians, toward the little finger). */
export interface FlatFinger {
  readonly shape: FingerShape;
  /** From the crease at its root up round the tip and back; open. */
  readonly contour: readonly Point[];
  /** Closes the contour through the crease at the root: what is coloured when a finger is. */
  readonly base: readonly Point[];
  /** The point at `along` mm from the MP joint line and `across` mm from the midline, toward the little finger. */
  readonly at: (across: number, along: number) => Point;
  /** Half the breadth at `along` mm from the MP joint line. */
  readonly halfWidth: (along: number) => number;
}

/** A flat hand with the fingers up and the thumb on the left: a left palm or the back of a right hand. mm, y 0 at the foremost web. */
export interface FlatHand {
  readonly shape: HandShape;
  readonly fingers: readonly FlatFinger[];
  /** The whole outline from the forearm's thumb side to its other side; open. */
  readonly outline: readonly Point[];
  readonly thumb: { readonly contour: readonly Point[]; readonly at: (across: number, along: number) => Point };
  readonly webs: Readonly<Partial<Record<WebName, Point>>>;
  readonly thumbWeb: Point;
  /** The palm's borders at the metacarpal heads and at the wrist crease. */
  readonly heads: { readonly radial: Point; readonly ulnar: Point };
  readonly wrist: { readonly radial: Point; readonly ulnar: Point };
}

/** Breadths along a finger over that at mid proximal phalanx, and the thumb's place: for pictures only, from memory. */
const SHARE = { middle: 0.94, dip: 0.92, nail: 0.86 } as const;
const WRIST_SHARE = 0.71;
const FOREARM = 20;

/**
 * Lays the hand flat.
 * @param gap free space between neighbouring fingers at their roots, mm
 * @param fan turn between neighbouring fingers, degrees
 */
export function flatHand(shape: HandShape, { gap, fan }: { readonly gap: number; readonly fan: number }): FlatHand {
  const order: readonly DigitName[] = ['index', 'long', 'ring', 'little'];
  let x = 0;
  const fingers = shape.fingers.map((finger, k): FlatFinger => {
    x += k === 0 ? 0 : (shape.fingers[k - 1]?.width ?? 0) / 2 + gap + finger.width / 2;
    // The long finger's axis stays nearly straight; the others lean away from it.
    const turn = ((order.indexOf(finger.digit) - 1.25) * fan * Math.PI) / 180;
    return flatFinger(finger, x, turn, sideLevels(shape, finger));
  });
  const first = fingers[0];
  const last = fingers.at(-1);
  if (!first || !last) throw new Error('a hand without fingers is not drawn');
  const left = -first.shape.width / 2;
  const right = x + last.shape.width / 2;
  const webs: Partial<Record<WebName, Point>> = {};
  const round: Point[] = [];
  for (const [k, finger] of fingers.entries()) {
    round.push(...finger.contour);
    const next = fingers[k + 1];
    if (!next) continue;
    const web = `${finger.shape.digit}-${next.shape.digit}` as WebName;
    const level = shape.webs[web] ?? Math.min(finger.shape.root, next.shape.root) - 2;
    const [a, b] = [finger.contour.at(-1) as Point, next.contour[0] as Point];
    const bottom = { x: (a.x + b.x) / 2, y: level };
    webs[web] = bottom;
    round.push(bottom);
  }
  const { wrist, scale, breadth } = shape;
  const middle = (left + right) / 2;
  const radialHead = { x: left - 2.5 * scale, y: first.shape.mp };
  const ulnarHead = { x: right + 3 * scale, y: last.shape.mp - 2 };
  const wristHalf = (WRIST_SHARE * breadth) / 2;
  const radialWrist = { x: middle - wristHalf, y: wrist };
  const ulnarWrist = { x: middle + wristHalf, y: wrist };
  const thumb = flatThumb(shape, { x: left + 13 * scale, y: wrist + 16 * scale });
  const thumbWeb = { x: left - 5 * scale, y: shape.thumbWeb };
  const outline = smooth([
    { x: radialWrist.x - 1, y: wrist - FOREARM },
    radialWrist,
    ...thumb.contour,
    thumbWeb,
    { x: left - 3 * scale, y: (shape.thumbWeb + radialHead.y) / 2 + 3 * scale },
    radialHead,
    ...round,
    ulnarHead,
    { x: right + 4 * scale, y: (last.shape.mp * 2 + wrist) / 3 },
    { x: right + 1.5 * scale, y: (last.shape.mp + wrist * 3) / 4 },
    ulnarWrist,
    { x: ulnarWrist.x + 1, y: wrist - FOREARM },
  ]);
  return {
    shape,
    fingers: fingers.map((f) => ({ ...f, contour: smooth(f.contour) })),
    outline,
    thumb,
    webs,
    thumbWeb,
    heads: { radial: radialHead, ulnar: ulnarHead },
    wrist: { radial: radialWrist, ulnar: ulnarWrist },
  };
}

/** Levels of the webs on a finger's thumb side and on its other side; beside none, that of its root. */
function sideLevels({ fingers, webs }: HandShape, { digit, root }: FingerShape): readonly [number, number] {
  const k = fingers.findIndex((f) => f.digit === digit);
  const [before, after] = [fingers[k - 1], fingers[k + 1]];
  return [before ? webBetween(webs, before, digit, root) : root, after ? webBetween(webs, { digit }, after.digit, root) : root];
}

/** Where a finger between two is absent there is no web of theirs; it is drawn at the root. */
function webBetween(webs: HandShape['webs'], { digit: one }: Pick<FingerShape, 'digit'>, other: DigitName, root: number): number {
  return webs[`${one}-${other}` as WebName] ?? root;
}

function flatFinger(shape: FingerShape, x: number, turn: number, sides: readonly [number, number]): FlatFinger {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (across: number, along: number): Point => ({ x: x + across * c + along * s, y: shape.mp - across * s + along * c });
  const root = shape.root - shape.mp;
  const dip = shape.proximal + shape.middle;
  const tip = dip + shape.distal;
  const half = shape.width / 2;
  const levels: readonly (readonly [number, number])[] = [
    [root + 0.22 * (shape.pipCrease - shape.root), shape.rootWidth / 2],
    [(root + shape.pipCrease - shape.mp) / 2, half],
    [shape.proximal, shape.pipWidth / 2],
    [shape.proximal + shape.middle / 2, half * SHARE.middle],
    [dip, half * SHARE.dip],
    [dip + 0.5 * shape.distal, half * SHARE.nail],
    [dip + 0.8 * shape.distal, half * SHARE.nail * 0.8],
    [dip + 0.95 * shape.distal, half * SHARE.nail * 0.44],
  ];
  const halfWidth = (along: number): number => {
    const k = levels.findIndex(([level]) => level >= along);
    const [above, below] = [levels[k === -1 ? levels.length - 1 : k], levels[Math.max(0, (k === -1 ? levels.length : k) - 1)]];
    if (!above || !below || above === below) return above?.[1] ?? half;
    return below[1] + ((above[1] - below[1]) * (along - below[0])) / (above[0] - below[0]);
  };
  const [, ...above] = levels;
  // A finger's two sides begin at their own webs.
  const foot = sides.map((level) => Math.min(level - shape.mp + 0.24 * (shape.pipCrease - shape.root), (root + 2 * shape.proximal) / 3));
  const [radial = root, ulnar = root] = foot;
  const contour = [
    at(-shape.rootWidth / 2, radial),
    ...above.filter(([v]) => v > radial + 3).map(([v, h]) => at(-h, v)),
    at(0, tip),
    ...above
      .filter(([v]) => v > ulnar + 3)
      .toReversed()
      .map(([v, h]) => at(h, v)),
    at(shape.rootWidth / 2, ulnar),
  ];
  const base = [at(0.42 * shape.rootWidth, root - 0.5), at(0, root - 1.5), at(-0.42 * shape.rootWidth, root - 0.5)];
  return { shape, contour, base, at, halfWidth };
}

/** The thumb spread from the palm, from its outer side round its tip; `at` counts from its MP joint. */
function flatThumb(shape: HandShape, base: Point): FlatHand['thumb'] {
  const { scale } = shape;
  const [metacarpal, proximal, distal] = [THUMB_BONES.metacarpal * scale, THUMB_BONES.proximal * scale, THUMB_BONES.distal * scale];
  const lean = (44 * Math.PI) / 180;
  const turn = (27 * Math.PI) / 180;
  const mp = { x: base.x - metacarpal * Math.sin(lean), y: base.y + metacarpal * Math.cos(lean) };
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (across: number, along: number): Point => ({ x: mp.x + across * c - along * s, y: mp.y + across * s + along * c });
  const half = 9.6 * scale;
  const outer = { x: base.x - 14 * scale * Math.cos(lean), y: base.y - 6 * scale };
  const tip = proximal + distal;
  const contour = [
    outer,
    at(-11 * scale, -0.35 * metacarpal),
    at(-11.2 * scale, 0),
    at(-half * 0.96, proximal * 0.5),
    at(-half * 1.04, proximal),
    at(-half * 0.98, proximal + distal * 0.5),
    at(-half * 0.72, proximal + distal * 0.83),
    at(0, tip),
    at(half * 0.72, proximal + distal * 0.83),
    at(half, proximal + distal * 0.5),
    at(half * 1.03, proximal),
    at(half * 0.98, proximal * 0.5),
    at(half * 1.15, proximal * 0.02),
  ];
  return { contour, at };
}
