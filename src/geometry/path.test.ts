import { Arc, Circle as FlattenCircle, Point as FlattenPoint, Segment as FlattenSegment, Polygon } from '@flatten-js/core';
import fc from 'fast-check';
import makerjs from 'makerjs';
import { describe, expect, it } from 'vitest';
import { arcOf, boxOf, headings, type LineArcPath, pathLength, pointAlong, polyline, segmentsOf, signedArea, vertex } from './path.ts';
import { placePath, reversePath } from './transform.ts';
import { outlineFaults } from './validate-outline.ts';

/** A closed outline with arcs both ways: a slot with one side drawn in and one side bulged out. */
const SLOT: LineArcPath = {
  closed: true,
  vertices: [vertex(0, 0), vertex(40, 0, 0.6), vertex(40, 20, 0.2), vertex(22, 21, -0.4), vertex(12, 21), vertex(0, 20, 1)],
};

const move = fc.record({
  mirrorX: fc.boolean(),
  angle: fc.double({ min: -4, max: 4, noNaN: true }),
  dx: fc.double({ min: -99, max: 99, noNaN: true }),
  dy: fc.double({ min: -99, max: 99, noNaN: true }),
});

describe('length, area and box of a line-arc path', () => {
  it('agree with makerjs and @flatten-js/core', () => {
    const edges = segmentsOf(SLOT).map((s) => {
      const arc = arcOf(s);
      if (!arc) return new FlattenSegment(new FlattenPoint(s.from.x, s.from.y), new FlattenPoint(s.to.x, s.to.y));
      return new Arc(new FlattenPoint(arc.center.x, arc.center.y), arc.radius, arc.startAngle, arc.startAngle + arc.sweep, arc.sweep > 0);
    });
    const polygon = new Polygon(edges);
    expect(signedArea(SLOT)).toBeCloseTo(polygon.area(), 6);
    expect(boxOf([SLOT]).maxX).toBeCloseTo(polygon.box.xmax, 9);
    expect(boxOf([SLOT]).minY).toBeCloseTo(polygon.box.ymin, 9);
    const paths = Object.fromEntries(
      segmentsOf(SLOT).map((s, k) => {
        const arc = arcOf(s);
        const degrees = (r: number) => (r * 180) / Math.PI;
        if (!arc) return [`s${k}`, new makerjs.paths.Line([s.from.x, s.from.y], [s.to.x, s.to.y])];
        const [from, to] = arc.sweep > 0 ? [arc.startAngle, arc.startAngle + arc.sweep] : [arc.startAngle + arc.sweep, arc.startAngle];
        return [`s${k}`, new makerjs.paths.Arc([arc.center.x, arc.center.y], arc.radius, degrees(from), degrees(to))];
      }),
    );
    expect(pathLength(SLOT)).toBeCloseTo(makerjs.measure.modelPathLength({ paths }), 6);
    const box = makerjs.measure.modelExtents({ paths });
    expect(boxOf([SLOT]).minX).toBeCloseTo(box?.low[0] ?? Number.NaN, 6);
    expect(boxOf([SLOT]).maxY).toBeCloseTo(box?.high[1] ?? Number.NaN, 6);
  });

  it('of two half circles are those of the circle', () => {
    const circle: LineArcPath = { closed: true, vertices: [vertex(-3, 1, 1), vertex(5, 1, 1)] };
    expect(signedArea(circle)).toBeCloseTo(new FlattenCircle(new FlattenPoint(1, 1), 4).toArc().length * 2, 9);
    expect(pathLength(circle)).toBeCloseTo(8 * Math.PI, 12);
    expect(boxOf([circle])).toEqual({ minX: -3, minY: expect.closeTo(-3, 12), maxX: 5, maxY: expect.closeTo(5, 12) });
  });

  it('do not change when it is moved, and change sign when it is mirrored or reversed', () => {
    fc.assert(
      fc.property(move, (placement) => {
        const moved = placePath(SLOT, placement);
        expect(pathLength(moved)).toBeCloseTo(pathLength(SLOT), 8);
        expect(signedArea(moved)).toBeCloseTo((placement.mirrorX ? -1 : 1) * signedArea(SLOT), 6);
        expect(signedArea(reversePath(moved))).toBeCloseTo(-signedArea(moved), 6);
        expect(pathLength(reversePath(moved))).toBeCloseTo(pathLength(SLOT), 8);
      }),
    );
  });

  it('headings are the directions of the points just inside the ends', () => {
    for (const segment of segmentsOf(SLOT)) {
      const near = pointAlong(segment, 1e-6);
      const { start } = headings(segment);
      const angle = Math.atan2(near.y - segment.from.y, near.x - segment.from.x);
      expect(Math.cos(angle - start)).toBeGreaterThan(1 - 1e-6);
    }
  });
});

