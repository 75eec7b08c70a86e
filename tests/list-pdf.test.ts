import { describe, expect, it } from 'vitest';
import { PAPERS_OF_A_PATTERN } from '../src/papers/papers.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { layOutSheet } from '../src/sheet/paper/lay-out-sheet.ts';
import { PAPERS, printableBox, turned } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import type { CutPiece } from '../src/sheet/plastic/cut-list.ts';
import { listPages } from '../src/sheet/plastic/list-pages.ts';
import { sizeChart } from '../src/sheet/plastic/size-chart.ts';
import { sizePages } from '../src/sheet/plastic/size-pages.ts';
import { helveticaWidth } from '../src/writers/pdf/pdf-document.ts';

const piece = (i: number, warnings: readonly string[] = []): CutPiece => ({
  id: `P-${i}`,
  code: `P-${i}`,
  side: 'left',
  block: 'ring-raised-in-three',
  plate: null,
  length: 180,
  width: 20,
  quantity: 1,
  marks: [],
  warnings,
  invented: true,
  hand: null,
});

function onePage(pattern: Pattern, settings: SheetSettings) {
  const laid = layOutSheet(pattern, settings, helveticaWidth, PAPERS_OF_A_PATTERN);
  if (!laid.ok) throw new Error(laid.problems[0]?.message);
  const [page, ...more] = laid.value.pages;
  if (!page || more.length > 0) throw new Error(`${laid.value.pages.length} pages`);
  return { page, orientation: laid.value.orientation, texts: page.layers.flatMap((layer) => layer.texts) };
}

describe('a list or chart as PDF', () => {
  const lists = listPages(
    Array.from({ length: 60 }, (_, i) => piece(i + 1, i === 50 ? ['ESTIMATED'] : ['LOOP_OVER_PIP'])),
    null,
  );
  const one = { id: 'SIZE-1', serves: 'withLittle' as const, length: 200, width: 33, served: 9 };
  const sizes = [{ sizes: [one], cover: 1, meanWaste: 12, wasteShare: 0.06 }];
  const bags = sizePages({
    sizes: [one],
    pieces: [9],
    assigned: Array.from({ length: 12 }, (_, k) => ({
      strip: {
        code: `CASE-${k + 1}`,
        side: 'right' as const,
        block: 'little-raised-in-four',
        length: 188,
        height: 32.5,
        relief: [{ digit: 'long' as const, depth: 3.25 }],
        withLittle: true,
        invented: true,
      },
      size: k < 9 ? one : null,
      cutOff: 12,
      trimUsed: 0,
    })),
    invented: true,
  });
  const patterns: readonly (readonly [string, Pattern])[] = [
    ...lists.map((page, k) => [`list page ${k + 1}`, page] as const),
    ...bags.map((page, k) => [`sizes page ${k + 1}`, page] as const),
    [
      'chart',
      sizeChart(
        sizes,
        0,
        'nine hands, a subtitle that is long enough to need a second line, since it names a file in a folder in a folder',
      ),
    ],
  ];

  it.each(patterns)('%s is one page with every word of it, inside what the printer prints, on every paper', (_, pattern) => {
    for (const paper of Object.values(PAPERS)) {
      const settings = { ...DEFAULT_SHEET_SETTINGS, paper };
      const { page, orientation, texts } = onePage(pattern, settings);
      const { width, height } = turned(paper, orientation);
      expect([page.width, page.height]).toEqual([width, height]);
      expect(texts.map((t) => t.text)).toEqual(pattern.beside.labels.map((label) => label.text));
      const room = printableBox(paper, orientation, settings.margin, settings.area);
      for (const { at } of texts) {
        expect(at.x).toBeGreaterThanOrEqual(room.minX - 1e-6);
        expect(at.x).toBeLessThanOrEqual(room.maxX + 1e-6);
        expect(at.y).toBeGreaterThanOrEqual(room.minY - 1e-6);
        expect(at.y).toBeLessThanOrEqual(room.maxY + 1e-6);
      }
    }
  });

  it('explains on each page the letters that stand on it, and no others; a code of the program stands nowhere', () => {
    expect(lists.length).toBeGreaterThan(1);
    for (const list of lists) {
      const texts = list.beside.labels.map((label) => label.text);
      for (const letter of ['a', 'b']) {
        const used = texts.some((text) => text.endsWith(`LOOK AT ${letter}`));
        expect(texts.some((text) => text.startsWith(`${letter}: `))).toBe(used);
      }
      expect(texts.join(' ')).not.toMatch(/ESTIMATED|LOOP_OVER_PIP|ring-raised-in-three/);
    }
  });

  it('no two lines of a list lie on each other', () => {
    for (const list of lists) {
      const rows = list.beside.labels.filter((label) => label.at.x < 20).map((label) => label.at.y);
      const sorted = rows.toSorted((a, b) => a - b);
      for (const [k, y] of sorted.slice(1).entries()) expect(y - (sorted[k] as number)).toBeGreaterThan(2.4);
    }
  });
});
