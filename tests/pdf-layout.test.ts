import { describe, expect, it } from 'vitest';
import { blocks } from '../src/block/library.ts';
import type { Box, Point } from '../src/geometry/path.ts';
import { boxOf, unionBox } from '../src/geometry/path-measures.ts';
import { textWidth } from '../src/geometry/stroke-letters.ts';
import type { LaidSheet } from '../src/sheet/lay-out-sheet.ts';
import type { Page, PageText } from '../src/sheet/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper.ts';
import { DEFAULT_SHEET_SETTINGS, SHEET_PARTS, type SheetSettings } from '../src/sheet/sheet-settings.ts';
import { contains } from '../src/sheet/tiles.ts';
import { radians } from '../src/units/angle.ts';
import { layOutForPdf } from '../src/writers/pdf.ts';
import { helveticaWidth } from '../src/writers/pdf-document.ts';
import { DEMO_HAND, LARGE_HAND, SMALL_HAND, stripOf } from './pdf-samples.ts';

/** Share of a capital's height under the baseline that letters with a tail take. */
const TAIL = 0.3;
/** What rounding may let boxes share, mm. */
const TOUCHING = 0.01;

type Corners = readonly [Point, Point, Point, Point];

/** The corners of the ink of a line of text, counter-clockwise. */
function corners(t: PageText): Corners {
  const natural = helveticaWidth(t.text, t.height, t.bold);
  const width = t.asStrokes ? Math.min(natural, textWidth(t.text, t.height)) : natural;
  const left = { left: 0, center: -width / 2, right: -width }[t.align];
  const low = /[gjpqy,;()]/.test(t.text) ? -TAIL * t.height : 0;
  const [c, s] = [Math.cos(radians(t.angle)), Math.sin(radians(t.angle))];
  const at = (x: number, y: number): Point => ({ x: t.at.x + x * c - y * s, y: t.at.y + x * s + y * c });
  return [at(left, low), at(left + width, low), at(left + width, t.height), at(left, t.height)];
}

/** Whether two rectangles share more than an edge (separating axes). */
function overlap(a: Corners, b: Corners): boolean {
  for (const [p, q] of [a, b].flatMap((r) => [[r[0], r[1]] as const, [r[1], r[2]] as const])) {
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length === 0) continue;
    const [nx, ny] = [(q.x - p.x) / length, (q.y - p.y) / length];
    const span = (r: Corners) => r.map((v) => v.x * nx + v.y * ny);
    const [sa, sb] = [span(a), span(b)];
    if (Math.max(...sa) <= Math.min(...sb) + TOUCHING || Math.max(...sb) <= Math.min(...sa) + TOUCHING) return false;
  }
  return true;
}

const rectangle = (b: Box): Corners => [
  { x: b.minX, y: b.minY },
  { x: b.maxX, y: b.minY },
  { x: b.maxX, y: b.maxY },
  { x: b.minX, y: b.maxY },
];

/** Lines of text that lie on each other, on a bar, across the card's outline, or, where they are not of it, on the pattern. */
function collisions(page: Page): readonly string[] {
  const seen = (box: Corners, clip: Box | null) => !clip || box.every((p) => contains(clip, p));
  const boxes = page.layers.flatMap((layer) =>
    layer.texts.map((t) => ({ t, box: corners(t) })).filter(({ t, box }) => t.text.trim() !== '' && seen(box, layer.clip)),
  );
  const found: string[] = [];
  for (const [i, a] of boxes.entries()) {
    for (const b of boxes.slice(i + 1)) if (overlap(a.box, b.box)) found.push(`"${a.t.text}" on "${b.t.text}"`);
  }
  const strokes = page.layers.flatMap((layer) => layer.strokes);
  const pattern = strokes.filter((s) => s.role === 'outline').map((s) => boxOf(s.paths));
  const card = strokes.filter((s) => s.role === 'card').map((s) => boxOf(s.paths));
  const bars = strokes.filter((s) => s.role.startsWith('bar-')).flatMap((s) => s.paths.map((path) => boxOf([path])));
  const clips = page.layers.flatMap((layer) => (layer.clip ? [layer.clip] : []));
  for (const { t, box } of boxes) {
    const onPattern = (clips.length > 0 ? clips : pattern).some((b) => overlap(box, rectangle(b)));
    if (onPattern && !t.asStrokes && !/^[A-Z]{1,2}$/.test(t.text)) found.push(`"${t.text}" on the pattern`);
    if (bars.some((b) => overlap(box, rectangle(b)))) found.push(`"${t.text}" on a bar`);
    for (const b of card) {
      const inside = box.every((p) => p.x > b.minX && p.x < b.maxX && p.y > b.minY && p.y < b.maxY);
      if (!inside && overlap(box, rectangle(b))) found.push(`"${t.text}" across the card`);
    }
  }
  return found;
}

