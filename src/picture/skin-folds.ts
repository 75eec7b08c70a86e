import type { PosedFinger, PosedHand } from './posed-hand.ts';
import { add, cross, minus, mix, unit, type Vec } from './vec.ts';

/** Folds over the backs of the joints and creases on the palm side, as close points on the skin. Their places are from memory, for pictures only. */
export function skinFolds({ fingers }: PosedHand): readonly (readonly Vec[])[] {
  return fingers.flatMap((f) => [...backFolds(f), ...palmCreases(f)]);
}

function backFolds({ shape, joints: [, pip, dip], dorsal }: PosedFinger): readonly (readonly Vec[])[] {
  const [a, b] = [shape.pipWidth / 2, shape.halfDepth * 0.96];
  const bisector = (k: 0 | 1) => unit(add(dorsal[k], dorsal[k + 1] as Vec));
  const at = (joint: Vec, axis: Vec, shift: number, a1: number, b1: number, half: number) =>
    arc(add(joint, axis, shift), axis, 1, a1, b1, half);
  const over = bisector(0);
  return [
    ...[-1.7, 0.2, 2].map((shift, k) => at(pip, over, 0, a, b, k === 1 ? 46 : 36).map((p) => add(p, alongOf(over), shift))),
    ...[-0.8, 0.8].map((shift) => at(dip, bisector(1), 0, a * 0.88, b * 0.84, 30).map((p) => add(p, alongOf(bisector(1)), shift))),
  ];
}

/** Distal direction square to a dorsal one: fingers bend in the plane across x. */
function alongOf(dorsal: Vec): Vec {
  return cross([1, 0, 0], dorsal);
}

function palmCreases({ shape, joints: [mp, pip, dip], dorsal }: PosedFinger): readonly (readonly Vec[])[] {
  const axis = unit(minus(pip, mp));
  const level = (l: number) => mix(mp, pip, (l - shape.mp) / shape.proximal);
  const [a, b] = [shape.width / 2, shape.halfDepth];
  return [
    arc(level(shape.root), dorsal[0], -1, a, b, 62),
    arc(level(shape.pipCrease), dorsal[0], -1, a, b, 60),
    arc(add(level(shape.pipCrease), axis, 1.7), dorsal[0], -1, a, b, 56),
    arc(dip, unit(add(dorsal[1], dorsal[2])), -1, a * 0.92, b * 0.82, 56),
  ];
}

/** An arc over an elliptic section, `half` degrees to either side of its dorsal (1) or palmar (-1) end. */
function arc(centre: Vec, dorsal: Vec, end: 1 | -1, a: number, b: number, half: number): readonly Vec[] {
  const count = 12;
  return Array.from({ length: count + 1 }, (_, k): Vec => {
    const t = ((k / count) * 2 - 1) * ((half * Math.PI) / 180);
    return add(add(centre, [1, 0, 0], a * Math.sin(t)), dorsal, end * b * Math.cos(t));
  });
}
