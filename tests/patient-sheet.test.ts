import { describe, expect, it } from 'vitest';
import border from '../fixtures/demo-hand.json' with { type: 'json' };
import { blockById, blocks } from '../src/block/library.ts';
import type { Vertex } from '../src/geometry/path.ts';
import type { DigitName } from '../src/hand/digits.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import type { Page } from '../src/sheet/paper/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import { LANGUAGE_IDS } from '../src/words/language.ts';
import { paperWords } from '../src/words/papers/paper-words.ts';
import { layOutForPdf } from '../src/writers/pdf/pdf.ts';
import { pairs, tried } from './by-night.ts';
import { presetPlate } from './demo-plate.ts';
import { collisions, corners, inkBox, TOUCHING } from './page-boxes.ts';

/** The demo hand with another finger treated; `lacks` extension or flexion. */
function patternFor(blockId: string, digit: DigitName, lacks: 'extension' | 'flexion'): Pattern {
  const target = { digit, pipExtensionDeficit: lacks === 'extension' ? 30 : 0, pipFlexionDeficit: lacks === 'flexion' ? 30 : 0 };
  const hand = readHand({ ...border, target });
  const block = blockById(blockId);
  const made =
    hand.ok && block ? makePattern({ kind: 'strip', hand: hand.value, block, options: DEFAULT_STRIP_OPTIONS, date: null }) : null;
  if (!made?.ok) throw new Error(`no strip ${blockId}`);
  return made.value.pattern;
}

function sheet(pattern: Pattern, settings: Partial<SheetSettings>): Page {
  const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: ['handout'], ...settings });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  const [page, ...more] = laid.value.pages;
  if (!page || more.length > 0) throw new Error(`${laid.value.pages.length} pages`);
  return page;
}

const textsOf = (page: Page) => page.layers.flatMap((layer) => layer.texts);

const CASES = [
  ...blocks().map((block) => {
    const held = (Object.entries(block.places) as [DigitName, string][]).find(([, place]) => place !== 'enclosed');
    return [block.id, held?.[0] ?? 'ring', held?.[1] === 'raised' ? 'flexion' : 'extension'] as const;
  }),
  ['long-and-ring-raised-in-four', 'little', 'extension'],
  ['long-lowered-in-four', 'index', 'flexion'],
] as const;

