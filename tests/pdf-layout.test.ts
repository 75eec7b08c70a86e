import { describe, expect, it } from 'vitest';
import { blocks } from '../src/block/library.ts';
import { boxOf } from '../src/geometry/path.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import type { LaidSheet } from '../src/sheet/paper/lay-out-sheet.ts';
import type { Page } from '../src/sheet/paper/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, SHEET_PARTS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import { layOutForPdf } from '../src/writers/pdf/pdf.ts';
import { tried } from './by-night.ts';
import { laidSheet } from './cutter-patterns.ts';
import { presetPlate } from './demo-plate.ts';
import { collisions, inkBox, TOUCHING } from './page-boxes.ts';
import { DEMO_HAND, LARGE_HAND, SMALL_HAND, stripOf } from './pdf-samples.ts';

function layOut(pattern: Parameters<typeof layOutForPdf>[0], settings: Partial<SheetSettings>): LaidSheet {
  const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: SHEET_PARTS, ...settings });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value;
}

const HANDS = { small: SMALL_HAND, large: LARGE_HAND };
const cases = blocks().flatMap((block) =>
  (['small', 'large'] as const).flatMap((hand) => (['a4', 'letter'] as const).map((paper) => [block.id, hand, paper] as const)),
);
/** The shortest strip on the smaller page, the longest in tiles, and one that is lowered. */
const BY_DAY: readonly string[] = [
  'ring-lowered-in-three small letter',
  'long-and-ring-raised-in-four large a4',
  'long-lowered-in-four large letter',
];

describe('the printed sheet of every block', () => {
  it.each(tried(cases, (c) => BY_DAY.includes(c.join(' '))))(
    '%s, %s hand, %s: nothing overlaps, nothing outside what A4 and Letter both print',
    (id, hand, paper) => {
      const sheet = layOut(stripOf(HANDS[hand], id), { paper: PAPERS[paper] });
      for (const page of sheet.pages) {
        // What is only read stands upright and fills its own paper; what is held to the bars fits both papers.
        const read = page.kind === 'handout' || page.kind === 'story';
        const [way, area] = read ? (['portrait', 'paper'] as const) : ([sheet.orientation, 'both'] as const);
        const room = printableBox(PAPERS[paper], way, DEFAULT_SHEET_SETTINGS.margin, area);
        expect(collisions(page), page.title).toEqual([]);
        const ink = inkBox(page);
        expect(ink.minX).toBeGreaterThanOrEqual(room.minX - TOUCHING);
        expect(ink.maxX).toBeLessThanOrEqual(room.maxX + TOUCHING);
        expect(ink.minY).toBeGreaterThanOrEqual(room.minY - TOUCHING);
        expect(ink.maxY).toBeLessThanOrEqual(room.maxY + TOUCHING);
      }
      // The making sheet is one page, and the patient's another.
      expect(sheet.pages.filter((page) => page.kind === 'making')).toHaveLength(1);
      expect(sheet.pages.filter((page) => page.kind === 'handout')).toHaveLength(1);
    },
  );

  it('is tiled only where no way round fits one page', () => {
    // 259.4 mm is the length of Letter less two margins: what both papers print.
    for (const block of tried(blocks(), (b) => /^ring-lowered-in-three|^long-and-ring-raised/.test(b.id))) {
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
  it.each(odd.map(([name, settings], nth) => [name, nth, settings] as const))('keeps clear on %s', (_, nth, settings) => {
    const patterns = [stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31'), stripOf(LARGE_HAND, 'long-and-ring-raised-in-four')];
    // By day the one and the other in turn.
    for (const pattern of tried(patterns, (each) => patterns.indexOf(each) === nth % 2)) {
      for (const page of layOut(pattern, settings).pages) expect(collisions(page), page.title).toEqual([]);
    }
  });

  const everySample = (): readonly Pattern[] => [
    stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31'),
    stripOf(LARGE_HAND, 'long-and-ring-raised-in-four'),
    presetPlate('mp-immobilisation-dorsal').pattern,
    laidSheet(),
  ];
  it.each(tried([...odd, ['A4', {}] as const], ([name]) => name === 'A4' || name === 'least paper'))(
    'on %s has bars and card just where something is at true size: the pattern, the paper trial, a gauge, a view that says so',
    (_, settings) => {
      for (const pattern of everySample()) {
        const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: SHEET_PARTS, ...settings });
        // A plate or a sheet does not go on the least paper.
        if (!laid.ok) expect(pattern.kind).not.toBe('strip');
        for (const page of laid.ok ? laid.value.pages : []) {
          const roles = new Set(page.layers.flatMap((layer) => layer.strokes.map(({ role }) => role)));
          const words = page.layers.flatMap((layer) => layer.texts.map(({ text }) => text)).join(' ');
          const hasGauge = (pattern.notes?.gauges ?? []).some(({ title }) => words.includes(title.split(' ').slice(0, 3).join(' ')));
          const expected = page.kind === 'pattern' || hasGauge || words.includes('True size.');
          const where = `${pattern.title}, ${page.title}`;
          expect(
            [...roles].some((role) => role.startsWith('bar-')),
            where,
          ).toBe(expected);
          expect(roles.has('card'), where).toBe(expected);
        }
      }
    },
  );

  it('leaves pages out that are not asked for', () => {
    const pattern = stripOf(DEMO_HAND, 'ring-lowered-in-three');
    expect(layOut(pattern, { parts: ['making'] }).pages.map((p) => p.title)).toEqual(['step by step', 'step by step', 'making']);
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
