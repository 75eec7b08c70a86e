import fc from 'fast-check';
import makerjs from 'makerjs';
import { describe, expect, it } from 'vitest';
import { times } from '../../tests/by-night.ts';
import { offsetOutline } from './offset-outline.ts';
import { arcOf, boxOf, type LineArcPath, pathLength, pointAlong, polyline, segmentsOf, signedArea, vertex } from './path.ts';
import { placePath, reversePath } from './transform.ts';
import { nearestOn } from './validate-outline.ts';

const QUARTER = Math.SQRT2 - 1;

const rectangle = (w: number, h: number) =>
  polyline(
    [
      { x: 0, y: 0 },
      { x: w, y: 0 },
      { x: w, y: h },
      { x: 0, y: h },
    ],
    true,
  );

/** A strip-like outline with everything: round and square corners, a hollow (concave arc) and a concave corner. */
function outline(w: number, h: number, r: number, hollow: number): LineArcPath {
  return {
    closed: true,
    vertices: [
      vertex(r, 0),
      vertex(w, 0),
      vertex(w, h / 2),
      vertex(w - 6, h / 2),
      vertex(w - 6, h),
      vertex(w / 2 + hollow, h, -0.5),
      vertex(w / 2 - hollow, h),
      vertex(r, h, QUARTER),
      vertex(0, h - r),
      vertex(0, r, QUARTER),
    ],
  };
}

function moved(path: LineArcPath, distance: number): LineArcPath {
  const result = offsetOutline(path, distance);
  if (!result.ok) throw new Error(result.faults.map((f) => f.message).join('; '));
  return result.path;
}

const shapes = fc.record({
  w: fc.double({ min: 40, max: 200, noNaN: true }),
  h: fc.double({ min: 15, max: 60, noNaN: true }),
  r: fc.double({ min: 2, max: 6, noNaN: true }),
  hollow: fc.double({ min: 3, max: 6, noNaN: true }),
  turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
});