describe("the patient's sheet", () => {
  it.each(tried(CASES, ([id, digit]) => (id === 'ring-lowered-in-three' || digit === 'index') && !id.includes('long-lowered-in-three')))(
    '%s for the %s finger, %s: one page in every language on A4 and Letter, nothing overlaps or runs off',
    (id, digit, lacks) => {
      const pattern = patternFor(id, digit, lacks);
      for (const [language, paper] of pairs(LANGUAGE_IDS, ['a4', 'letter'] as const, digit === 'index' ? 1 : 0)) {
        const page = sheet(pattern, { language, paper: PAPERS[paper] });
        const room = printableBox(PAPERS[paper], 'portrait', DEFAULT_SHEET_SETTINGS.margin, 'paper');
        expect(collisions(page), `${language} ${paper}`).toEqual([]);
        const ink = inkBox(page);
        expect(ink.minX, language).toBeGreaterThanOrEqual(room.minX - TOUCHING);
        expect(ink.maxX, language).toBeLessThanOrEqual(room.maxX + TOUCHING);
        expect(ink.minY, language).toBeGreaterThanOrEqual(room.minY - TOUCHING);
        expect(ink.maxY, language).toBeLessThanOrEqual(room.maxY + TOUCHING);
        // 13 pt, of which capitals take 0.718: what is read is as large on both papers.
        expect(textsOf(page).filter((t) => Math.abs(t.height - 13 * 0.718 * (25.4 / 72)) < 0.01).length).toBeGreaterThan(20);
      }
    },
  );

  it('of a plate is laid out as well', () => {
    for (const language of LANGUAGE_IDS)
      expect(collisions(sheet(presetPlate('mp-immobilisation-dorsal').pattern, { language }))).toEqual([]);
  });

  // Handwriting takes about 7 mm, the ruling of wide-ruled school paper is 8.7 (common practice, no source); a capital of the headings is read at 2 mm and more.
  it('has a diary to write in: two weeks of rows at least 7 mm high, each heading whole in its column with 1 mm on each side, every column wide enough for a word', () => {
    const strip = patternFor('ring-lowered-in-three', 'ring', 'extension');
    const plate = presetPlate('mp-immobilisation-dorsal').pattern;
    for (const pattern of [strip, plate])
      for (const [language, paper] of pairs(LANGUAGE_IDS, ['a4', 'letter'] as const, 0)) {
        const { layers } = sheet(pattern, { language, paper: PAPERS[paper] });
        const weeks = layers.flatMap((layer) => layer.strokes.filter((s) => s.role === 'diary')).map(({ paths }) => paths);
        expect(weeks).toHaveLength(2);
        const headings = paperWords(language).patient.diary.columns;
        for (const paths of weeks) {
          const ends = paths.map(({ vertices: [a, b] }) => [a as Vertex, b as Vertex] as const);
          const rows = ends.filter(([a, b]) => a.y === b.y).map(([a]) => a.y);
          const columns = ends.filter(([a, b]) => a.x === b.x).map(([a]) => a.x);
          const gaps = rows.slice(1).map((y, k) => (rows[k] as number) - y);
          expect(gaps).toHaveLength(8);
          expect(Math.min(...gaps), `${language} ${paper}`).toBeGreaterThan(7 - 1e-9);
          expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThan(1e-9);
          const [top, below] = [rows[0] as number, rows[1] as number];
          for (const [k, title] of headings.entries()) {
            const [from, to] = [columns[k] as number, columns[k + 1] as number];
            const shown = layers
              .flatMap((layer) => layer.texts)
              .find((t) => t.text === title && t.at.x >= from && t.at.x < to && t.at.y < top && t.at.y > below);
            if (!shown) throw new Error(`no ${title} in ${language}`);
            const xs = corners(shown).map(({ x }) => x);
            expect(Math.min(...xs) - from, `${title}, ${language} ${paper}`).toBeGreaterThan(1);
            expect(to - Math.max(...xs), `${title}, ${language} ${paper}`).toBeGreaterThan(1);
            expect(shown.height, `${title}, ${language}`).toBeGreaterThan(2);
            expect(to - from, `${title}, ${language}`).toBeGreaterThan(9);
          }
        }
      }
  });

  it('prescribes nothing: no numbers but those of the skin check and the diary, no box ticked, no code, no bars', () => {
    const pattern = patternFor('ring-lowered-in-three', 'ring', 'extension');
    const page = sheet(pattern, {});
    const words = textsOf(page).map((t) => t.text);
    const numbers = words.filter((w) => !/^\d+$/.test(w)).flatMap((w) => w.match(/\d+/g) ?? []);
    expect(new Set(numbers)).toEqual(new Set(['20', '0', '10']));
    expect(words.join(' ')).toContain('ring finger');
    expect(words.join(' ')).not.toContain(pattern.notes?.code);
    const roles = page.layers.flatMap((layer) => layer.strokes.map((s) => s.role));
    expect(roles.filter((role) => role === 'tick-box')).toHaveLength(5);
    expect(roles.some((role) => role.startsWith('bar-') || role === 'card')).toBe(false);
  });

  it('carries the clinic, where there is one', () => {
    const clinic = { letterhead: ['Example Hand Clinic'], telephone: '000 000' };
    const words = textsOf(sheet(patternFor('ring-lowered-in-three', 'ring', 'extension'), { clinic })).map((t) => t.text);
    expect(words[0]).toBe('Example Hand Clinic');
    expect(words.some((w) => w.endsWith('000 000'))).toBe(true);
  });
});
