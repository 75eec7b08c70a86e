import { describe, expect, it } from 'vitest';
import { inkedPixels, rasterise } from '../../../tests/picture.ts';
import { polyline } from '../../geometry/path.ts';
import type { Drawing, DrawnShape, DrawnText } from '../../pattern/drawing.ts';
import { TONES } from '../drawing-style.ts';
import { svgDrawingInNode } from './svg-node.ts';

const square = polyline(
  [
    { x: 5, y: 5 },
    { x: 15, y: 5 },
    { x: 15, y: 15 },
    { x: 5, y: 15 },
  ],
  true,
);
const shape = (rest: Partial<DrawnShape>): DrawnShape => ({
  kind: 'shape',
  role: 'area',
  title: '',
  paths: [square],
  circles: [],
  pen: 'fine',
  tone: 'ink',
  fill: null,
  ...rest,
});
const text = (words: string): DrawnText => ({
  kind: 'text',
  role: 'word',
  text: words,
  at: { x: 2, y: 2 },
  height: 3,
  align: 'left',
  tone: 'ink',
  strong: false,
});
const drawing = (...items: Drawing['items']): Drawing => ({
  title: 'A <chart>',
  description: 'what & why',
  items,
  extents: { minX: 0, minY: 0, maxX: 20, maxY: 30 },
});

function svgOf(...items: Drawing['items']): string {
  const result = svgDrawingInNode(drawing(...items));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** WCAG 2.2: contrast ratio on white. */
function contrastOnWhite(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05);
}

describe('svgDrawing(window, drawing)', () => {
  it('has its size in mm, a title, a description, and no text or style that a viewer may change', () => {
    const svg = svgOf(shape({}), text('words'));
    expect(svg).toContain('width="20.0000mm" height="30.0000mm" viewBox="0 0 20.0000 30.0000" role="img"');
    expect(svg).toContain('<title>A &lt;chart&gt;</title>');
    expect(svg).toContain('<desc>what &amp; why</desc>');
    expect(svg).not.toMatch(/ (transform|class|style)=|<(text|use|style|defs|image)\b/);
  });

  it('draws y upward and fills only what is filled', () => {
    // At 127 dpi 1 mm is 5 px; the square is 10 x 10 mm, its lower left corner 5 mm from the left and 5 mm from below.
    const filled = rasterise(svgOf(shape({ fill: 'ink', pen: null })), 127);
    const dark = (x: number, y: number) => (filled.pixels[4 * (y * filled.width + x)] ?? 255) < 128;
    expect([filled.width, filled.height]).toEqual([100, 150]);
    expect([dark(50, 100), dark(50, 76), dark(50, 124), dark(50, 74), dark(50, 126), dark(24, 100), dark(76, 100)]).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
    expect(inkedPixels(rasterise(svgOf(shape({ fill: null, pen: 'fine' })), 127))).toBeLessThan(500);
  });

  it('keeps the order of drawing: later items lie on top', () => {
    const covered = svgOf(shape({ fill: 'ink', pen: null }), shape({ fill: 'paper', pen: null }));
    expect(inkedPixels(rasterise(covered, 127))).toBeLessThan(250);
  });

  it('has words and lines legible on white', () => {
    for (const tone of ['ink', 'grey', 'accent'] as const) expect(contrastOnWhite(TONES[tone])).toBeGreaterThan(4.5);
  });

  it('gives the same text each time, whatever was drawn between', () => {
    const first = svgOf(shape({ title: 'x' }), text('a'));
    svgOf(text('other'));
    expect(svgOf(shape({ title: 'x' }), text('a'))).toBe(first);
  });

  it('refuses text without strokes, all of it at once', () => {
    const result = svgDrawingInNode(drawing(text('\u624b'), text('fine'), text('\u{1f642}')));
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['LABEL_CHARACTERS_UNKNOWN', 'LABEL_CHARACTERS_UNKNOWN']);
  });
});