describe('offsetOutline', () => {
  it('grows a rectangle by rounded corners: length 2 (w + h) + 2 pi d, area w h + d (perimeter) + pi d² (Steiner)', () => {
    const grown = moved(rectangle(30, 20), 0.25);
    expect(pathLength(grown)).toBeCloseTo(100 + 2 * Math.PI * 0.25, 9);
    expect(signedArea(grown)).toBeCloseTo(600 + 100 * 0.25 + Math.PI * 0.0625, 9);
    expect(grown.vertices).toHaveLength(8);
  });

  it('shrinks a hole, which runs clockwise, by the same distance', () => {
    const shrunk = moved(reversePath(rectangle(30, 20)), 0.25);
    const box = boxOf([shrunk]);
    for (const [edge, at] of [
      [box.minX, 0.25],
      [box.minY, 0.25],
      [box.maxX, 29.75],
      [box.maxY, 19.75],
    ] as const)
      expect(edge).toBeCloseTo(at, 12);
    expect(signedArea(shrunk)).toBeCloseTo(-29.5 * 19.5, 9);
    expect(shrunk.vertices).toHaveLength(4);
  });

  it('keeps arcs arcs about the same centre', () => {
    const round: LineArcPath = { closed: true, vertices: [vertex(5, 0, 1), vertex(-5, 0, 1)] };
    for (const segment of segmentsOf(moved(round, 0.1))) expect(arcOf(segment)?.radius).toBeCloseTo(5.1, 12);
    for (const segment of segmentsOf(moved(reversePath(round), 0.1))) expect(arcOf(segment)?.radius).toBeCloseTo(4.9, 12);
  });

  it('stands everywhere at the distance from the outline, whichever way the outline lies, is mirrored or begins', () => {
    fc.assert(
      fc.property(shapes, fc.double({ min: 0.02, max: 0.8, noNaN: true }), fc.nat(9), fc.boolean(), (s, d, first, mirror) => {
        const placed = placePath(outline(s.w, s.h, s.r, s.hollow), { mirrorX: mirror, angle: s.turn, dx: 3, dy: -7 });
        const base = mirror ? reversePath(placed) : placed;
        const path = { closed: true, vertices: [...base.vertices.slice(first), ...base.vertices.slice(0, first)] };
        const original = segmentsOf(path);
        const result = moved(path, d);
        for (const segment of segmentsOf(result)) {
          for (const t of [0, 0.3, 0.5, 0.9]) {
            const p = pointAlong(segment, t);
            expect(Math.abs(Math.min(...original.map((o) => nearestOn(o, p).distance)) - d)).toBeLessThan(1e-6);
          }
        }
        expect(signedArea(result)).toBeGreaterThan(signedArea(path));
      }),
      { numRuns: times(20, 60) },
    );
  });

  it("agrees with makerjs' outline in length and extents", () => {
    // For some shapes makerjs joins no outline at all, or loses some edges of it, and gives nothing to compare; it must be few of them.
    let judged = 0;
    fc.assert(
      fc.property(shapes, fc.double({ min: 0.05, max: 0.8, noNaN: true }), (s, d) => {
        const path = outline(s.w, s.h, s.r, s.hollow);
        const ours = moved(path, d);
        const theirs = makerjs.model.outline(makerModel(path), d, 0, false);
        const box = makerjs.measure.modelExtents(theirs);
        const chains = makerjs.model.findChains(theirs) as makerjs.IChain[];
        if (!box || chains.length !== 1 || !chains[0]?.endless) return;
        judged++;
        const own = boxOf([ours]);
        for (const [a, b] of [
          [own.minX, box.low[0]],
          [own.minY, box.low[1]],
          [own.maxX, box.high[0]],
          [own.maxY, box.high[1]],
        ])
          expect(a).toBeCloseTo(b ?? Number.NaN, 3);
        let length = 0;
        const add = ({ pathContext }: { pathContext: makerjs.IPath }) => {
          length += makerjs.measure.pathLength(pathContext);
        };
        makerjs.model.walk(theirs, { onPath: add });
        expect(Math.abs(length - pathLength(ours))).toBeLessThan(0.02);
      }),
      { numRuns: 15 },
    );
    expect(judged).toBeGreaterThanOrEqual(10);
  });

  it('names every feature that vanishes', () => {
    const narrow = (width: number): LineArcPath =>
      polyline(
        [
          { x: 0, y: 0 },
          { x: 40, y: 0 },
          { x: 40, y: 20 },
          { x: 20 + width, y: 20 },
          { x: 20 + width, y: 10 },
          { x: 20, y: 10 },
          { x: 20, y: 20 },
          { x: 0, y: 20 },
        ],
        true,
      );
    const edge = offsetOutline(narrow(0.5), 0.25);
    expect(edge.ok ? [] : edge.faults.map((f) => [f.code, f.message])).toEqual([
      ['EDGE_VANISHES', 'the edge of 0.500 mm at 20.25, 10.00 vanishes when the outline moves by 0.250 mm'],
    ]);
    expect(offsetOutline(narrow(0.52), 0.25).ok).toBe(true);
    const hollow: LineArcPath = {
      closed: true,
      vertices: [vertex(0, 0), vertex(40, 0), vertex(40, 20), vertex(21, 20, -1), vertex(19, 20), vertex(0, 20)],
    };
    const arc = offsetOutline(hollow, 1);
    expect(arc.ok ? [] : arc.faults.map((f) => [f.code, f.at.x, f.at.y])).toEqual([['ARC_VANISHES', 20, 19]]);
    // A keyhole: its mouth is narrower than its bottom, so all edges survive and the mouth closes.
    const keyhole: LineArcPath = {
      closed: true,
      vertices: [
        vertex(0, 0),
        vertex(40, 0),
        vertex(40, 20),
        vertex(20.2, 20),
        vertex(23, 10),
        vertex(17, 10),
        vertex(19.8, 20),
        vertex(0, 20),
      ],
    };
    const gap = offsetOutline(keyhole, 0.3);
    expect(gap.ok ? [] : gap.faults.map((f) => f.code)).toEqual(['GAP_CLOSES']);
  });

  it('leaves the outline as it is for a distance of 0', () => {
    const path = rectangle(10, 10);
    expect(offsetOutline(path, 0)).toEqual({ ok: true, path });
  });
});

/** Absolute points of an arc in makerjs's own terms: centre, radius, degrees counter-clockwise from start to end. */
function makerModel(path: LineArcPath): makerjs.IModel {
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  const paths = segmentsOf(path).map((segment): [string, makerjs.IPath] => {
    const arc = arcOf(segment);
    const id = `${segment.from.x} ${segment.from.y}`;
    if (!arc) return [id, new makerjs.paths.Line([segment.from.x, segment.from.y], [segment.to.x, segment.to.y])];
    const [a, b] = [degrees(arc.startAngle), degrees(arc.startAngle + arc.sweep)];
    const [start, end] = arc.sweep > 0 ? [a, b] : [b, a];
    return [id, new makerjs.paths.Arc([arc.center.x, arc.center.y], arc.radius, start, end)];
  });
  return { paths: Object.fromEntries(paths) };
}