describe('outlineFaults', () => {
  const rectangle = polyline(
    [
      { x: 0, y: 0 },
      { x: 30, y: 0 },
      { x: 30, y: 20 },
      { x: 0, y: 20 },
    ],
    true,
  );
  const codes = (path: LineArcPath, role: 'outside' | 'hole' = 'outside') => outlineFaults(path, role).map((f) => f.code);
  const through = (points: readonly [number, number, number?][], closed = true): LineArcPath => ({
    closed,
    vertices: points.map(([x, y, b = 0]) => vertex(x, y, b)),
  });

  it('finds none in sound outlines, wherever they start and however they are moved', () => {
    fc.assert(
      fc.property(move, fc.nat(5), fc.constantFrom(rectangle, SLOT), (placement, shift, path) => {
        const moved = placePath(path, { ...placement, mirrorX: false });
        const vertices = [...moved.vertices.slice(shift), ...moved.vertices.slice(0, shift)];
        expect(codes({ closed: true, vertices })).toEqual([]);
        expect(codes(reversePath({ closed: true, vertices }), 'hole')).toEqual([]);
        expect(codes(reversePath({ closed: true, vertices }))).toEqual(['WRONG_WAY']);
      }),
    );
  });

  it.each([
    [
      'an open path',
      through(
        [
          [0, 0],
          [9, 0],
          [9, 9],
        ],
        false,
      ),
      ['NOT_CLOSED'],
    ],
    [
      'a coordinate without a value',
      through([
        [0, 0],
        [Number.NaN, 0],
        [9, 9],
      ]),
      ['NOT_FINITE'],
    ],
    [
      'an endless bulge',
      through([
        [0, 0],
        [9, 0, Number.POSITIVE_INFINITY],
        [9, 9],
      ]),
      ['NOT_FINITE'],
    ],
    ['one edge', through([[0, 0]]), ['TOO_FEW_EDGES']],
    [
      'a repeated point',
      through([
        [0, 0],
        [9, 0],
        [9, 0],
        [9, 9],
      ]),
      ['ZERO_EDGE'],
    ],
    [
      'an edge of half a mm',
      through([
        [0, 0],
        [9, 0],
        [9, 0.5],
        [0, 9],
      ]),
      ['SHORT_EDGE'],
    ],
    [
      'an arc of more than half a circle',
      through([
        [0, 0],
        [9, 0, 1.5],
        [9, 9],
      ]),
      ['BULGE_TOO_LARGE'],
    ],
    [
      'a figure of eight',
      through([
        [0, 0],
        [20, 10],
        [20, 0],
        [0, 10.5],
      ]),
      ['CROSSES_ITSELF'],
    ],
    [
      'an arc that bulges through the other side',
      through([
        [0, 0],
        [20, 0],
        [20, 4, -1],
        [0, 4],
      ]),
      ['WRONG_WAY', 'CROSSES_ITSELF'],
    ],
    [
      'a doubled edge',
      through([
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 10],
        [10, 20],
        [10, 10],
        [0, 10],
      ]),
      ['CROSSES_ITSELF'],
    ],
    [
      'a neck of 0.6 mm',
      through([
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 10],
        [10, 0.6],
        [9, 0.6],
        [9, 10],
        [0, 10],
      ]),
      ['NECK'],
    ],
  ] as const)('names %s', (_, path, expected) => {
    expect([...new Set(codes(path))]).toEqual(expected);
  });
});