/** Box round everything that is printed on a page; of a clipped layer only what is seen. */
function inkBox(page: Page): Box {
  return unionBox(
    page.layers.flatMap((layer) => [
      ...(layer.clip ? [layer.clip] : layer.strokes.filter((s) => s.paths.length > 0).map((s) => boxOf(s.paths))),
      ...(layer.clip ? [] : layer.texts.map((t) => boxOf([{ closed: true, vertices: corners(t).map((p) => ({ ...p, bulge: 0 })) }]))),
    ]),
  );
}

function layOut(pattern: Parameters<typeof layOutForPdf>[0], settings: Partial<SheetSettings>): LaidSheet {
  const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: SHEET_PARTS, ...settings });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value;
}

const HANDS = { small: SMALL_HAND, large: LARGE_HAND };
const cases = blocks().flatMap((block) =>
  (['small', 'large'] as const).flatMap((hand) => (['a4', 'letter'] as const).map((paper) => [block.id, hand, paper] as const)),
);

describe('the printed sheet of every block', () => {
  it.each(cases)('%s, %s hand, %s: nothing overlaps, nothing outside what A4 and Letter both print', (id, hand, paper) => {
    const sheet = layOut(stripOf(HANDS[hand], id), { paper: PAPERS[paper] });
    const room = printableBox(PAPERS[paper], sheet.orientation, DEFAULT_SHEET_SETTINGS.margin, 'both');
    for (const page of sheet.pages) {
      expect(collisions(page), page.title).toEqual([]);
      const ink = inkBox(page);
      expect(ink.minX).toBeGreaterThanOrEqual(room.minX - TOUCHING);
      expect(ink.maxX).toBeLessThanOrEqual(room.maxX + TOUCHING);
      expect(ink.minY).toBeGreaterThanOrEqual(room.minY - TOUCHING);
      expect(ink.maxY).toBeLessThanOrEqual(room.maxY + TOUCHING);
    }
    // The making sheet is one page, and the patient's another.
    expect(sheet.pages.filter((page) => page.title === 'making')).toHaveLength(1);
    expect(sheet.pages.filter((page) => page.title === 'for the patient')).toHaveLength(1);
  });

  it('is tiled only where no way round fits one page', () => {
    // 259.4 mm is the length of Letter less two margins: what both papers print.
    for (const block of blocks()) {
      for (const hand of [SMALL_HAND, DEMO_HAND, LARGE_HAND]) {
        const pattern = stripOf(hand, block.id);
        const outline = boxOf(pattern.parts.map((part) => part.outline));
        expect(layOut(pattern, { parts: ['pattern'] }).tiled).toBe(outline.maxX - outline.minX > 277);
        expect(layOut(pattern, { parts: ['pattern'], paper: PAPERS.a3 }).tiled).toBe(false);
      }
    }
  });

  const odd: readonly (readonly [string, Partial<SheetSettings>])[] = [
    ['small paper', { paper: { name: '140 x 170 mm', width: 140, height: 170 } }],
    ['least paper', { paper: { name: '123 x 150 mm', width: 123, height: 150 } }],
    ['A5', { paper: { name: '148 x 210 mm', width: 148, height: 210 } }],
    ['wide margins', { margin: 20 }],
    ['narrow margins', { margin: 5 }],
    ['printer that shrinks', { correction: { across: 92, along: 94 } }],
    ['printer that enlarges', { correction: { across: 104, along: 101 } }],
    ['A3', { paper: PAPERS.a3 }],
  ];
  it.each(odd)('keeps clear on %s', (_, settings) => {
    for (const pattern of [
      stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31'),
      stripOf(LARGE_HAND, 'long-and-ring-raised-in-four'),
    ]) {
      for (const page of layOut(pattern, settings).pages) expect(collisions(page), page.title).toEqual([]);
    }
  });

  it('leaves pages out that are not asked for', () => {
    const pattern = stripOf(DEMO_HAND, 'ring-lowered-in-three');
    expect(layOut(pattern, { parts: ['making'] }).pages.map((p) => p.title)).toEqual(['making']);
    expect(layOut(pattern, { parts: ['pattern', 'handout'] }).pages.map((p) => p.title)).toEqual(['pattern at 1:1', 'for the patient']);
  });

  it('finds a collision where there is one', () => {
    const [page] = layOut(stripOf(DEMO_HAND, 'ring-lowered-in-three'), {}).pages;
    const [first] = page?.layers ?? [];
    const words = first?.texts[0];
    if (!page || !first || !words) throw new Error('no text');
    const doubled: Page = {
      ...page,
      layers: [{ ...first, texts: [...first.texts, { ...words, at: { x: words.at.x + 3, y: words.at.y } }] }],
    };
    expect(collisions(doubled).length).toBeGreaterThan(0);
  });
});
