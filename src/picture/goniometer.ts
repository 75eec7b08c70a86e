import { boxOf, type LineArcPath, type Point, polyline, unionBox } from '../geometry/path.ts';
import type { Drawing, DrawnShape } from '../pattern/drawing.ts';
import { radians } from '../units/angle.ts';
import { smooth } from './spline.ts';

/** What a PIP joint reaches, degrees: short of straight (below 0 beyond it), and bent. */
export interface JointReach {
  readonly lacks: number;
  readonly bends: number;
}

/**
 * Bone lengths of a long finger, mm: Buryanov & Kotiuk, Int J Morphol 2010;28:755-758, second-hand; the end with its pulp. Depths, the bend of the
 * end joint and the goniometer's size are for the picture only, from memory.
 */
const PROXIMAL = 44.6;
const MIDDLE = 26.3;
const END = 21.4;
const END_BEND = 8;
/** Along the finger from the MP joint, shares of the bone: half the depth toward back and palm. */
const DEPTHS = { root: [8, 10], middle: [7.5, 8.5], pip: [8.2, 7.6], phalanx: [6.6, 7.4], dip: [6.2, 6], nail: [5, 6.2] } as const;
const ARM = { proximal: 40, distal: 27, width: 5.5, hub: 4.6 } as const;
const REACH_RADIUS = 38;
const MARGIN = 1.5;

/**
 * A finger from the side, knuckle to the left and fingertip to the right, back up: as straight as it goes, with a goniometer on its back at the PIP
 * joint, and in outline as bent as it goes. Items have the roles `reach`, `far`, `finger`, `nail`, `arm`; mm, y up.
 */
export function goniometerPicture({ lacks, bends }: JointReach): Drawing {
  const items: DrawnShape[] = [];
  const add = (role: string, path: LineArcPath, look: Pick<DrawnShape, 'pen' | 'tone' | 'fill'>) =>
    items.push({ kind: 'shape', role, title: '', paths: [path], circles: [], ...look });
  const far = Math.min(bends, 150);
  if (far > lacks) add('reach', sector(lacks, far), { pen: null, tone: 'wash', fill: 'wash' });
  add('far', finger(far).outline, { pen: 'fine', tone: 'grey', fill: null });
  const straight = finger(lacks);
  add('finger', straight.outline, { pen: 'medium', tone: 'ink', fill: 'treated' });
  add('nail', straight.nail, { pen: 'fine', tone: 'grey', fill: 'nail' });
  for (const arm of arms(lacks)) add('arm', arm, { pen: 'medium', tone: 'accent', fill: 'paper' });
  const box = unionBox(items.flatMap((item) => item.paths.map((path) => boxOf([path]))));
  return {
    title: 'goniometer on the back of the PIP joint',
    description: '',
    items,
    extents: { minX: box.minX - MARGIN, minY: box.minY - MARGIN, maxX: box.maxX + MARGIN, maxY: box.maxY + MARGIN },
  };
}

/** Outline and nail of a finger bent so far at its PIP joint. */
function finger(bend: number): { readonly outline: LineArcPath; readonly nail: LineArcPath } {
  const pip: Point = { x: PROXIMAL, y: 0 };
  const one = -radians(bend);
  const two = one - radians(END_BEND);
  const dip = along(pip, one, MIDDLE);
  const levels: readonly (readonly [Point, number, readonly [number, number]])[] = [
    [{ x: 0, y: 0 }, 0, DEPTHS.root],
    [{ x: 0.55 * PROXIMAL, y: 0 }, 0, DEPTHS.middle],
    [pip, one / 2, DEPTHS.pip],
    [along(pip, one, 0.55 * MIDDLE), one, DEPTHS.phalanx],
    [dip, (one + two) / 2, DEPTHS.dip],
    [along(dip, two, 0.6 * END), two, DEPTHS.nail],
  ];
  const off = (p: Point, angle: number, by: number): Point => ({ x: p.x - by * Math.sin(angle), y: p.y + by * Math.cos(angle) });
  // A joint that is bent far pushes its palm side into itself: that point is left out.
  const isFolded = bend > 70;
  const back = levels.map(([p, angle, [d]]) => off(p, angle, d));
  const palm = levels.filter((_, k) => !(isFolded && k === 2)).map(([p, angle, [, d]]) => off(p, angle, -d));
  const tip = along(dip, two, END);
  const nail = [0.42, 0.62, 0.9].map((share, k) => off(along(dip, two, share * END), two, [5.9, 5.6, 3.6][k] as number));
  const under = [0.9, 0.62, 0.42].map((share, k) => off(along(dip, two, share * END), two, [2.8, 4.2, 4.9][k] as number));
  return {
    outline: polyline(smooth([...back, tip, ...palm.toReversed()]), false),
    nail: polyline([...nail, ...under], true),
  };
}

function along(from: Point, angle: number, by: number): Point {
  return { x: from.x + by * Math.cos(angle), y: from.y + by * Math.sin(angle) };
}

/** The two arms on the back of the proximal and the middle phalanx, and the hub over the joint. */
function arms(bend: number): readonly LineArcPath[] {
  const top = DEPTHS.pip[0] + 0.4;
  const angle = -radians(bend);
  const hub: Point = { x: PROXIMAL - (top + ARM.hub) * Math.sin(angle / 2), y: (top + ARM.hub - 1) * Math.cos(angle / 2) };
  const bar = (direction: number, long: number): LineArcPath => {
    const end = along(hub, direction, long);
    const across = { x: (-Math.sin(direction) * ARM.width) / 2, y: (Math.cos(direction) * ARM.width) / 2 };
    const corner = (p: Point, side: number): Point => ({ x: p.x + side * across.x, y: p.y + side * across.y });
    return polyline([corner(hub, 1), corner(end, 1), corner(end, -1), corner(hub, -1)], true);
  };
  const round = Array.from({ length: 24 }, (_, k) => along(hub, (k * Math.PI) / 12, ARM.hub));
  return [bar(Math.PI, ARM.proximal), bar(angle, ARM.distal), polyline(round, true)];
}

/** The room between the two ends of the motion. */
function sector(from: number, to: number): LineArcPath {
  const pip: Point = { x: PROXIMAL, y: 0 };
  const steps = 16;
  const rim = Array.from({ length: steps + 1 }, (_, k) => along(pip, -radians(from + ((to - from) * k) / steps), REACH_RADIUS));
  return polyline([pip, ...rim], true);
}
