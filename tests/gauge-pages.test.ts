import { describe, expect, it } from 'vitest';
import { makePattern } from '../src/pattern/make-pattern.ts';
import { DEFAULT_PLATE_OPTIONS } from '../src/pattern/plate/plate-options.ts';
import { type Page, text } from '../src/sheet/paper/page.ts';
import { PAPERS, printableBox } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS } from '../src/sheet/paper/sheet-settings.ts';
import { layOutForPdf } from '../src/writers/pdf/pdf.ts';
import { tried } from './by-night.ts';
import { demoPlateHand } from './demo-plate.ts';
import { collisions, inkBox, TOUCHING } from './page-boxes.ts';

const hand = demoPlateHand();
const ANGLES = Array.from({ length: 19 }, (_, k) => 5 * k);
const cases = ANGLES.flatMap((angle) => (['a4', 'letter'] as const).map((paper) => [angle, paper] as const));
/** Narrowest and longest, widest, and one at which the heading once left the page. */
const BY_DAY = ['0 a4', '65 letter', '90 a4'];

/** What must not be on a page: words on each other, ink beyond what the paper prints. */
function faults(page: Page, paper: 'a4' | 'letter', orientation: 'portrait' | 'landscape'): readonly string[] {
  const read = page.kind === 'handout' || page.kind === 'story';
  const [way, area] = read ? (['portrait', 'paper'] as const) : ([orientation, 'both'] as const);
  const room = printableBox(PAPERS[paper], way, DEFAULT_SHEET_SETTINGS.margin, area);
  const ink = inkBox(page);
  const beyond = [
    ['left', room.minX - ink.minX],
    ['right', ink.maxX - room.maxX],
    ['below', room.minY - ink.minY],
    ['above', ink.maxY - room.maxY],
  ] as const;
  return [...collisions(page), ...beyond.flatMap(([side, by]) => (by > TOUCHING ? [`${by.toFixed(1)} mm beyond the page, ${side}`] : []))];
}

function makingOf(angle: number, paper: 'a4' | 'letter') {
  const plate = { id: 'test', title: 'Test', faces: 'dorsal', digits: ['index', 'long', 'ring', 'little'], angle } as const;
  const made = makePattern({ kind: 'plate', hand, plate, options: DEFAULT_PLATE_OPTIONS, date: null });
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join('\n'));
  const laid = layOutForPdf(made.value.pattern, { ...DEFAULT_SHEET_SETTINGS, parts: ['making'], paper: PAPERS[paper] });
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value;
}

describe('the making pages of a plate', () => {
  it.each(tried(cases, (c) => BY_DAY.includes(c.join(' '))))(
    'at %d degrees on %s: each line of text is on the page and on nothing else, the gauge with its words and the picture of how it is held',
    (angle, paper) => {
      const sheet = makingOf(angle, paper);
      for (const page of sheet.pages) expect(faults(page, paper, sheet.orientation), page.title).toEqual([]);
      const strokes = sheet.pages.flatMap((page) => page.layers.flatMap((layer) => layer.strokes));
      const words = sheet.pages.flatMap((page) => page.layers.flatMap((layer) => layer.texts.map((t) => t.text)));
      expect(strokes.filter((s) => s.role === 'angle-gauge')).toHaveLength(1);
      expect(words.join(' ')).toMatch(/gauge/i);
      // What is to be measured of a print is on the page: its bars, not the square of a drawing.
      expect(words.join(' ')).toContain('measure both bars');
      expect(words.join(' ')).not.toContain('50 mm square');
      // A hand with the paper beside it.
      for (const role of ['skin', 'done'])
        expect(
          strokes.some((s) => s.role.startsWith(role)),
          role,
        ).toBe(true);
    },
    60_000,
  );

  it('would be found wrong if the words over the gauge stood in one line, as they once did', () => {
    const sheet = makingOf(90, 'a4');
    const page = sheet.pages.find((p) => p.layers.some((layer) => layer.strokes.some((s) => s.role === 'angle-gauge')));
    const layer = page?.layers.find((l) => l.texts.some((t) => /gauge/i.test(t.text)));
    const head = layer?.texts.find((t) => /gauge/i.test(t.text));
    if (!page || !layer || !head) throw new Error('no gauge');
    const spoilt = {
      ...head,
      text: 'Angle gauge, 90 degrees: cut out, ring on the MP joint from the side, held with both arms along metacarpal and finger',
      bold: true,
    };
    const far = { ...page, layers: [...page.layers, { clip: null, strokes: [], texts: [text(spoilt.text, head.at.x, head.at.y, 4)] }] };
    expect(faults(page, 'a4', sheet.orientation)).toEqual([]);
    expect(faults(far, 'a4', sheet.orientation).join()).toMatch(/beyond the page, right|" on "/);
  }, 60_000);
});
