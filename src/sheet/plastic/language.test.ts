import { describe, expect, it } from 'vitest';
import demo from '../../../fixtures/demo-hand.json' with { type: 'json' };
import plateDemo from '../../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { blockById } from '../../block/library.ts';
import { type Box, boxOf } from '../../geometry/path.ts';
import { strokeText, textWidth } from '../../geometry/stroke-letters.ts';
import type { Hand } from '../../hand/hand.ts';
import { readHand } from '../../hand/read-hand.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { plateById } from '../../pattern/plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS } from '../../pattern/plate/plate-options.ts';
import { designFor } from '../../pattern/plate/read-plate.ts';
import { setIdOf } from '../../pattern/set-id.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { type Result, success } from '../../units/result.ts';
import { LANGUAGE_IDS, type Language } from '../../words/language.ts';
import type { CutPiece } from './cut-list.ts';
import { layOut } from './lay-out.ts';
import { listPages } from './list-pages.ts';
import { platePiece, stripPiece } from './piece.ts';
import { boxPart, partOfPiece } from './piece-part.ts';
import { sheetPattern } from './sheet-pattern.ts';
import { sizeChart } from './size-chart.ts';
import { sizePages } from './size-pages.ts';

const REST: readonly Language[] = LANGUAGE_IDS.filter((language) => language !== 'en');

function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function pieces(): readonly CutPiece[] {
  const strip = got(stripPiece(handOf(demo), blockById('ring-lowered-in-three') as never, DEFAULT_STRIP_OPTIONS));
  const hand = handOf(plateDemo);
  const preset = plateById('mp-immobilisation-dorsal') as never;
  const design = got(designFor(hand, preset, { digits: null, angle: 45, planned: null }));
  const plate = got(platePiece(hand, { design, options: DEFAULT_PLATE_OPTIONS }));
  const blank = { ...strip, id: 'BLANK', code: 'BLANK', block: null, hand: null, marks: [], warnings: [] };
  return [{ ...strip, warnings: ['ESTIMATED', 'SWELLING'] }, { ...plate, warnings: ['FOLD_PRESSES', 'HELD_SHORT'] }, blank];
}

function handOf(file: object): Hand {
  return got(readHand(file));
}

const ALL = pieces();

/** Drawn once each: a plate takes its time. */
const drawn = new Map<string, Pattern>();

function sheetIn(language: Language, shears = false): Pattern {
  const key = `${language} ${shears}`;
  const pattern = drawn.get(key) ?? drawSheet(language, shears);
  drawn.set(key, pattern);
  return pattern;
}

function drawSheet(language: Language, shears: boolean): Pattern {
  const rules = { gap: 2, margin: 5, grain: 'free' as const, ...(shears ? { shears } : {}) };
  const layout = got(layOut({ parts: ALL, sheet: { id: 'sheet', along: 610, across: 457 }, remnants: [], rules }));
  const source = { options: DEFAULT_STRIP_OPTIONS, blockOf: blockById, language };
  const partOf = (piece: CutPiece) => (shears ? success(boxPart(piece, language)) : partOfPiece(piece, source));
  return got(sheetPattern({ layout, sheet: 0, pieces: ALL, partOf, date: '2026-01-31', request: {}, language }));
}

/** Words that two languages share. */
const SAME_WORD = ['DORSAL', 'PALMAR', 'RADIAL', 'ULNAR', 'DISTAL', 'HAND'];

const SIZE = { id: 'SIZE-1', serves: 'withLittle' as const, length: 200.5, width: 33, served: 9 };
function sizesIn(language: Language): readonly Pattern[] {
  const strip = {
    code: 'CASE-1',
    side: 'right' as const,
    block: 'long-and-ring-raised-in-four',
    length: 188,
    height: 32.5,
    relief: (['index', 'long', 'ring', 'little'] as const).map((digit) => ({ digit, depth: 13.25 })),
    withLittle: true,
    invented: true,
  };
  const assigned = [
    { strip, size: SIZE, cutOff: 12.5, trimUsed: 0 },
    { strip: { ...strip, code: 'CASE-2' }, size: SIZE, cutOff: 0, trimUsed: 1.5 },
    { strip: { ...strip, code: 'CASE-3' }, size: null, cutOff: 0, trimUsed: 0 },
  ];
  return sizePages({ sizes: [SIZE], pieces: [9], assigned, invented: true }, language);
}

