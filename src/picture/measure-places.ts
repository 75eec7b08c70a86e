import type { Point } from '../geometry/path.ts';
import type { DigitName } from '../hand/digits.ts';
import type { FlatFinger, FlatHand } from './flat-hand.ts';
import { WEB_NAMES, type WebName } from './hand-shape.ts';
import { smooth } from './spline.ts';

/** A measure's place on a hand: of one digit, of one web, or of the hand as a whole. The words are those of the hand file. */
export type MeasurePlace =
  | `${DigitName}.${'width' | 'circumference' | 'palmarRoom' | 'dorsalLength' | 'pipCircumference' | 'rootCircumference' | 'mpSetback'}`
  | `webSetback.${WebName}`
  | 'handBreadth'
  | 'handCircumference'
  | 'metacarpalLength'
  | 'mpDepth'
  | 'mpDorsalRadius'
  | 'thumbWebSetback';

/** How a place is drawn: `line` a length between two ends, `ring` a tape round a digit or the hand. */
export interface PlaceShape {
  readonly kind: 'line' | 'ring';
  /** The length's two ends, or the points round the ring (closed). mm */
  readonly points: readonly Point[];
  /** Fine lines that lead from what is measured to the length. */
  readonly leaders: readonly (readonly [Point, Point])[];
}

/** Every place that this hand has, in the frame of the flat hand. */
export function measurePlaces(hand: FlatHand): ReadonlyMap<MeasurePlace, PlaceShape> {
  const places = new Map<MeasurePlace, PlaceShape>();
  const line = (from: Point, to: Point, leaders: PlaceShape['leaders'] = []): PlaceShape => ({ kind: 'line', points: [from, to], leaders });
  const long = hand.fingers.find((f) => f.shape.digit === 'long') ?? (hand.fingers[0] as FlatFinger);
  for (const finger of hand.fingers) {
    const { digit, root, mp, pipCrease, proximal } = finger.shape;
    const mid = (root + pipCrease) / 2 - mp;
    const half = finger.halfWidth(mid);
    places.set(`${digit}.width`, line(finger.at(-half, mid), finger.at(half, mid)));
    places.set(`${digit}.circumference`, tape(finger, mid));
    places.set(`${digit}.palmarRoom`, line(finger.at(0, root - mp), finger.at(0, pipCrease - mp), ends(finger, root - mp, pipCrease - mp)));
    places.set(`${digit}.dorsalLength`, line(finger.at(0, 0), finger.at(0, proximal), ends(finger, 0, proximal)));
    places.set(`${digit}.pipCircumference`, tape(finger, proximal));
    places.set(`${digit}.rootCircumference`, tape(finger, root - mp + 1.5));
    const joint = finger.at(0, 0);
    const front = { x: joint.x, y: long.shape.mp };
    if (digit !== 'long') places.set(`${digit}.mpSetback`, line(front, joint, [[long.at(0, 0), front]]));
  }
  const foremost = WEB_NAMES.map((web) => hand.webs[web]).reduce((a, b) => (a && (!b || a.y >= b.y) ? a : b), undefined);
  for (const web of WEB_NAMES) {
    const bottom = hand.webs[web];
    if (!bottom || !foremost) continue;
    const front = { x: bottom.x, y: foremost.y };
    places.set(`webSetback.${web}`, line(front, bottom, [[foremost, front]]));
  }
  const { heads, wrist, shape } = hand;
  places.set('handBreadth', line(heads.radial, heads.ulnar));
  places.set('handCircumference', {
    kind: 'ring',
    leaders: [],
    points: ellipse((heads.radial.x + heads.ulnar.x) / 2, (heads.radial.y + heads.ulnar.y) / 2, heads, 0.09 * shape.breadth),
  });
  const joint = long.at(0, 0);
  const middle = { x: joint.x, y: shape.wrist };
  places.set(
    'metacarpalLength',
    line(middle, joint, [
      [
        { x: wrist.radial.x, y: shape.wrist },
        { x: wrist.ulnar.x, y: shape.wrist },
      ],
    ]),
  );
  // Square to the paper: a spot with a short line through it.
  places.set('mpDepth', {
    kind: 'ring',
    leaders: [],
    points: ellipse(joint.x, joint.y, { radial: { x: joint.x - 3, y: joint.y }, ulnar: { x: joint.x + 3, y: joint.y } }, 3),
  });
  // Seen from the side of the index finger: a spot on its border with a short line through it.
  const index = hand.fingers.find((f) => f.shape.digit === 'index');
  if (index) {
    const side = index.at(-index.halfWidth(0), 0);
    places.set('mpDorsalRadius', { ...line(index.at(-index.halfWidth(0) - 9, 0), side), leaders: [] });
  }
  const front = { x: hand.thumbWeb.x, y: long.shape.mp };
  places.set('thumbWebSetback', line(front, hand.thumbWeb, [[joint, front]]));
  return places;
}

/** Short lines across a finger at the two ends of a length. */
function ends(finger: FlatFinger, from: number, to: number): PlaceShape['leaders'] {
  return [from, to].map((along) => {
    const half = 0.55 * finger.halfWidth(along);
    return [finger.at(-half, along), finger.at(half, along)] as const;
  });
}

/** A tape round a finger, seen a little from above: a flat ellipse as broad as the finger. */
function tape(finger: FlatFinger, along: number): PlaceShape {
  const half = finger.halfWidth(along) + 0.6;
  const points = Array.from({ length: 12 }, (_, k) => {
    const t = (k * Math.PI) / 6;
    return finger.at(half * Math.cos(t), along + 0.24 * half * Math.sin(t));
  });
  return { kind: 'ring', points: smooth(points, true), leaders: [] };
}

function ellipse(x: number, y: number, { radial, ulnar }: FlatHand['heads'], halfHeight: number): readonly Point[] {
  const half = (ulnar.x - radial.x) / 2 + 0.8;
  const slope = (ulnar.y - radial.y) / (ulnar.x - radial.x);
  const points = Array.from({ length: 16 }, (_, k) => {
    const t = (k * Math.PI) / 8;
    return { x: x + half * Math.cos(t), y: y + slope * half * Math.cos(t) + halfHeight * Math.sin(t) };
  });
  return smooth(points, true);
}
