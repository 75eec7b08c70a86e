import { describe, expect, it } from 'vitest';
import { blocks } from '../src/block/library.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import type { Page } from '../src/sheet/paper/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import { LANGUAGE_IDS } from '../src/words/language.ts';
import { layOutForPdf } from '../src/writers/pdf/pdf.ts';
import { pairs, tried } from './by-night.ts';
import { presetPlate } from './demo-plate.ts';
import { collisions, inkBox, TOUCHING } from './page-boxes.ts';
import { DEMO_HAND, LARGE_HAND, stripOf } from './pdf-samples.ts';

function story(hand: typeof DEMO_HAND, block: string, settings: Partial<SheetSettings>): readonly Page[] {
  const laid = layOutForPdf(stripOf(hand, block), { ...DEFAULT_SHEET_SETTINGS, parts: ['making'], ...settings });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value.pages.filter((page) => page.kind === 'story');
}

const panels = (pages: readonly Page[]) =>
  pages.flatMap((page) => page.layers.flatMap((layer) => layer.strokes.filter((s) => s.role === 'panel'))).length;

describe('the making of a strip as a storyboard', () => {
  const ids = blocks().map((block) => block.id);
  const byDay = ['ring-lowered-in-three', 'long-and-ring-raised-in-four'];
  it.each(tried(ids, (id) => byDay.includes(id)))('%s: nothing overlaps or runs off, in every language, on A4 and Letter', (id) => {
    for (const [language, paper] of pairs(LANGUAGE_IDS, ['a4', 'letter'] as const, id.startsWith('ring') ? 0 : 1)) {
      const pages = story(DEMO_HAND, id, { language, paper: PAPERS[paper] });
      expect(pages).toHaveLength(2);
      const room = printableBox(PAPERS[paper], 'portrait', DEFAULT_SHEET_SETTINGS.margin, 'paper');
      for (const page of pages) {
        expect(collisions(page), `${language} ${paper}`).toEqual([]);
        const ink = inkBox(page);
        expect(ink.minX).toBeGreaterThanOrEqual(room.minX - TOUCHING);
        expect(ink.maxX).toBeLessThanOrEqual(room.maxX + TOUCHING);
        expect(ink.minY).toBeGreaterThanOrEqual(room.minY - TOUCHING);
        expect(ink.maxY).toBeLessThanOrEqual(room.maxY + TOUCHING);
      }
    }
  });

  it('has nine steps for three fingers, ten for four', () => {
    expect(panels(story(DEMO_HAND, 'ring-lowered-in-three', {}))).toBe(9);
    const ofFour = [[LARGE_HAND, 'long-raised-in-four'] as const, [DEMO_HAND, 'long-and-ring-raised-in-four'] as const];
    for (const [hand, id] of tried(ofFour, ([hand]) => hand === DEMO_HAND)) expect(panels(story(hand, id, {}))).toBe(10);
  });

  it.each([
    ['lap', /Bond the lap/, /scrape or wipe the coating off/],
    ['opening', /lap stays open and gets a strap/, /film or paper between so that they do not bond/],
    ['pinch', /Pinch the tabs/, /pinch the tabs of 15 mm together/],
  ] as const)('says of a seam made as %s how its ends are closed, beside what the pictures leave out', (seam, inPictures, beside) => {
    const block = blocks().find(({ id }) => id === 'ring-lowered-in-three');
    if (!block) throw new Error('no block');
    const made = makePattern({ kind: 'strip', hand: DEMO_HAND, block, options: { ...DEFAULT_STRIP_OPTIONS, seam }, date: null });
    const laid = made.ok ? layOutForPdf(made.value.pattern, { ...DEFAULT_SHEET_SETTINGS, parts: ['making'] }) : made;
    if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
    const wordsOf = (kind: Page['kind']) =>
      laid.value.pages
        .filter((page) => page.kind === kind)
        .flatMap((page) => page.layers.flatMap((layer) => layer.texts.map(({ text }) => text)))
        .join(' ');
    expect(wordsOf('story')).toMatch(inPictures);
    expect(wordsOf('making')).toMatch(beside);
    expect(wordsOf('making')).toMatch(/For each mm that it closes longer or shorter than drawn/);
  });

  it('of a plate has six steps on one page, in every language', () => {
    // paper-boxes.test.ts lays all pages of a plate out in another.
    for (const language of tried(LANGUAGE_IDS, (each) => each === 'es')) {
      const { pattern } = presetPlate('mp-immobilisation-dorsal', 45, undefined, {}, language);
      const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: ['making'], language });
      const pages = laid.ok ? laid.value.pages.filter((page) => page.kind === 'story') : [];
      expect(pages).toHaveLength(1);
      expect(panels(pages)).toBe(6);
      for (const page of pages) expect(collisions(page), language).toEqual([]);
    }
  });

  it('has neither bars nor card, and no word of how to print: nothing on it is at true size', () => {
    for (const page of story(DEMO_HAND, 'ring-lowered-in-three', {})) {
      const roles = page.layers.flatMap((layer) => layer.strokes.map((s) => s.role));
      expect(roles.some((role) => role.startsWith('bar-') || role === 'card')).toBe(false);
      expect(page.layers.flatMap((layer) => layer.texts.map((t) => t.text)).join(' ')).not.toMatch(/100 %|geometry/);
    }
  });
});
