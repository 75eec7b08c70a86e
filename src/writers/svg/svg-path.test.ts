import { describe, expect, it } from 'vitest';
import { type LineArcPath, polyline, vertex } from '../../geometry/path.ts';
import { svgPathData } from './svg-path.ts';

const EXTENTS = { minX: 0, minY: 0, maxX: 100, maxY: 50 };
const data = (path: LineArcPath) => svgPathData([path], [], EXTENTS);
const QUARTER = Math.SQRT2 - 1;

describe('svgPathData(paths, circles, extents)', () => {
  it('turns y over and writes four decimals', () => {
    const path = polyline([
      { x: 0, y: 0 },
      { x: 1 / 3, y: 50 },
    ]);
    expect(data(path)).toBe('M 0.0000 50.0000 L 0.3333 0.0000');
  });

  it('starts at the upper left of the extents', () => {
    const extents = { minX: -10, minY: -20, maxX: 10, maxY: 20 };
    const path = polyline([
      { x: -10, y: 20 },
      { x: 10, y: -20 },
    ]);
    expect(svgPathData([path], [], extents)).toBe('M 0.0000 0.0000 L 20.0000 40.0000');
  });

  it('closes a straight last segment by Z alone', () => {
    const triangle = polyline(
      [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 0, y: 10 },
      ],
      true,
    );
    expect(data(triangle)).toBe('M 0.0000 50.0000 L 10.0000 50.0000 L 0.0000 40.0000 Z');
  });

  it('draws a curved last segment back to the start', () => {
    const path = { closed: true, vertices: [vertex(0, 0), vertex(10, 0), vertex(10, 10, QUARTER)] };
    expect(data(path)).toBe('M 0.0000 50.0000 L 10.0000 50.0000 L 10.0000 40.0000 A 10.0000 10.0000 0 0 0 0.0000 50.0000 Z');
  });

  // Counter-clockwise from (10, 0) to (0, 10) round the origin; on a screen that is still counter-clockwise: sweep flag 0 (SVG 2, 9.3.8).
  it('keeps the sense of an arc', () => {
    expect(data({ closed: false, vertices: [vertex(10, 0, QUARTER), vertex(0, 10)] })).toBe(
      'M 10.0000 50.0000 A 10.0000 10.0000 0 0 0 0.0000 40.0000',
    );
    expect(data({ closed: false, vertices: [vertex(0, 10, -QUARTER), vertex(10, 0)] })).toBe(
      'M 0.0000 40.0000 A 10.0000 10.0000 0 0 1 10.0000 50.0000',
    );
  });

  it('writes a half circle as two quarters, so that rounding cannot move its centre', () => {
    const path = { closed: false, vertices: [vertex(20, 10, 1), vertex(0, 10)] };
    expect(data(path)).toBe('M 20.0000 40.0000 A 10.0000 10.0000 0 0 0 10.0000 30.0000 A 10.0000 10.0000 0 0 0 0.0000 40.0000');
  });

  it('writes a circle as a closed subpath and joins subpaths', () => {
    const line = polyline([
      { x: 0, y: 0 },
      { x: 1, y: 0 },
    ]);
    const text = svgPathData([line, line], [{ center: { x: 50, y: 25 }, radius: 2 }], EXTENTS);
    expect(text.match(/M/g)).toHaveLength(3);
    expect(text).toMatch(/M 52\.0000 25\.0000 (A 2\.0000 2\.0000 0 0 0 \S+ \S+ ){4}Z$/);
  });

  it('never writes an exponent or minus zero, and throws where there is no number', () => {
    const path = polyline([
      { x: -1e-9, y: 50 + 1e-9 },
      { x: 1e-7, y: 1e-7 },
    ]);
    expect(data(path)).toBe('M 0.0000 0.0000 L 0.0000 50.0000');
    expect(() =>
      data(
        polyline([
          { x: Number.NaN, y: 0 },
          { x: 1, y: 1 },
        ]),
      ),
    ).toThrow(RangeError);
  });
});
