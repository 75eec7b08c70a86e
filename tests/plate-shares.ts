import type { Hand } from '../src/hand/hand.ts';
import { normHands } from '../src/hand/norm-hands.ts';
import { PLATE_FACES, type PlateDesign, type PlateFaces } from '../src/pattern/plate/plate-design.ts';
import { DEFAULT_PLATE_OPTIONS } from '../src/pattern/plate/plate-options.ts';
import { plateFits } from '../src/pattern/plate/tried-change.ts';
import { seeded, seededNormal } from '../src/units/chance.ts';
import { scaledHand } from './scaled-hand.ts';

/** Sizes of hands over a grown one's, and MP angles, at which plates are tried. */
export const SIZES = [1, 0.8, 0.7, 0.6] as const;
export const ANGLES = [0, 15, 30, 45, 60, 75, 90] as const;

export function fourDigits(faces: PlateFaces, angle: number): PlateDesign {
  return { id: 'four-digits', title: 'Four digits', faces, digits: ['index', 'long', 'ring', 'little'], angle };
}

/** Norm hands of women and men in turn, made smaller by the size; without those whose palm is under the 45 mm that are read at all. */
export function sizedHands(count: number, size: number): readonly Hand[] {
  const { hands } = normHands('mixed', count, seededNormal(seeded(14)));
  const sized = hands.map(({ hand, breadth, circumference }) =>
    scaledHand({ ...hand, palm: { handBreadth: breadth, handCircumference: circumference } }, size),
  );
  return sized.filter((hand) => (hand.palm.handBreadth ?? 0) >= 45);
}

/** How many four-digit plates are refused, for each face and angle; and the refused ones. */
export function refusals(hands: readonly Hand[], angles: readonly number[] = ANGLES) {
  const refused: { readonly hand: Hand; readonly design: PlateDesign }[] = [];
  const rows = PLATE_FACES.map((faces) => ({
    faces,
    shares: angles.map((angle) => {
      const design = fourDigits(faces, angle);
      const not = hands.filter((hand) => !plateFits(hand, design, DEFAULT_PLATE_OPTIONS));
      refused.push(...not.map((hand) => ({ hand, design })));
      return not.length / hands.length;
    }),
  }));
  return { rows, refused };
}
