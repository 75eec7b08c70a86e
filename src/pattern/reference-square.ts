import { polyline } from '../geometry/path.ts';
import { type Speech, speechIn } from '../words/speech.ts';
import type { Mark } from './pattern.ts';
import type { Drawn } from './place-marks.ts';
import { textBlock } from './text-lines.ts';

/** Side of the square, mm. */
export const REFERENCE_SIDE = 50;
const TEXT = 2.2;

/** Output rule 6: a square of 50 mm on MARK, to be measured before anything is cut. Its top left corner is given. */
export function referenceSquare(x: number, top: number, { strip }: Speech = speechIn('en')): Drawn {
  const corners = [
    { x, y: top - REFERENCE_SIDE },
    { x: x + REFERENCE_SIDE, y: top - REFERENCE_SIDE },
    { x: x + REFERENCE_SIDE, y: top },
    { x, y: top },
  ];
  const mark: Mark = {
    layer: 'MARK',
    role: 'reference-square',
    title: strip.square,
    paths: [polyline(corners, true)],
    circles: [],
  };
  const text = textBlock(['50 x 50 mm', strip.measureFirst], { x: x + 4, y: top - 4 }, TEXT);
  return { marks: [mark], labels: text.labels };
}
