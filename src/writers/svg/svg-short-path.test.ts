import { describe, expect, it } from 'vitest';
import { differingPixels, inkedPixels, rasterise } from '../../../tests/picture.ts';
import { polyline, vertex } from '../../geometry/path.ts';
import { ACCENTED, GLYPHS } from '../../geometry/stroke-alphabet.ts';
import { strokeText } from '../../geometry/stroke-letters.ts';
import { svgPathData } from './svg-path.ts';
import { svgShortPathData } from './svg-short-path.ts';

const EXTENTS = { minX: 0, minY: 0, maxX: 100, maxY: 50 };
const at = (...points: (readonly [number, number])[]) => polyline(points.map(([x, y]) => ({ x, y })));

describe('svgShortPathData(paths, extents)', () => {
  it('writes hundredths, relative, with commands and separators left out where they are understood', () => {
    const path = at([10, 40], [10.5, 40], [10.5, 39.25], [11, 39], [11.5, 38.75]);
    expect(svgShortPathData([path], EXTENTS)).toBe('M10 10h.5v.75l.5.25.5.25');
    expect(svgShortPathData([path, at([11, 39], [10.75, 39.5])], EXTENTS)).toBe('M10 10h.5v.75l.5.25.5.25m-.5-.25-.25-.5');
  });

  it('closes by z, where the next path goes on from the start', () => {
    const square = polyline([vertex(1, 49), vertex(2, 49), vertex(2, 48), vertex(1, 48)], true);
    expect(svgShortPathData([square, at([3, 49], [3, 48])], EXTENTS)).toBe('M1 1h1v1h-1zm2 0v1');
  });

  it('adds up no rounding: the end of a thousand steps is where it is', () => {
    const steps = Array.from({ length: 1001 }, (_, k) => [k / 300, k / 700] as const);
    const data = (svgShortPathData([at(...steps)], EXTENTS) ?? '').replace(/^M0 50/, '');
    let end = { x: 0, y: 5000 };
    for (const [, command, numbers = ''] of data.matchAll(/([hvl])([^hvl]*)/g)) {
      const steps = (numbers.match(/-?(\d+\.?\d*|\.\d+)/g) ?? []).map((n) => Math.round(100 * Number(n)));
      for (let k = 0; k < steps.length; k += command === 'l' ? 2 : 1) {
        const [first = 0, second = 0] = [steps[k], steps[k + 1]];
        end = { x: end.x + (command === 'v' ? 0 : first), y: end.y + (command === 'l' ? second : command === 'v' ? first : 0) };
      }
    }
    expect(end).toEqual({ x: Math.round(100_000 / 300), y: 5000 - Math.round(100_000 / 700) });
  });

  it('is null where a path is nothing at 0.01 mm', () => {
    expect(svgShortPathData([at([1, 1], [1.004, 1])], EXTENTS)).toBeNull();
  });

  it('shows every letter as the exact path does', () => {
    const letters = [...new Set([...Object.keys(GLYPHS), ...Object.values(ACCENTED).join('').replaceAll(' ', '')])].filter(
      (c) => c.trim() !== '',
    );
    const lines = Array.from({ length: Math.ceil(letters.length / 30) }, (_, k) => letters.slice(30 * k, 30 * k + 30).join(''));
    const paths = lines.flatMap((text, k) => strokeText(text, { at: { x: 2.003, y: 45 - 5.017 * k }, height: 2.5 }).paths);
    const picture = (data: string | null) =>
      rasterise(
        `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50"><path d="${data}" fill="none" stroke="#000" stroke-width="0.1"/></svg>`,
        600,
      );
    const [exact, short] = [picture(svgPathData(paths, [], EXTENTS)), picture(svgShortPathData(paths, EXTENTS))];
    expect(inkedPixels(exact)).toBeGreaterThan(10_000);
    // 0.01 mm is a quarter of a pixel: shades differ, hardly a pixel visibly.
    expect(differingPixels(exact, short)).toBeLessThan(0.01 * inkedPixels(exact));
  });
});
