import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../../tests/by-night.ts';
import { polyline } from '../../geometry/path.ts';
import { contains, OVERLAP, type TileGrid, tileGrid } from './tiles.ts';

function grid(width: number, height: number, most: { width: number; height: number }): TileGrid {
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const made = tileGrid({ minX: 0, minY: 0, maxX: width, maxY: height }, most, [
    polyline(corners, true),
    polyline([corners[0], corners[2]] as never),
  ]);
  if (!made) throw new Error('no grid');
  return made;
}

const side = fc.double({ min: 30, max: 900, noNaN: true });
const most = fc.double({ min: 60, max: 250, noNaN: true });

describe('tileGrid(extent, most, paths)', () => {
  it('covers the outline with windows that are small enough and overlap by 10 mm or more', () => {
    fc.assert(
      fc.property(side, side, most, most, (w, h, mw, mh) => {
        const made = grid(w, h, { width: mw, height: mh });
        for (const { window } of made.tiles) {
          expect(window.maxX - window.minX).toBeLessThanOrEqual(mw + 1e-9);
          expect(window.maxY - window.minY).toBeLessThanOrEqual(mh + 1e-9);
        }
        for (let k = 0; k <= 40; k++) {
          for (const p of [
            { x: w * (k / 40), y: 0 },
            { x: w, y: h * (k / 40) },
            { x: w * (k / 40), y: h * (k / 40) },
          ]) {
            expect(made.tiles.some((tile) => contains(tile.window, p))).toBe(true);
          }
        }
        for (const a of made.tiles) {
          const right = made.tiles.find((b) => b.row === a.row && b.column === a.column + 1);
          if (right) expect(a.window.maxX - right.window.minX).toBeGreaterThanOrEqual(10);
          const below = made.tiles.find((b) => b.column === a.column && b.row === a.row + 1);
          if (below) expect(below.window.maxY - a.window.minY).toBeGreaterThanOrEqual(10);
        }
      }),
      { numRuns: times(12, 50) },
    );
  });

  it('puts each register cross on two tiles or more, each with a name of its own', () => {
    fc.assert(
      fc.property(side, side, most, most, (w, h, mw, mh) => {
        const made = grid(w, h, { width: mw, height: mh });
        for (const cross of made.crosses) expect(made.tiles.filter((t) => contains(t.window, cross.at)).length).toBeGreaterThanOrEqual(2);
        expect(new Set(made.crosses.map((c) => c.name)).size).toBe(made.crosses.length);
        if (made.tiles.length > 1) expect(made.crosses.length).toBeGreaterThanOrEqual(2);
      }),
      { numRuns: times(12, 50) },
    );
  });

  it('keeps crosses off words, where the overlap has room beside them', () => {
    const at = (words: readonly { minX: number; minY: number; maxX: number; maxY: number }[]) =>
      tileGrid(
        { minX: 0, minY: 0, maxX: 150, maxY: 60 },
        { width: 100, height: 60 },
        [
          polyline([
            { x: 1, y: 30 },
            { x: 149, y: 30 },
          ]),
        ],
        words,
      )?.crosses.map((c) => c.at.y) ?? [];
    expect(at([])).toEqual([56, 4]);
    const [high = 0, low] = at([{ minX: 70, minY: 52, maxX: 80, maxY: 58 }]);
    expect(high).toBeLessThan(49);
    expect(high).toBeGreaterThan(40);
    expect(low).toBe(4);
    // Words all the way: the cross stays at its end.
    expect(at([{ minX: 70, minY: 0, maxX: 80, maxY: 60 }])).toEqual([56, 4]);
  });

  it('uses no more tiles than needed and leaves empty ones out', () => {
    expect(grid(150, 50, { width: 150, height: 50 }).tiles).toHaveLength(1);
    expect(grid(151, 50, { width: 150, height: 50 }).tiles).toHaveLength(2);
    expect(grid(2 * 100 - OVERLAP, 50, { width: 100, height: 50 }).tiles).toHaveLength(2);
    const line = polyline([
      { x: 1, y: 1 },
      { x: 299, y: 1 },
    ]);
    const made = tileGrid({ minX: 0, minY: 0, maxX: 300, maxY: 200 }, { width: 120, height: 110 }, [line]);
    expect(made?.rows).toBe(2);
    expect(made?.tiles.map((t) => t.row)).toEqual([2, 2, 2]);
  });

  it('has no grid where a window is all overlap', () => {
    expect(tileGrid({ minX: 0, minY: 0, maxX: 300, maxY: 20 }, { width: 20, height: 50 }, [])).toBeNull();
  });
});
