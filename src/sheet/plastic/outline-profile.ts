import { boxOf, flattened, type LineArcPath } from '../../geometry/path.ts';
import { placedOutline, type SheetPart } from './layout.ts';

/** Height of a row of a profile, mm. */
export const ROW = 1;
/** Farthest step between points on an outline, mm, and how far its chords may lie off the arcs. */
const STEP = 0.25;
const CHORD_ERROR = 0.01;
/** On top of half the gap: no point of an outline is farther from a sampled one than half a step, and the check rounds by 0.01 mm. */
const COVER = STEP / 2 + CHORD_ERROR + 0.01;

/** A part as it lies, widened by half the gap, row by row: what it takes from `left` to `right`, mm from its outline's lower left corner. */
export interface OutlineProfile {
  readonly turned: boolean;
  readonly half: boolean;
  readonly along: number;
  readonly across: number;
  /** Rows below the outline's lower edge. */
  readonly lead: number;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/**
 * The profile of a part. Never takes less than the true outline with half the gap round it; a hollow that opens upward or downward counts as filled. With
 * `swapped` x and y change places, so that rows run across the grain.
 */
export function outlineProfile(part: SheetPart, turned: boolean, half: boolean, gap: number, swapped: boolean): OutlineProfile {
  const outline = placedOutline(part, { part: 0, x: 0, y: 0, turned, ...(half ? { half } : {}) });
  const box = boxOf([outline]);
  const [along, across] = swapped ? [box.maxY, box.maxX] : [box.maxX, box.maxY];
  const reach = gap / 2 + COVER;
  const lead = Math.ceil(reach / ROW);
  const rows = Math.ceil(across / ROW) + 2 * lead;
  const left = new Float64Array(rows).fill(Number.POSITIVE_INFINITY);
  const right = new Float64Array(rows).fill(Number.NEGATIVE_INFINITY);
  for (const point of pointsOn(outline)) {
    const [x, y] = swapped ? [point.y, point.x] : [point.x, point.y];
    const last = Math.min(rows - 1, Math.floor((y + reach) / ROW) + lead);
    for (let row = Math.max(0, Math.floor((y - reach) / ROW) + lead); row <= last; row++) {
      const low = (row - lead) * ROW;
      const off = Math.max(0, low - y, y - low - ROW);
      const wide = Math.sqrt(Math.max(0, reach * reach - off * off));
      left[row] = Math.min(left[row] as number, x - wide);
      right[row] = Math.max(right[row] as number, x + wide);
    }
  }
  return { turned, half, along, across, lead, left, right };
}

function* pointsOn(outline: LineArcPath): Generator<{ x: number; y: number }> {
  const { vertices } = flattened(outline, CHORD_ERROR);
  for (const [i, from] of vertices.entries()) {
    const to = vertices[(i + 1) % vertices.length] ?? from;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / STEP));
    for (let k = 0; k < steps; k++) yield { x: from.x + ((to.x - from.x) * k) / steps, y: from.y + ((to.y - from.y) * k) / steps };
  }
}
