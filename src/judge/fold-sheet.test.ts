import { describe, expect, it } from 'vitest';
import type { DigitName } from '../hand/digits.ts';
import type { FlatPlate } from './flat-plate.ts';
import { foldSheet } from './fold-sheet.ts';
import { minus, size } from './space.ts';

const outline = { closed: true, vertices: [] };

/** A sheet with one bend: its begin and end lines at these heights over x -40, 0, 40. */
function sheet(begin: readonly [number, number, number], length: number): FlatPlate {
  const line = (more: number) => [-40, 0, 40].map((x, k) => ({ x, y: (begin[k] as number) + more }));
  return {
    outline,
    bends: [{ digits: ['index', 'long'], middle: line(length / 2), begin: line(0), end: line(length) }],
    midlines: new Map<DigitName, readonly { x: number; y: number }[]>([
      [
        'index',
        [
          { x: -10, y: 0 },
          { x: -10, y: 60 },
        ],
      ],
      [
        'long',
        [
          { x: 10, y: 0 },
          { x: 10, y: 60 },
        ],
      ],
    ]),
    joints: [],
    midLaterals: { radial: null, ulnar: null },
  };
}

describe('foldSheet', () => {
  it('keeps every length across a straight bend, square or oblique, to under 0.05 mm', () => {
    for (const begin of [
      [0, 0, 0],
      [7, 0, -7],
    ] as const) {
      for (const angle of [15, 45, 90]) {
        const { into, sideOf } = foldSheet(sheet(begin, 14), angle, -1, 0);
        const lay = (x: number, y: number) => into({ x, y }, sideOf({ x, y }));
        let most = 0;
        for (let x = -40; x < 40; x += 2) {
          for (let y = -20; y < 50; y += 2) {
            for (const [dx, dy] of [
              [0.5, 0],
              [0, 0.5],
              [0.4, 0.3],
            ] as const) {
              const laid = size(minus(lay(x + dx, y + dy), lay(x, y)));
              most = Math.max(most, Math.abs(laid - Math.hypot(dx, dy)));
            }
          }
        }
        expect(most).toBeLessThan(0.001);
        // Rigid on both sides of the bend: over 100 mm of edge too.
        expect(size(minus(lay(-40, 45), lay(40, 45)))).toBeCloseTo(80, 6);
      }
    }
  });

  it('stands the sheet, seen from the side, at the angle: a bent sheet of sheet metal is as long as its two legs and the bend allowance', () => {
    const { into, sideOf } = foldSheet(sheet([0, 0, 0], (Math.PI / 2) * 1.5), 90, -1, 0);
    const lay = (y: number) => into({ x: 0, y }, sideOf({ x: 0, y }));
    // 90 degrees, R 1, T 1, K 0.5: allowance 2.356194; the neutral line runs 1.5 round the bar (sheet-metal handbooks).
    const end = lay(2.356194490192345 + 10);
    expect([end.y, end.z]).toEqual([expect.closeTo(1.5, 9), expect.closeTo(-11.5, 9)]);
  });

  it('bends a line with kinks column by column, which no sheet can do without stretching', () => {
    const { into, sideOf } = foldSheet(sheet([0, 0, -12], 14), 90, -1, 0);
    const lay = (x: number) => into({ x, y: 40 }, sideOf({ x, y: 40 }));
    expect(size(minus(lay(20), lay(20.5)))).toBeGreaterThan(0.5 * 1.03);
    expect(size(minus(lay(-20), lay(-20.5)))).toBeCloseTo(0.5, 9);
  });
});
