import { describe, expect, it } from 'vitest';
import { chordPoints, clipToPolygon, insidePolygon, widestSpan } from './inside.ts';
import { vertex } from './path.ts';

/** A U: 30 wide, 20 high, with a notch of 10 from above. */
const u = [
  [0, 0],
  [30, 0],
  [30, 20],
  [20, 20],
  [20, 8],
  [10, 8],
  [10, 20],
  [0, 20],
].map(([x = 0, y = 0]) => ({ x, y }));

describe('insidePolygon', () => {
  it.each([
    [5, 15, true],
    [15, 15, false],
    [15, 4, true],
    [-1, 4, false],
  ])('%d, %d: %s', (x, y, inside) => expect(insidePolygon(u, { x, y })).toBe(inside));
});

describe('clipToPolygon', () => {
  it('gives the pieces inside, shortened where they meet the edge', () => {
    expect(clipToPolygon(u, { x: -5, y: 15 }, { x: 35, y: 15 }, 1)).toEqual([
      [
        { x: 1, y: 15 },
        { x: 9, y: 15 },
      ],
      [
        { x: 21, y: 15 },
        { x: 29, y: 15 },
      ],
    ]);
  });
  it.each([0, 1e-9, -1e-9])('ends before a stretch of the edge along which it runs, %d beside it', (beside) => {
    // From the left through the U at the level of its notch, whose bottom is from 10 to 20.
    expect(clipToPolygon(u, { x: -5, y: 8 + beside }, { x: 35, y: 8 + beside }, 1).map((piece) => piece.map(({ x }) => x))).toEqual([
      [expect.closeTo(1, 6), expect.closeTo(9, 6)],
      [expect.closeTo(21, 6), expect.closeTo(29, 6)],
    ]);
  });
  it('leaves an end that lies inside where it is', () => {
    expect(clipToPolygon(u, { x: 15, y: 4 }, { x: 35, y: 4 }, 1)).toEqual([
      [
        { x: 15, y: 4 },
        { x: 29, y: 4 },
      ],
    ]);
  });
});

describe('widestSpan', () => {
  it('is the widest stretch of a level, or null outside', () => {
    expect(widestSpan(u, 4)).toEqual({ from: 0, to: 30 });
    expect(widestSpan(u, 15)).toEqual({ from: 0, to: 10 });
    expect(widestSpan(u, 25)).toBeNull();
  });
});

describe('chordPoints', () => {
  it('stays within 0.01 mm of the arcs', () => {
    const circle = { closed: true, vertices: [vertex(20, 0, 1), vertex(-20, 0, 1)] };
    const points = chordPoints(circle);
    for (const [i, p] of points.entries()) {
      const next = points[(i + 1) % points.length] ?? p;
      expect(Math.hypot((p.x + next.x) / 2, (p.y + next.y) / 2)).toBeGreaterThan(20 - 0.0101);
    }
  });
});
