import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcOf, headings, segmentsOf, signedArea } from './path.ts';
import { roundCorners } from './round-corners.ts';
import { placePoint } from './transform.ts';
import { outlineFaults } from './validate-outline.ts';

const square = (side: number, radius: number) =>
  [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ].map(([x = 0, y = 0]) => ({ x, y, radius }));

/** A star of n corners round the origin: radii in mm, always simple and counter-clockwise. */
const star = fc.array(fc.double({ min: 30, max: 70, noNaN: true }), { minLength: 5, maxLength: 11 }).map((radii) =>
  radii.map((r, k) => ({
    x: r * Math.cos((2 * Math.PI * k) / radii.length),
    y: r * Math.sin((2 * Math.PI * k) / radii.length),
    radius: 8,
  })),
);

describe('roundCorners', () => {
  it('takes (4 - pi) r² off a square', () => {
    const { outline, corners } = roundCorners(square(40, 6));
    expect(signedArea(outline)).toBeCloseTo(1600 - (4 - Math.PI) * 36, 9);
    expect(corners.map((c) => c.radius)).toEqual([6, 6, 6, 6]);
    expect(corners.every((c) => c.bend === 'convex')).toBe(true);
  });

  it('gives both corners of a short edge the largest equal radius that leaves a straight between them', () => {
    const { outline, corners } = roundCorners(square(10, 20));
    expect(corners.every((c) => c.radius > 4.4 && c.radius < 4.5)).toBe(true);
    expect(outlineFaults(outline, 'outside')).toEqual([]);
  });

  it('joins lines and arcs tangentially and leaves a sound outline, however the polygon is turned', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 0, max: 6, noNaN: true }), (corners, angle) => {
        const turned = corners.map((c) => ({ ...c, ...placePoint(c, { angle, dx: 3, dy: -2 }) }));
        const { outline } = roundCorners(turned);
        expect(outlineFaults(outline, 'outside')).toEqual([]);
        const segments = segmentsOf(outline);
        for (const [i, segment] of segments.entries()) {
          const next = segments[(i + 1) % segments.length] ?? segment;
          const kink = headings(next).start - headings(segment).end;
          expect(Math.abs(Math.sin(kink / 2))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('rounds a hollow corner clockwise', () => {
    const corners = [
      [0, 0],
      [60, 0],
      [60, 30],
      [30, 30],
      [30, 60],
      [0, 60],
    ].map(([x = 0, y = 0]) => ({ x, y, radius: 7 }));
    const { outline, corners: rounded } = roundCorners(corners);
    expect(rounded.filter((c) => c.bend === 'concave').map((c) => c.at)).toEqual([{ x: 30, y: 30 }]);
    expect(segmentsOf(outline).flatMap((s) => arcOf(s)?.radius ?? [])).toHaveLength(6);
    expect(segmentsOf(outline).filter((s) => s.bulge < 0)).toHaveLength(1);
  });

  it('makes one corner of two that are too near to be rounded, and none of a straight one', () => {
    const corners = [
      { x: 0, y: 0, radius: 6 },
      { x: 25, y: 0, radius: 6 },
      { x: 50, y: 0, radius: 6 },
      { x: 50, y: 38.5, radius: 6 },
      { x: 48.5, y: 40, radius: 6 },
      { x: 0, y: 40, radius: 6 },
    ];
    const { outline, corners: rounded } = roundCorners(corners);
    expect(rounded).toHaveLength(4);
    expect(outlineFaults(outline, 'outside')).toEqual([]);
  });
});
