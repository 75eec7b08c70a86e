import { describe, expect, it } from 'vitest';
import demo from '../fixtures/demo-hand.json' with { type: 'json' };
import { blocks } from '../src/block/library.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { chooseForHand } from '../src/pattern/plan-hand.ts';
import { plates } from '../src/pattern/plate/plate-names.ts';
import type { PlatePreset } from '../src/pattern/plate/read-plate.ts';
import { paperTrial } from '../src/pattern/strip/paper-trial.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import type { Page } from '../src/sheet/paper/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, SHEET_PARTS } from '../src/sheet/paper/sheet-settings.ts';
import { LANGUAGE_IDS, type Language } from '../src/words/language.ts';
import { layOutForPdf } from '../src/writers/pdf/pdf.ts';
import { BY_NIGHT, tried } from './by-night.ts';
import { presetOf, presetPlate } from './demo-plate.ts';
import { collisions, inkBox, TOUCHING } from './page-boxes.ts';
import { DEMO_HAND, stripOf } from './pdf-samples.ts';

type PaperName = 'a4' | 'letter';

/** Every page's texts that lie on each other, and whether ink runs off it. */
function faults(pattern: Pattern, language: Language, paper: PaperName): readonly string[] {
  const laid = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts: SHEET_PARTS, language, paper: PAPERS[paper] });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value.pages.flatMap((page) => [
    ...collisions(page).map((words) => `${page.title}: ${words}`),
    ...offPage(page, laid.value.orientation, paper),
  ]);
}

function offPage(page: Page, orientation: 'portrait' | 'landscape', paper: PaperName): readonly string[] {
  const read = page.kind === 'handout' || page.kind === 'story';
  const room = printableBox(PAPERS[paper], read ? 'portrait' : orientation, DEFAULT_SHEET_SETTINGS.margin, 'paper');
  const ink = inkBox(page);
  const off = Math.max(room.minX - ink.minX, ink.maxX - room.maxX, room.minY - ink.minY, ink.maxY - room.maxY);
  return off > TOUCHING ? [`${page.title}: ${off.toFixed(1)} mm off the page`] : [];
}

/** The strip that the plan gives the demo hand's mirror image where a border finger cannot be straightened, with its paper strip. */
function borderStrip(digit: 'index' | 'little', language: Language): Pattern {
  const hand = readHand({ ...demo, side: 'right', target: { digit, pipExtensionDeficit: 30, pipFlexionDeficit: 0 } });
  const chosen = hand.ok ? chooseForHand(hand.value, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false }) : hand;
  if (!hand.ok || !chosen.ok) throw new Error(JSON.stringify(chosen));
  const { block } = chosen.value;
  const made = makePattern({ kind: 'strip', hand: hand.value, block, options: DEFAULT_STRIP_OPTIONS, date: null, language });
  const trial = paperTrial(hand.value, block, DEFAULT_STRIP_OPTIONS, null, language);
  if (!made.ok || !trial.ok) throw new Error(JSON.stringify([made, trial]));
  return { ...made.value.pattern, paperTrial: trial.value };
}

const everywhere = <Id>(ids: readonly Id[]) =>
  ids.flatMap((id) => LANGUAGE_IDS.flatMap((language) => (['a4', 'letter'] as const).map((paper) => [id, language, paper] as const)));

describe('the papers in three languages: no text on another, none off the page', () => {
  const strips = everywhere(blocks().map((block) => block.id));
  const stripsByDay = ['ring-lowered-in-three de letter', 'long-and-ring-raised-in-four es a4'];
  it.each(tried(strips, (c) => stripsByDay.includes(c.join(' '))))('%s, %s, %s', (id, language, paper) => {
    expect(faults(stripOf(DEMO_HAND, id, '2026-03-31', language), language, paper)).toEqual([]);
  });

  const held = everywhere(plates().map((plate) => plate.id));
  const platesByDay = ['mp-immobilisation-palmar es letter', 'mp-immobilisation-dorsal de a4'];
  it.each(tried(held, (c) => platesByDay.includes(c.join(' '))))('%s, %s, %s', (id, language, paper) => {
    const angles = BY_NIGHT ? [0, 20, 45, 70, 90] : [45];
    for (const angle of angles) {
      const plate = plates().find((p) => p.id === id);
      if (plate?.angle !== null && plate?.angle !== angle && angle !== 45) continue;
      expect(faults(presetPlate(id, plate?.angle === null ? angle : null, undefined, {}, language).pattern, language, paper)).toEqual([]);
    }
  });

  // A border finger is treated by the fingers beside it; the longest of all making pages, with the paper strip on its own.
  const borders = everywhere(['little', 'index'] as const);
  it.each(tried(borders, (c) => ['little de letter', 'index es a4'].includes(c.join(' '))))(
    'treated: the %s finger, %s, %s',
    (digit, language, paper) => {
      expect(faults(borderStrip(digit, language), language, paper)).toEqual([]);
    },
  );

  const narrow = everywhere(['dorsal', 'palmar'] as const);
  it.each(tried(narrow, (c) => ['palmar es letter', 'dorsal de a4'].includes(c.join(' '))))(
    'a %s plate round ring and little finger, %s, %s',
    (face, language, paper) => {
      const preset: PlatePreset = { ...presetOf(`plate-${face}`), digits: ['ring', 'little'] };
      for (const angle of BY_NIGHT ? [0, 20, 45, 55, 70, 90] : [55])
        expect(faults(presetPlate(preset, angle, undefined, {}, language).pattern, language, paper)).toEqual([]);
    },
  );

  it('finds words on the edge of a gauge', () => {
    const laid = layOutForPdf(stripOf(DEMO_HAND, 'ring-lowered-in-three'), { ...DEFAULT_SHEET_SETTINGS, parts: ['making'] });
    const page = laid.ok ? laid.value.pages.find((p) => p.kind === 'making') : undefined;
    if (!page) throw new Error('no page');
    // As the gauge's words once stood: the wedge's corner in them.
    const low = page.layers.map((layer) => ({ ...layer, texts: layer.texts.map((t) => ({ ...t, at: { x: t.at.x, y: t.at.y - 1.2 } })) }));
    expect(collisions({ ...page, layers: low }).some((found) => found.endsWith('on the edge of a gauge'))).toBe(true);
  });

  it('finds a heading that runs off, and a list that another lies over', () => {
    const laid = layOutForPdf(stripOf(DEMO_HAND, 'ring-lowered-in-three'), { ...DEFAULT_SHEET_SETTINGS, parts: ['making'] });
    if (!laid.ok) throw new Error('no pages');
    const page = laid.value.pages.find((p) => p.kind === 'making') as Page;
    const [layer] = page.layers.slice(1);
    const words = layer?.texts.find((t) => t.bold);
    if (!layer || !words) throw new Error('no heading');
    // As the gauge's heading once stood: on one line, however long.
    const long = { ...words, at: { ...words.at, x: 150 }, text: 'Angle gauge, 45 degrees: cut out, ring on the MP joint from the side' };
    expect(offPage({ ...page, layers: [...page.layers, { ...layer, strokes: [], texts: [long] }] }, 'portrait', 'a4')).toHaveLength(1);
    // As the cutting order once stood: over the list of parts.
    const over = layer.texts.map((t) => ({ ...t, text: `1. ${t.text}`, at: { x: t.at.x + 1, y: t.at.y - 1 } }));
    expect(collisions({ ...page, layers: [...page.layers, { ...layer, strokes: [], texts: over }] }).length).toBeGreaterThan(5);
  });
});
