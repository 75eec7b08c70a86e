import { describe, expect, it } from 'vitest';
import demo from '../fixtures/demo-hand.json' with { type: 'json' };
import { blocks } from '../src/block/library.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import type { CutPiece } from '../src/sheet/plastic/cut-list.ts';
import { layOut } from '../src/sheet/plastic/lay-out.ts';
import { listPages } from '../src/sheet/plastic/list-pages.ts';
import { stripPiece } from '../src/sheet/plastic/piece.ts';
import { partOfPiece } from '../src/sheet/plastic/piece-part.ts';
import { sheetPattern } from '../src/sheet/plastic/sheet-pattern.ts';
import { drawOrder } from '../src/writers/draw-order.ts';

const SHEET = { id: 'sheet', along: 610, across: 457 };

function pieces(): readonly CutPiece[] {
  const hand = readHand(demo);
  if (!hand.ok) throw new Error('demo hand');
  return blocks().flatMap((block) => {
    const piece = stripPiece(hand.value, block, DEFAULT_STRIP_OPTIONS);
    return piece.ok ? [piece.value] : [];
  });
}

function drawn(all: readonly CutPiece[], drawnAs = all) {
  const made = layOut({ parts: all, sheet: SHEET, remnants: [], rules: { gap: 2, margin: 5, grain: 'free' } });
  if (!made.ok) throw new Error('not laid out');
  const source = { options: DEFAULT_STRIP_OPTIONS, blockOf: (id: string) => blocks().find((b) => b.id === id) };
  return sheetPattern({ layout: made.value, sheet: 0, pieces: drawnAs, partOf: (p) => partOfPiece(p, source), date: null, request: {} });
}

describe('sheetPattern', () => {
  it('draws the strips of all ten blocks with every mark of theirs, each with a number of its own', () => {
    const all = pieces();
    expect(all).toHaveLength(10);
    const made = drawn(all);
    if (!made.ok) throw new Error(made.problems[0]?.message);
    const { parts, extents, kind } = made.value;
    expect([kind, parts.length, extents.minX, extents.minY]).toEqual(['sheet', 10, 0, 0]);
    for (const [k, part] of parts.entries()) {
      expect(part.labels.filter((label) => label.text === String(k + 1))).toHaveLength(1);
      const texts = part.labels.map((label) => label.text).join(' ');
      expect(texts).toMatch(/LEFT/);
      expect(texts).toMatch(/OUTSIDE/);
      expect(part.marks.map((mark) => mark.role)).toEqual(expect.arrayContaining(['distal-arrow', 'corner']));
    }
  });

  it('refuses a piece whose outline is no longer as large as it was laid', () => {
    const all = pieces();
    const longer = all.map((piece, i) => (i === 4 ? { ...piece, length: piece.length + 1 } : piece));
    const made = drawn(longer);
    expect(made.ok ? null : made.problems.map((p) => [p.code, p.where])).toEqual([['PIECE_CHANGED', all[4]?.id]]);
  });

  it('the printed list has every piece once, on pages whose letters all writers have', () => {
    const [first] = pieces();
    const all = Array.from({ length: 130 }, (_, i) => ({ ...(first as CutPiece), code: `P-${i + 1}` }));
    const pages = listPages(all, '2026-01-31');
    expect(pages.length).toBeGreaterThan(1);
    const texts = pages.flatMap((page) => page.beside.labels.map((label) => label.text));
    for (const piece of all) expect(texts.filter((text) => text === piece.code)).toHaveLength(1);
    for (const page of pages) {
      expect(drawOrder(page).ok).toBe(true);
      for (const { at } of page.beside.labels) expect(at.x > 0 && at.x < 210 && at.y > 0 && at.y < 297).toBe(true);
    }
  });
});
