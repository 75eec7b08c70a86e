import { type Box, boxOf, type LineArcPath, type Point, pointAlong, segmentsOf } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Label, Part } from '../../pattern/pattern.ts';
import { labelCorners, shiftPart, turnPart } from '../../pattern/place-marks.ts';

/** The part with its outline's box at (x, y), turned counter-clockwise by `angle` (radians, a multiple of a quarter turn); marks and words go with it. */
export function placePart(part: Part, x: number, y: number, angle: number): Part {
  const lying = angle === 0 ? part : turnPart(part, angle);
  const box = boxOf([lying.outline]);
  return shiftPart(lying, x - box.minX, y - box.minY);
}

/** Capital heights of a part's number that are tried in turn, mm. */
const NUMBER_HEIGHTS = [4, 3, 2.5, 2, 1.6, 1.25];
const CLEAR = 0.5;
const STEP = 1;

/** The part with its number drawn on it where nothing else is, as large as there is room; `found` is false when there is none. */
export function numbered(part: Part, number: string): { readonly part: Part; readonly found: boolean } {
  const box = boxOf([part.outline]);
  const taken = takenBoxes(part);
  for (const height of NUMBER_HEIGHTS) {
    for (const angle of [0, 90]) {
      const width = textWidth(number, height);
      const [w, h] = angle === 0 ? [width, height] : [height, width];
      for (let y = box.minY + 1; y + h + 1 <= box.maxY; y += STEP) {
        for (let x = box.minX + 1; x + w + 1 <= box.maxX; x += STEP) {
          const room: Box = { minX: x - CLEAR, minY: y - CLEAR, maxX: x + w + CLEAR, maxY: y + h + CLEAR };
          if (taken.some((t) => overlap(t, room)) || !corners(room).every((p) => inside(p, part.outline))) continue;
          const at = angle === 0 ? { x, y } : { x: x + w, y };
          const label: Label = { layer: 'MARK', text: number, at, height, align: 'left', angle };
          return { part: { ...part, labels: [...part.labels, label] }, found: true };
        }
      }
    }
  }
  return { part, found: false };
}

function takenBoxes(part: Part): readonly Box[] {
  const strokes = part.marks.flatMap((mark) => mark.paths.map((path) => boxOf([path])));
  const circles = part.marks.flatMap((mark) =>
    mark.circles.map(({ center: { x, y }, radius: r }) => ({ minX: x - r, minY: y - r, maxX: x + r, maxY: y + r })),
  );
  const words = part.labels.map((label) => boxOf([{ closed: true, vertices: labelCorners(label).map((p) => ({ ...p, bulge: 0 })) }]));
  return [...strokes, ...circles, ...words, ...part.holes.map((hole) => boxOf([hole]))];
}

function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

function corners({ minX, minY, maxX, maxY }: Box): readonly Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** Chords in which an arc is seen for the question of inside; the room round a number is larger than what they cut off. */
const CHORDS = 8;

/** Whether a ray to the right crosses the outline an odd number of times. */
function inside(p: Point, outline: LineArcPath): boolean {
  let odd = false;
  for (const segment of segmentsOf(outline)) {
    const steps = segment.bulge === 0 ? 1 : CHORDS;
    for (let k = 0; k < steps; k++) {
      const a = pointAlong(segment, k / steps);
      const b = pointAlong(segment, (k + 1) / steps);
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
    }
  }
  return odd;
}
