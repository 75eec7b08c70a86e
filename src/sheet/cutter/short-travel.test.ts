import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../geometry/path.ts';
import { shortTravel } from './short-travel.ts';

const place = fc.record({ x: fc.double({ min: 0, max: 600, noNaN: true }), y: fc.double({ min: 0, max: 600, noNaN: true }) });

/** Length of the lifted tool's way from (0, 0) through the places in that order, mm. */
function travelLength(places: readonly Point[], order: readonly number[]): number {
  let from: Point = { x: 0, y: 0 };
  let sum = 0;
  for (const index of order) {
    const to = places[index] as Point;
    sum += Math.hypot(to.x - from.x, to.y - from.y);
    from = to;
  }
  return sum;
}

describe('shortTravel', () => {
  it('visits every place once, and no two edges of its way cross for gain: no turned stretch is shorter', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 25 }), (places) => {
        const order = shortTravel(places, 30);
        expect([...order].sort((a, b) => a - b)).toEqual(places.map((_, k) => k));
        const length = travelLength(places, order);
        for (let i = 0; i < order.length - 1; i++) {
          for (let j = i + 1; j < order.length; j++) {
            const turned = [...order.slice(0, i), ...order.slice(i, j + 1).reverse(), ...order.slice(j + 1)];
            expect(travelLength(places, turned)).toBeGreaterThan(length - 1e-6);
          }
        }
      }),
    );
  });

  it('goes rows to and fro', () => {
    const grid = Array.from({ length: 12 }, (_, k) => ({ x: 10 + 50 * (k % 4), y: 10 + 100 * Math.floor(k / 4) }));
    expect(shortTravel(grid, 20)).toEqual([0, 1, 2, 3, 7, 6, 5, 4, 8, 9, 10, 11]);
  });

  it('has nothing to order in an empty list', () => expect(shortTravel([], 10)).toEqual([]));
});
