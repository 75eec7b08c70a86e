import { describe, expect, it } from 'vitest';
import { type Measure, wrapWords } from './page.ts';
import { columnsIn, type FlowSection, type FlowStyle, flow, paragraph } from './page-flow.ts';

/** Every letter half a capital wide. */
const measure: Measure = (text, height) => text.length * height * 0.5;
const style: FlowStyle = { text: 2, heading: 3, leastColumn: 40, gap: 1, sectionGap: 3 };
const box = { minX: 10, maxX: 100, minY: 20, maxY: 70 };

const section = (heading: string, words: readonly string[]): FlowSection => ({
  heading,
  cells: words.map((line) => paragraph(line, 41, style, measure)),
});

describe('wrapWords(text, width, height, bold, measure)', () => {
  it('breaks at spaces, long words inside, and no line is wider', () => {
    expect(wrapWords('one two three', 7, 2, false, measure)).toEqual(['one two', 'three']);
    expect(wrapWords('abcdefghij k', 4, 2, false, measure)).toEqual(['abcd', 'efgh', 'ij k']);
  });

  it('does not begin a line with the spaces that part two facts', () => {
    expect(wrapWords('one two   three', 8, 2, false, measure).map((line) => line.trimEnd())).toEqual(['one two', 'three']);
  });
});

describe('columnsIn(box, style, below)', () => {
  it('makes equal columns, and lengthens one that stands over free room', () => {
    const [first, second] = columnsIn(box, style, [{ minX: 10, maxX: 60, minY: 5, maxY: 20 }]);
    expect(first).toEqual({ minX: 10, maxX: 51.5, minY: 5, maxY: 70 });
    expect(second).toEqual({ minX: 58.5, maxX: 100, minY: 20, maxY: 70 });
  });
});

describe('flow(sections, columns, style, measure)', () => {
  const columns = columnsIn(box, style);
  const words = Array.from({ length: 40 }, (_, k) => `line ${k}`);

  it('keeps every line, in order, inside the columns, over as many pages as needed', () => {
    const pages = flow([section('A', words)], columns, style, measure) ?? [];
    const texts = pages.flatMap((page) => page.texts);
    expect(pages.length).toBeGreaterThan(1);
    expect(texts.map((t) => t.text)).toEqual(['A', ...words]);
    for (const t of texts) {
      expect(columns.some((c) => t.at.x >= c.minX && t.at.x < c.maxX)).toBe(true);
      expect(t.at.y).toBeGreaterThanOrEqual(box.minY);
      expect(t.at.y + t.height).toBeLessThanOrEqual(box.maxY + 1e-9);
    }
  });

  it('never leaves a heading alone at the foot of a column', () => {
    for (let count = 1; count < 14; count++) {
      const pages = flow([section('A', words.slice(0, count)), section('B', ['under B'])], columns, style, measure) ?? [];
      const [heading, line] = ['B', 'under B'].map((text) =>
        pages.flatMap((p, k) => p.texts.map((t) => ({ ...t, page: k }))).find((t) => t.text === text),
      );
      expect([heading?.page, heading?.at.x]).toEqual([line?.page, line?.at.x]);
    }
  });

  it('is null when a paragraph is taller than a column', () => {
    expect(flow([section('A', ['word '.repeat(400).trim()])], columns, style, measure)).toBeNull();
  });
});
