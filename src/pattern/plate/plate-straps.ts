import { type Body, edgeLength } from '../../geometry/ellipse.ts';
import { hullPerimeter } from '../../geometry/taut-path.ts';
import { type FaceFrame, heldColumns, type PlateFrame } from './plate-frame.ts';
import type { PlateOptions } from './plate-options.ts';
import type { PlateOutline } from './plate-outline.ts';

/** One strap to cut, mm. */
export interface Strap {
  readonly id: 'A' | 'B';
  readonly where: string;
  readonly width: number;
  /** As cut: with its overlap on the hooks, rounded up. */
  readonly length: number;
}

/** Straps are cut to whole steps of this. mm */
const LENGTH_STEP = 5;
/** A strap through the thumb web stays this much inside the radial wing on each side. mm */
const BAR_MARGIN = 1;

/**
 * The straps of a plate: A round the hand through the thumb web, B round the fingers. Beside a single face a strap spans what the plate leaves
 * open, with an overlap on the hooks at both ends; round two faces it goes once round and over itself. Common practice, no source.
 */
export function straps(frame: PlateFrame, outlines: readonly PlateOutline[], options: PlateOptions): readonly Strap[] {
  const [face] = frame.faces;
  const [outline] = outlines;
  if (!face || !outline) return [];
  const single = frame.faces.length === 1;
  const outside = options.skinClearance + options.thickness;
  const hand = frame.section.circumference + 2 * Math.PI * outside;
  const bodies = frame.row.digits.map(
    (d): Body => ({ center: { x: d.x, y: -d.halfDepth }, a: d.halfWidth, b: d.halfDepth, offset: outside }),
  );
  const [only] = bodies;
  const fingers = hullPerimeter(bodies) ?? (only ? edgeLength(only, 0, 2 * Math.PI) : 0);
  const cut = (round: number, covered: number) => {
    const length = single ? Math.max(0, round - covered) + 2 * options.strapOverlap : round + options.strapOverlap;
    return LENGTH_STEP * Math.ceil(length / LENGTH_STEP);
  };
  const first = frame.row.digits[0]?.digit;
  const last = frame.row.digits.at(-1)?.digit;
  const names = first === last ? `${first} finger` : `${first} to ${last}`;
  const bar = Math.max(0, outline.bar.high - outline.bar.low - 2 * BAR_MARGIN);
  return [
    {
      id: 'A',
      where: 'round the hand, through the thumb web',
      width: Math.floor(Math.min(options.strapWidth, bar)),
      length: cut(hand, handCovered(face, outline)),
    },
    {
      id: 'B',
      where: `round the proximal phalanx, ${names}`,
      width: Math.floor(Math.min(options.strapWidth, shortestFinger(face, outline))),
      length: cut(fingers, frame.row.length + outline.walls.radial + outline.walls.ulnar),
    },
  ];
}

function handCovered(face: FaceFrame, outline: PlateOutline): number {
  return face.midLateral + face.wing + outline.bar.out;
}

/** What the shortest held digit's finger part leaves for a strap. */
function shortestFinger(face: FaceFrame, outline: PlateOutline): number {
  const lengths = heldColumns(face).map(({ digit, held }) => {
    const along = outline.distal.find((d) => d.digit === digit)?.along ?? held.edge;
    return along - held.bendEnd - 2 * BAR_MARGIN;
  });
  return Math.max(0, Math.min(...lengths));
}
