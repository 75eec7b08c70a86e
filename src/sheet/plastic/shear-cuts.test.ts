import { describe, expect, it } from 'vitest';
import type { Box } from '../../geometry/path.ts';
import { area, type Shearing, shearCuts } from './shear-cuts.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number): Box => ({ minX, minY, maxX, maxY });
const SHEET = box(0, 0, 100, 60);

/** Makes every cut on the pieces in hand; throws when a cut does not run from edge to edge of a piece that is there. */
function cutApart({ cuts }: Shearing, sheet: Box): readonly Box[] {
  let pieces = [sheet];
  for (const { direction, at, piece } of cuts) {
    const found = pieces.find((p) => p.minX === piece.minX && p.minY === piece.minY && p.maxX === piece.maxX && p.maxY === piece.maxY);
    if (!found) throw new Error('a piece is cut that is not there');
    const halves =
      direction === 'along'
        ? [
            { ...piece, maxY: at },
            { ...piece, minY: at },
          ]
        : [
            { ...piece, maxX: at },
            { ...piece, minX: at },
          ];
    pieces = [...pieces.filter((p) => p !== found), ...halves];
  }
  return pieces;
}

describe('shearCuts', () => {
  it('takes two rows apart so that every piece has one part at most, in an order that can be done', () => {
    const parts = [box(5, 5, 40, 15), box(42, 5, 90, 15), box(5, 17, 60, 27)];
    const found = shearCuts(parts, SHEET, 2, 5);
    const pieces = cutApart(found as Shearing, SHEET);
    const inside = (p: Box, piece: Box) => p.minX >= piece.minX && p.minY >= piece.minY && p.maxX <= piece.maxX && p.maxY <= piece.maxY;
    for (const part of parts) expect(pieces.filter((piece) => inside(part, piece))).toHaveLength(1);
    for (const piece of pieces) expect(parts.filter((part) => inside(part, piece)).length).toBeLessThanOrEqual(1);
    expect(pieces.reduce((sum, piece) => sum + area(piece), 0)).toBeCloseTo(area(SHEET), 9);
    for (const rest of found?.remnants ?? []) expect(pieces).toContainEqual(rest);
  });

  it('keeps the larger rest whole', () => {
    expect(shearCuts([box(5, 5, 40, 40)], SHEET, 2, 5)?.remnants[0]).toEqual(box(41, 0, 100, 60));
    expect(shearCuts([box(5, 5, 90, 15)], SHEET, 2, 5)?.remnants[0]).toEqual(box(0, 16, 100, 60));
  });

  it('is null for a pinwheel, and has the whole sheet left without parts', () => {
    const pinwheel = [box(0, 0, 20, 10), box(20, 0, 30, 20), box(10, 20, 30, 30), box(0, 10, 10, 30)];
    expect(shearCuts(pinwheel, SHEET, 0, 5)).toBeNull();
    expect(shearCuts([], SHEET, 0, 5)).toEqual({ cuts: [], remnants: [SHEET] });
  });
});
