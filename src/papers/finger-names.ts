import type { Box, Point } from '../geometry/path.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import type { DigitName } from '../hand/digits.ts';
import type { DrawnText } from '../pattern/drawing.ts';
import type { DrawnMoulded } from '../picture/moulded-hand.ts';
import { type Items, label } from './glyphs.ts';

/** Letters of names as they are to be printed, and about the room for pictures in a step's panel on A4. mm */
const PRINTED = 2.2;
const PANEL = { width: 88, height: 64 } as const;
/** Free space round a name, mm of the hand. */
const CLEAR = 1.2;
/** How far a name is moved in search of free space, and in which steps. mm of the hand */
const FARTHEST = 36;
const STEP = 2;

/** Letters of names on a drawing that takes a share of a panel's breadth, mm of the hand. */
export function nameHeight({ minX, maxX, minY, maxY }: Box, share: number): number {
  const factor = Math.min(1.1, (share * PANEL.width) / (maxX - minX), PANEL.height / (maxY - minY));
  return Math.min(8, PRINTED / factor);
}

/** The drawn hand with each finger's name beyond its tip, clear of all fingers and of the other names. */
export function named(drawn: DrawnMoulded, names: Readonly<Record<DigitName, string>>, treated: DigitName | null, share = 1): Items {
  const height = nameHeight(drawn.drawing.extents, share);
  const bones = [
    ...drawn.posed.fingers.flatMap(({ joints: [mp, pip, dip, tip], shape }) =>
      bonesOf([mp, pip, dip, tip].map(drawn.at), shape.width / 2 + CLEAR),
    ),
    ...bonesOf(drawn.posed.thumb.slice(1).map(drawn.at), 11 * drawn.posed.shape.scale + CLEAR),
  ];
  const placed: DrawnText[] = [];
  // Whose tip reaches farthest has free space beyond it; the others find theirs beside it.
  const reach = ({ tip, pip }: { readonly tip: Point; readonly pip: Point }) => Math.sign(tip.y - pip.y) * tip.y;
  for (const [digit, { tip, pip }] of [...drawn.fingers].toSorted(([, a], [, b]) => reach(b) - reach(a))) {
    const long = Math.hypot(tip.x - pip.x, tip.y - pip.y) || 1;
    const away = { x: (tip.x - pip.x) / long, y: (tip.y - pip.y) / long };
    const from = { x: tip.x + (CLEAR + height) * away.x, y: tip.y + (CLEAR + height) * away.y - height / 2 };
    const name = label(names[digit], from, height, digit === treated);
    placed.push({ ...name, at: clearPlace(name, bones, placed, away) });
  }
  return [...drawn.drawing.items, ...placed];
}

interface Bone {
  readonly from: Point;
  readonly to: Point;
  readonly half: number;
}

function bonesOf(joints: readonly Point[], half: number): readonly Bone[] {
  return joints.slice(1).map((to, k) => ({ from: joints[k] as Point, to, half }));
}

/** The nearest place to a name's own where it lies on nothing, not back over its finger; its own where there is none. */
function clearPlace(name: DrawnText, bones: readonly Bone[], others: readonly DrawnText[], away: Point): Point {
  const tried: { readonly at: Point; readonly cost: number }[] = [];
  for (let dx = -FARTHEST; dx <= FARTHEST; dx += STEP) {
    for (let dy = -FARTHEST; dy <= FARTHEST; dy += STEP) {
      const onward = dx * away.x + dy * away.y;
      if (onward < -8) continue;
      tried.push({ at: { x: name.at.x + dx, y: name.at.y + dy }, cost: Math.hypot(dx, dy) });
    }
  }
  tried.sort((a, b) => a.cost - b.cost);
  const isFree = (at: Point) => {
    const box = boxAt(name, at);
    return !others.some((other) => meets(box, boxAt(other, other.at))) && !bones.some((bone) => liesOn(box, bone));
  };
  return tried.find(({ at }) => isFree(at))?.at ?? name.at;
}

function boxAt({ text, height }: DrawnText, at: Point): Box {
  const half = textWidth(text, height) / 2;
  return { minX: at.x - half, maxX: at.x + half, minY: at.y - 0.3 * height, maxY: at.y + height };
}

function meets(a: Box, b: Box): boolean {
  return a.minX < b.maxX + CLEAR && b.minX < a.maxX + CLEAR && a.minY < b.maxY + CLEAR && b.minY < a.maxY + CLEAR;
}

/** Whether a box lies on a bone with its flesh, looked at in some points along it. */
function liesOn({ minX, maxX, minY, maxY }: Box, { from, to, half }: Bone): boolean {
  for (let k = 0; k <= 8; k++) {
    const [x, y] = [from.x + ((to.x - from.x) * k) / 8, from.y + ((to.y - from.y) * k) / 8];
    const [dx, dy] = [Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY)];
    if (Math.hypot(dx, dy) < half) return true;
  }
  return false;
}
