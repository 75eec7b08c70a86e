import type { Box } from '../../geometry/path.ts';
import { SAME_POINT } from '../../units/tolerance.ts';

/** One cut with shears from edge to edge of the piece in hand. mm from the sheet's lower left corner. */
export interface ShearCut {
  /** The line is parallel to x (`along` the grain) at height `at`, or parallel to y (`across` it). */
  readonly direction: 'along' | 'across';
  readonly at: number;
  /** The piece that is cut in two. */
  readonly piece: Box;
}

export interface Shearing {
  /** In the order of cutting: a piece is cut only after it was cut free. */
  readonly cuts: readonly ShearCut[];
  /** What is left without a part, mm; the largest first. */
  readonly remnants: readonly Box[];
}

/**
 * How to cut the boxes apart with cuts from edge to edge alone, outer cuts first; null when that is not possible. Found from the boxes alone, so that
 * it also judges a layout. First the rests to the right and above are cut off whole where they are at least `worth` mm wide, then the groups between
 * which a line runs free, along before across. Cuts lie in the middle of the room between boxes.
 */
export function shearCuts(boxes: readonly Box[], sheet: Box, gap: number, worth: number): Shearing | null {
  const cuts: ShearCut[] = [];
  const remnants: Box[] = [];
  const part = (piece: Box, inside: readonly Box[]): boolean => {
    let here = piece;
    for (const direction of restOrder(here, inside)) {
      const high = Math.max(...inside.map((b) => upper(b, direction)));
      const edge = upper(here, direction);
      const at = Math.min(high + gap / 2, edge);
      if (edge - at < worth) continue;
      cuts.push({ direction, at, piece: here });
      remnants.push(direction === 'along' ? { ...here, minY: at } : { ...here, minX: at });
      here = direction === 'along' ? { ...here, maxY: at } : { ...here, maxX: at };
    }
    if (inside.length === 1) return true;
    for (const direction of ['along', 'across'] as const) {
      const groups = groupsBetween(inside, direction);
      if (groups.length < 2) continue;
      let left = here;
      const pieces = groups.map((group, k) => {
        const next = groups[k + 1];
        if (!next) return { piece: left, group };
        const at = (Math.max(...group.map((b) => upper(b, direction))) + Math.min(...next.map((b) => lower(b, direction)))) / 2;
        cuts.push({ direction, at, piece: left });
        const cut = direction === 'along' ? { ...left, maxY: at } : { ...left, maxX: at };
        left = direction === 'along' ? { ...left, minY: at } : { ...left, minX: at };
        return { piece: cut, group };
      });
      return pieces.every((p) => part(p.piece, p.group));
    }
    return false;
  };
  if (boxes.length === 0) return { cuts, remnants: [sheet] };
  if (!part(sheet, boxes)) return null;
  return { cuts, remnants: remnants.sort((a, b) => area(b) - area(a)) };
}

/** The larger of the two rests first: it stays whole. */
function restOrder(piece: Box, inside: readonly Box[]): readonly ShearCut['direction'][] {
  const above = (piece.maxY - Math.max(...inside.map((b) => b.maxY))) * (piece.maxX - piece.minX);
  const right = (piece.maxX - Math.max(...inside.map((b) => b.maxX))) * (piece.maxY - piece.minY);
  return above >= right ? ['along', 'across'] : ['across', 'along'];
}

/** Boxes in groups between which a line in this direction touches none. */
function groupsBetween(boxes: readonly Box[], direction: ShearCut['direction']): readonly (readonly Box[])[] {
  const sorted = boxes.toSorted((a, b) => lower(a, direction) - lower(b, direction));
  const groups: Box[][] = [];
  let reach = Number.NEGATIVE_INFINITY;
  for (const box of sorted) {
    if (lower(box, direction) >= reach - SAME_POINT) groups.push([box]);
    else groups.at(-1)?.push(box);
    reach = Math.max(reach, upper(box, direction));
  }
  return groups;
}

function lower(box: Box, direction: ShearCut['direction']): number {
  return direction === 'along' ? box.minY : box.minX;
}

function upper(box: Box, direction: ShearCut['direction']): number {
  return direction === 'along' ? box.maxY : box.maxX;
}

export function area(box: Box): number {
  return (box.maxX - box.minX) * (box.maxY - box.minY);
}
