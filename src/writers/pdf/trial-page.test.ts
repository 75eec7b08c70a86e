import { describe, expect, it } from 'vitest';
import { BY_NIGHT } from '../../../tests/by-night.ts';
import { handOf, LARGEST, WORKED } from '../../../tests/hands.ts';
import { blockById } from '../../block/library.ts';
import { makePattern } from '../../pattern/make-pattern.ts';
import { paperTrial } from '../../pattern/strip/paper-trial.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { DEFAULT_SHEET_SETTINGS } from '../../sheet/paper/sheet-settings.ts';
import { layOutForPdf } from './pdf.ts';

function pagesOf(id: string, measures: typeof WORKED, withTrial: boolean) {
  const block = blockById(id);
  if (!block) throw new Error(id);
  const hand = handOf(measures);
  const made = makePattern({ kind: 'strip', hand, block, options: DEFAULT_STRIP_OPTIONS, date: null });
  const trial = paperTrial(hand, block, DEFAULT_STRIP_OPTIONS, null);
  if (!made.ok || !trial.ok) throw new Error('not made');
  const pattern = { ...made.value.pattern, ...(withTrial ? { paperTrial: trial.value } : {}) };
  // The pictures of the making take longest; by day it is left out.
  const parts = BY_NIGHT ? DEFAULT_SHEET_SETTINGS.parts : (['pattern'] as const);
  const sheet = layOutForPdf(pattern, { ...DEFAULT_SHEET_SETTINGS, parts });
  if (!sheet.ok) throw new Error(sheet.problems[0]?.message);
  return sheet.value.pages;
}

describe('the paper strip in a PDF', () => {
  it.each([
    ['ring-lowered-in-three', WORKED],
    ['long-and-ring-raised-in-four', LARGEST],
  ])(
    '%s: pages of its own after the pattern, at true size with its scale and its words, the others as they are without it',
    (id, measures) => {
      const [without, pages] = [pagesOf(id, measures, false), pagesOf(id, measures, true)];
      const own = pages.filter((page) => page.title.startsWith('PAPER STRIP'));
      expect(own.length).toBeGreaterThan(0);
      expect(pages.length).toBe(without.length + own.length);
      const strokes = own.flatMap((page) => page.layers.flatMap((layer) => layer.strokes));
      // 31 strokes a millimetre apart; a tile shows the whole drawing through its window.
      expect(strokes.filter((s) => s.role === 'paper-scale').length % 31).toBe(0);
      expect(strokes.some((s) => s.role === 'bar' || s.pen === 'bar')).toBe(true);
      const words = own.flatMap((page) => page.layers.flatMap((layer) => layer.texts.map((t) => t.text))).join(' ');
      for (const part of ['Measure the two bars', 'Outside up', 'Read on the scale', 'Reading:']) expect(words).toContain(part);
    },
  );
});
