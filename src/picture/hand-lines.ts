import type { Point } from '../geometry/path.ts';
import type { FlatFinger, FlatHand } from './flat-hand.ts';
import { THUMB_BONES } from './hand-shape.ts';
import { smooth } from './spline.ts';

/** Lines within the outline of a flat hand, and areas (nails), each as close points. */
export interface HandLines {
  readonly lines: readonly (readonly Point[])[];
  readonly nails: readonly (readonly Point[])[];
}

/** What tells a back: nails, and folds of skin over the joints. Where they lie: from memory of hands, for pictures only. */
export function backLines(hand: FlatHand): HandLines {
  const lines = hand.fingers.flatMap((finger) => {
    const { proximal, middle } = finger.shape;
    const half = finger.halfWidth(proximal);
    const knuckle = smooth([
      finger.at(-0.5 * half, -0.22 * half),
      finger.at(-0.34 * half, 0.26 * half),
      finger.at(0, 0.46 * half),
      finger.at(0.34 * half, 0.26 * half),
      finger.at(0.5 * half, -0.22 * half),
    ]);
    const folds = [-0.17, 0, 0.17].map((shift) => fold(finger, proximal + shift * 2 * half, shift === 0 ? 0.62 : 0.5, 0.9 * shift));
    return [knuckle, ...folds, fold(finger, proximal + middle, 0.5, 0.12), fold(finger, proximal + middle - 0.2 * half, 0.42, -0.1)];
  });
  const { scale } = hand.shape;
  const thumbFold = (shift: number) =>
    smooth(
      [-4, 0, 4].map((across) => hand.thumb.at((across - 1.5) * scale, (THUMB_BONES.proximal + shift - Math.abs(across) * 0.2) * scale)),
    );
  return { lines: [...lines, thumbFold(0), thumbFold(2.5)], nails: [...hand.fingers.map(nail), thumbNail(hand)] };
}

/** A fold of skin across a finger, bowed toward the tip where `bow` is positive, over a share of its breadth. */
function fold(finger: FlatFinger, along: number, share: number, bow: number): readonly Point[] {
  const half = finger.halfWidth(along) * share;
  return smooth([finger.at(-half, along - bow * half * 0.5), finger.at(0, along + bow * half), finger.at(half, along - bow * half * 0.5)]);
}

function nail(finger: FlatFinger): readonly Point[] {
  const { proximal, middle, distal } = finger.shape;
  const dip = proximal + middle;
  const half = 0.66 * finger.halfWidth(dip + 0.5 * distal);
  return nailShape(finger.at, half, dip + 0.42 * distal, dip + 0.93 * distal);
}

function thumbNail({ thumb, shape: { scale } }: FlatHand): readonly Point[] {
  const { proximal, distal } = THUMB_BONES;
  // The thumb shows its side: the nail lies toward its outer edge and looks narrower.
  const at = (across: number, along: number) => thumb.at(across - 2.6 * scale, along);
  return nailShape(at, 5.2 * scale, (proximal + 0.42 * distal) * scale, (proximal + 0.9 * distal) * scale);
}

function nailShape(at: (across: number, along: number) => Point, half: number, from: number, to: number): readonly Point[] {
  const long = to - from;
  return smooth(
    [
      at(-0.72 * half, from + 0.08 * long),
      at(0, from),
      at(0.72 * half, from + 0.08 * long),
      at(half, from + 0.34 * long),
      at(0.95 * half, from + 0.74 * long),
      at(0.5 * half, from + 0.96 * long),
      at(0, to),
      at(-0.5 * half, from + 0.96 * long),
      at(-0.95 * half, from + 0.74 * long),
      at(-half, from + 0.34 * long),
    ],
    true,
  );
}

/** What tells a palm: creases at the fingers' roots and joints, the three great creases, the wrist's. Places from memory, for pictures only. */
export function palmLines(hand: FlatHand): HandLines {
  const { scale, wrist } = hand.shape;
  const lines: (readonly Point[])[] = [];
  for (const finger of hand.fingers) {
    const { mp, root, pipCrease, proximal, middle } = finger.shape;
    lines.push(fold(finger, root - mp + 0.4, 0.86, 0.08));
    lines.push(fold(finger, pipCrease - mp - 0.7, 0.84, -0.06), fold(finger, pipCrease - mp + 0.9, 0.8, 0.05));
    lines.push(fold(finger, proximal + middle - 1, 0.8, 0));
  }
  const first = hand.fingers[0] as FlatFinger;
  const last = hand.fingers.at(-1) as FlatFinger;
  const joint = (k: number, across: number, along: number) => (hand.fingers[k] ?? last).at(across * scale, along * scale);
  const { radial, ulnar } = hand.heads;
  const web = hand.webs['index-long'] ?? joint(0, 9, 12);
  lines.push(
    smooth([
      { x: ulnar.x + 0.6 * scale, y: last.shape.mp - 4 * scale },
      last.at(0, -1 * scale),
      ...hand.fingers
        .slice(1, -1)
        .toReversed()
        .map((f) => f.at(0, (f.shape.digit === 'long' ? 3 : 0.5) * scale)),
      { x: web.x - 0.5 * scale, y: web.y - 7 * scale },
    ]),
  );
  const start = { x: radial.x + 1.2 * scale, y: radial.y - 3 * scale };
  lines.push(smooth([start, first.at(4 * scale, -5 * scale), joint(1, 0, -12), joint(2, 4, -22), last.at(0, -26 * scale)]));
  const middle = (hand.wrist.radial.x + hand.wrist.ulnar.x) / 2;
  lines.push(
    smooth([
      start,
      first.at(3 * scale, -11 * scale),
      first.at(15 * scale, -28 * scale),
      { x: middle - 3 * scale, y: wrist + 34 * scale },
      { x: middle - 4 * scale, y: wrist + 6 * scale },
    ]),
  );
  for (const [down, inset] of [
    [0, 2],
    [-3.5, 6],
  ] as const) {
    const y = wrist + down * scale;
    lines.push(
      smooth([
        { x: hand.wrist.radial.x + inset * scale, y: y + 0.8 * scale },
        { x: middle, y: y - 0.6 * scale },
        { x: hand.wrist.ulnar.x - inset * scale, y: y + 0.8 * scale },
      ]),
    );
  }
  return { lines, nails: [] };
}
