import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcOf, type Point, type Segment } from '../../geometry/path.ts';
import { ARC_ERROR, arcCubics, cubicError } from './pdf-path.ts';

/** Output rule 4: arcs in a PDF are within this, mm. */
const RULE = 0.001;

/** Largest distance of the curves from the arc's circle, by 64 samples each. */
function sampledError(segment: Segment): number {
  const arc = arcOf(segment);
  const cubics = arcCubics(segment);
  if (!arc || !cubics) throw new Error('not an arc');
  let from: Point = segment.from;
  let worst = 0;
  for (const [p, q, end] of cubics) {
    for (let k = 0; k <= 64; k++) {
      const t = k / 64;
      const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      const x = a * from.x + b * p.x + c * q.x + d * end.x;
      const y = a * from.y + b * p.y + c * q.y + d * end.y;
      worst = Math.max(worst, Math.abs(Math.hypot(x - arc.center.x, y - arc.center.y) - arc.radius));
    }
    from = end;
  }
  return worst;
}

describe('arcCubics(segment)', () => {
  it('stays within 0.001 mm of any arc of up to half a circle, both ways', () => {
    const coordinate = fc.double({ min: -300, max: 300, noNaN: true });
    const bulge = fc.oneof(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: -1, max: -0.01, noNaN: true }));
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, coordinate, bulge, (x1, y1, x2, y2, b) => {
        fc.pre(Math.hypot(x2 - x1, y2 - y1) > 0.01);
        const segment = { from: { x: x1, y: y1 }, to: { x: x2, y: y2 }, bulge: b };
        expect(sampledError(segment)).toBeLessThan(RULE);
        expect(arcCubics(segment)?.at(-1)?.[2]).toEqual(segment.to);
      }),
    );
  });

  it('keeps its own, narrower bound on an arc of 500 mm radius', () => {
    const error = sampledError({ from: { x: 500, y: 0 }, to: { x: -500, y: 0 }, bulge: 1 });
    expect(error).toBeLessThanOrEqual(ARC_ERROR * 1.0001);
    expect(error).toBeGreaterThan(ARC_ERROR / 10);
  });

  it('leaves a straight segment alone', () => {
    expect(arcCubics({ from: { x: 0, y: 0 }, to: { x: 1, y: 0 }, bulge: 0 })).toBeNull();
  });
});

describe('cubicError(radius, sweep)', () => {
  // The best-known case: the cubic for a quarter circle is 0.0273 % of the radius outside it (standard result for Bézier arcs).
  it('is 0.000273 radii for a quarter circle', () => {
    expect(cubicError(1, Math.PI / 2)).toBeCloseTo(0.000273, 6);
  });

  it.each([0.2, 0.5, 1, Math.PI / 2])('is what sampling finds for a sweep of %f', (sweep) => {
    const handle = (4 / 3) * Math.tan(sweep / 4);
    const [c, s] = [Math.cos(sweep), Math.sin(sweep)];
    let worst = 0;
    for (let k = 0; k <= 2000; k++) {
      const t = k / 2000;
      const [a, b, d, e] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      worst = Math.max(worst, Math.abs(Math.hypot(a + b + d * (c + handle * s) + e * c, b * handle + d * (s - handle * c) + e * s) - 1));
    }
    expect(Math.abs(cubicError(1, sweep) / worst - 1)).toBeLessThan(0.0002);
  });
});
