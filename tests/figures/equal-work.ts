import { blocks } from '../../src/block/library.ts';
import { pointAlong, segmentsOf } from '../../src/geometry/path.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { drawOrder } from '../../src/writers/draw-order.ts';
import { handOf, WORKED } from '../hands.ts';

/** Chords of each arc for programs that have no arcs; at 3 mm radius within 0.01 mm. */
const CHORDS = 12;

/** The demo hand's strip as other programs are given it, so that they do the same work. */
export interface EqualWork {
  /** Every path of the drawing as our DXF writer gets it: points with bulges. */
  readonly paths: readonly { readonly layer: string; readonly closed: boolean; readonly points: readonly (readonly number[])[] }[];
  /** The cut outline alone as a polygon in OpenSCAD's language. */
  readonly openscad: string;
}

export function equalWork(): EqualWork {
  const block = blocks().find((b) => b.id === 'ring-raised-in-four');
  const made = block ? makePattern({ kind: 'strip', hand: handOf(WORKED), block, options: DEFAULT_STRIP_OPTIONS, date: null }) : null;
  const groups = made?.ok ? drawOrder(made.value.pattern) : null;
  const outline = made?.ok ? made.value.pattern.parts[0]?.outline : undefined;
  if (!groups?.ok || !outline) throw new Error('no strip');
  const paths = groups.value.flatMap(({ items }) =>
    items.flatMap(({ layer, paths: drawn }) =>
      drawn.map(({ closed, vertices }) => ({ layer, closed, points: vertices.map((v) => [v.x, v.y, v.bulge]) })),
    ),
  );
  const points = segmentsOf(outline).flatMap((segment) =>
    segment.bulge === 0 ? [segment.from] : Array.from({ length: CHORDS }, (_, k) => pointAlong(segment, k / CHORDS)),
  );
  return { paths, openscad: `polygon([${points.map(({ x, y }) => `[${x}, ${y}]`).join(', ')}]);\n` };
}