const PAPERS: readonly (readonly [string, (language: Language) => readonly Pattern[]])[] = [
  ['sheet', (language) => [sheetIn(language)]],
  ['sheet for shears', (language) => [sheetIn(language, true)]],
  ['list', (language) => listPages(ALL, '2026-01-31', language)],
  ['sizes', sizesIn],
  ['chart', (language) => [sizeChart([{ sizes: [SIZE], cover: 1, meanWaste: 12, wasteShare: 0.06 }], 0, '', language)]],
];

const labelsOf = (patterns: readonly Pattern[]) =>
  patterns.flatMap(({ beside, parts }) => [...beside.labels, ...parts.flatMap((part) => part.labels)]);
const textsOf = (patterns: readonly Pattern[]) => [...labelsOf(patterns).map(({ text }) => text), ...patterns.map(({ title }) => title)];

it.each(LANGUAGE_IDS)('%s: the longest words stay on the label of their bag', (language) => {
  for (const { beside } of sizesIn(language)) {
    const bags = beside.marks.filter(({ role }) => role === 'bag-label').map(({ paths }) => boxOf(paths));
    for (const { text, at, height } of bags.length === 0 ? [] : beside.labels.slice(1)) {
      const right = at.x + textWidth(text, height);
      const holds = ({ minX, maxX, minY, maxY }: Box) => at.x > minX && right < maxX && at.y > minY && at.y + height < maxY;
      expect(bags.some(holds), text).toBe(true);
    }
  }
});

it.each(LANGUAGE_IDS)('%s: a list keeps to the margin of its page', (language) => {
  for (const { beside } of [...listPages(ALL, '2026-01-31', language), ...sizesIn(language)])
    for (const { text, at, height } of beside.labels) expect(at.x + textWidth(text, height), text).toBeLessThanOrEqual(210 - 15);
});

describe.each(PAPERS)('a %s in another language', (_, papers) => {
  const english = papers('en');

  it.each(REST)('%s: no English left, every letter known, no decimal point, the same set', (language) => {
    const spoken = papers(language);
    expect(spoken.map(({ inputs }) => setIdOf(inputs))).toEqual(english.map(({ inputs }) => setIdOf(inputs)));
    expect(spoken.map(({ extents }) => extents.minX)).toEqual(english.map(({ extents }) => extents.minX));
    const before = textsOf(english);
    // Codes of cases and sizes stand as they are: they name the same in lists, on bags and in tables.
    const own = new Set([...ALL.map(({ code }) => code), 'SIZE-1', 'CASE-1', 'CASE-2', 'CASE-3', ...SAME_WORD]);
    for (const text of textsOf(spoken)) {
      expect(strokeText(text, { at: { x: 0, y: 0 }, height: 2 }).unknown, text).toEqual([]);
      expect(text).not.toMatch(/\d\.\d/);
      if (/[A-Za-z]{4}/.test(text) && !own.has(text) && !/^[A-Z-]+\d* {2}/.test(text)) expect(before).not.toContain(text);
    }
    expect(english[0]?.inputs).not.toHaveProperty('language');
    expect(spoken[0]?.inputs).toMatchObject({ language });
  });

  it('nothing beside the parts runs into its neighbour or off the page', () => {
    for (const language of LANGUAGE_IDS)
      for (const { beside, extents } of papers(language)) {
        const boxes = beside.labels
          .filter(({ angle }) => angle === 0)
          .map(({ text, at, height, align }) => {
            const wide = textWidth(text, height);
            const minX = align === 'left' ? at.x : align === 'right' ? at.x - wide : at.x - wide / 2;
            return { text, minX, maxX: minX + wide, minY: at.y, maxY: at.y + height };
          });
        for (const [k, a] of boxes.entries()) {
          expect(a.minX, a.text).toBeGreaterThanOrEqual(extents.minX);
          expect(a.maxX, a.text).toBeLessThanOrEqual(extents.maxX);
          for (const b of boxes.slice(k + 1)) {
            const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
            expect(apart, `${language}: "${a.text}" and "${b.text}"`).toBeGreaterThan(0);
          }
        }
      }
  });
});
