import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../../tests/by-night.ts';
import { boxOf, type LineArcPath, type Point, pointAlong, polyline, segmentsOf, vertex } from '../../geometry/path.ts';
import { placePath } from '../../geometry/transform.ts';
import { success } from '../../units/result.ts';
import { layOut } from './lay-out.ts';
import { layOutNested } from './lay-out-nested.ts';
import { GRAINS, type Layout, type LayRules, placedOutline, type SheetPart, type StockSheet } from './layout.ts';
import { layoutFaults, outlineGap } from './layout-faults.ts';
import { outlineProfile } from './outline-profile.ts';
import { sheetPattern } from './sheet-pattern.ts';

const RULES: LayRules = { gap: 2, margin: 5, grain: 'along' };
const QUARTER = Math.tan(Math.PI / 8);

/** A hat: a brim of `length` by `brim`, and a crown half as long on it, with arcs at its upper corners. */
function hat(length: number, brim: number, crown: number): LineArcPath {
  const r = Math.min(4, crown / 2);
  const [a, b] = [length / 4, (3 * length) / 4];
  return {
    closed: true,
    vertices: [
      vertex(0, 0),
      vertex(length, 0),
      vertex(length, brim),
      vertex(b, brim),
      vertex(b, brim + crown - r, QUARTER),
      vertex(b - r, brim + crown),
      vertex(a + r, brim + crown, QUARTER),
      vertex(a, brim + crown - r),
      vertex(a, brim),
      vertex(0, brim),
    ],
  };
}

function partOf(id: string, outline: LineArcPath): SheetPart {
  const { minX, minY, maxX, maxY } = boxOf([outline]);
  return { id, length: maxX - minX, width: maxY - minY, outline: placePath(outline, { dx: -minX, dy: -minY }) };
}

const hats = (count: number) => Array.from({ length: count }, (_, i) => partOf(`H${i + 1}`, hat(80 + i / 10, 20, 30)));

function nested(parts: readonly SheetPart[], sheet: StockSheet, rules = RULES, remnants: readonly StockSheet[] = []): Layout {
  const made = layOutNested({ parts, sheet, remnants, rules, effort: { seed: 1, work: 1_000_000 } });
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join());
  expect(layoutFaults(made.value, sheet, remnants)).toEqual([]);
  return made.value;
}

/** Points on an outline, at most 0.4 mm apart; arcs by their own formula. */
function sampled(outline: LineArcPath): Point[] {
  return segmentsOf(outline).flatMap((segment) => Array.from({ length: 200 }, (_, k) => pointAlong(segment, k / 200)));
}

function sampledGap(one: LineArcPath, other: LineArcPath): number {
  const [p, q] = [sampled(one), sampled(other)];
  // Called by the million: Math.hypot takes ten times as long.
  return Math.sqrt(Math.min(...p.map((a) => q.reduce((least, b) => Math.min(least, (a.x - b.x) ** 2 + (a.y - b.y) ** 2), Infinity))));
}

describe('layOutNested', () => {
  // Two hats, one upside down beside the other, take 80 + 60 + gaps where their boxes take 160: one sheet instead of two.
  const sheet = { id: 'sheet', along: 300, across: 62 };

  it('saves a sheet where outlines fit into each other, and says that shears cannot cut them apart', () => {
    const parts = hats(4);
    const boxes = layOut({ parts, sheet, remnants: [], rules: RULES });
    expect(boxes.ok && boxes.value.newSheets).toBe(2);
    const layout = nested(parts, sheet);
    expect([layout.newSheets, layout.atLeast]).toEqual([1, 1]);
    expect(layout.sheets.map((s) => s.byOutline)).toEqual([true]);
    const turned = layout.sheets[0]?.placements.map((p) => p.half === true) ?? [];
    expect(new Set(turned)).toEqual(new Set([false, true]));
    const outlines = (layout.sheets[0]?.placements ?? []).map((p) => placedOutline(parts[p.part] as SheetPart, p));
    for (const [i, one] of outlines.entries())
      for (const other of outlines.slice(i + 1)) expect(sampledGap(one, other)).toBeGreaterThanOrEqual(RULES.gap);
  });

  it('keeps to boxes where that saves no sheet, and claims no bound that holds for boxes alone', () => {
    expect(nested(hats(3), sheet).sheets.map((s) => s.byOutline === true)).toEqual([false]);
    // By boxes five of these need two sheets of 300; by area one might do, so that no more may be claimed.
    const tall = Array.from({ length: 5 }, (_, i) => partOf(`T${i}`, hat(100, 8, 36)));
    const layout = nested(tall, sheet);
    expect(layout.newSheets).toBeGreaterThan(1);
    expect(layout.atLeast).toBe(1);
  });

  it('keeps every rule for hats of many sizes with straight strips and remnants, whatever the grain', () => {
    const size = fc.record({
      length: fc.integer({ min: 30, max: 120 }),
      brim: fc.integer({ min: 6, max: 30 }),
      crown: fc.integer({ min: 4, max: 40 }),
    });
    const strips = fc.array(fc.integer({ min: 40, max: 150 }), { maxLength: 8 });
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 1, maxLength: 10 }),
        strips,
        fc.constantFrom(0, 0.5, 2, 3.3),
        fc.constantFrom(...GRAINS),
        fc.boolean(),
        (sizes, lengths, gap, grain, stocked) => {
          const parts = [
            ...sizes.map((s, i) => partOf(`H${i}`, hat(s.length, s.brim, s.crown))),
            ...lengths.map((length, i) => ({ id: `S${i}`, length, width: 15 })),
          ];
          const rules = { gap, margin: 4, grain };
          const one = { id: 'sheet', along: 190, across: 165 };
          const remnants = stocked ? [{ id: 'R1', along: 130, across: 60 }] : [];
          const layout = nested(parts, one, rules, remnants);
          const boxes = layOut({ parts, sheet: one, remnants, rules, effort: { seed: 1, work: 1_000_000 } });
          expect(boxes.ok && layout.newSheets <= boxes.value.newSheets).toBe(true);
        },
      ),
      { numRuns: times(6, 25) },
    );
  });

  it('is drawn with its parts turned as they were laid and one cut for the rest, which touches none', () => {
    const parts = hats(4);
    const layout = nested(parts, sheet);
    const pieces = parts.map(({ id, length, width }) => ({
      id,
      code: id,
      side: null,
      block: null,
      plate: null,
      length,
      width,
      quantity: 1,
      marks: [],
      warnings: [],
      invented: true,
      hand: null,
    }));
    const partOfPiece = ({ id }: { readonly id: string }) => {
      const outline = parts.find((p) => p.id === id)?.outline as LineArcPath;
      return success({ id, title: id, outline, holes: [], marks: [], labels: [] });
    };
    const drawn = sheetPattern({ layout, sheet: 0, pieces, partOf: partOfPiece, date: null, request: {} });
    if (!drawn.ok) throw new Error(drawn.problems[0]?.message);
    const outlines = drawn.value.parts.map((part) => part.outline);
    for (const [i, one] of outlines.entries())
      for (const other of outlines.slice(i + 1)) expect(outlineGap(one, other, RULES.gap)).toBeGreaterThanOrEqual(RULES.gap - 1e-6);
    expect(drawn.value.beside.labels.some((label) => label.text.startsWith('CUT ALONG THE OUTLINES'))).toBe(true);
    const cuts = drawn.value.beside.marks.filter((mark) => mark.role === 'shear-cut');
    const all = boxOf(outlines);
    expect(cuts).toHaveLength(1);
    expect(boxOf(cuts.flatMap((cut) => cut.paths)).minX).toBeGreaterThan(all.maxX);
  });

  it('is the same for the same request', () => {
    expect(nested(hats(7), sheet)).toEqual(nested(hats(7), sheet));
  });
});

describe('layoutFaults on a nested sheet', () => {
  const sheet = { id: 'sheet', along: 300, across: 62 };
  const faultsAfter = (change: (layout: Layout) => Layout) =>
    layoutFaults(change(nested(hats(4), sheet)), sheet, []).map((fault) => fault.code);
  const moved = (layout: Layout, dx: number): Layout => ({
    ...layout,
    sheets: layout.sheets.map((laid) => ({
      ...laid,
      placements: laid.placements.map((p, k) => (k === 1 ? { ...p, x: p.x + dx } : p)),
    })),
  });

  it('sees parts that come nearer than the gap by more than the placing leaves over', () => {
    expect(faultsAfter((layout) => moved(layout, 0))).toEqual([]);
    expect(faultsAfter((layout) => moved(layout, -0.5))).toContain('GAP');
    expect(faultsAfter((layout) => moved(layout, -30))).toContain('GAP');
  });

  it('sees a part that was turned upside down where it does not fit, one without its mark, and an outline of another size', () => {
    const flipped = (laid: Layout['sheets'][number]) => ({ ...laid, placements: laid.placements.map((p) => ({ ...p, half: !p.half })) });
    expect(faultsAfter((layout) => ({ ...layout, sheets: layout.sheets.map((laid) => flipped(laid)) }))).toEqual([]);
    const one = (laid: Layout['sheets'][number]) => ({
      ...laid,
      placements: laid.placements.map((p, k) => (k === 0 ? { ...p, half: !p.half } : p)),
    });
    expect(faultsAfter((layout) => ({ ...layout, sheets: layout.sheets.map(one) }))).toContain('GAP');
    expect(faultsAfter((layout) => ({ ...layout, sheets: layout.sheets.map((laid) => ({ ...laid, byOutline: false })) }))).toContain('GAP');
    const longer = (part: SheetPart) => ({ ...part, length: part.length + 0.01 });
    expect(faultsAfter((layout) => ({ ...layout, parts: layout.parts.map(longer) }))).toContain('OUTLINE');
  });
});

describe('outlineGap', () => {
  const square = polyline(
    [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ],
    true,
  );
  const disc: LineArcPath = { closed: true, vertices: [vertex(-5, 0, 1), vertex(5, 0, 1)] };

  it.each([
    ['a square and a disc', placePath(square, { dx: 8, dy: -5 }), disc, 3],
    ['a corner and a disc', placePath(square, { dx: 6, dy: 6 }), disc, Math.hypot(6, 6) - 5],
    ['two discs', disc, placePath(disc, { dx: 9, dy: 12 }), 5],
  ])('measures %s', (_, one, other, gap) => {
    for (const found of [outlineGap(one, other, 7), outlineGap(other, one, 7)]) {
      expect(found).toBeLessThanOrEqual(gap);
      expect(found).toBeGreaterThan(gap - 0.01);
    }
    // Far enough apart by their boxes, the boxes' distance does.
    expect(outlineGap(one, other, 1)).toBeLessThanOrEqual(gap);
  });

  it('is 0 where outlines cross and where one lies in the other', () => {
    expect(outlineGap(square, disc, 2)).toBe(0);
    expect(outlineGap(square, placePath(disc, { angle: 0, dx: 5, dy: 5 }), 2)).toBe(0);
    const small = placePath(square, { dx: 1, dy: 1 });
    const large = polyline(
      square.vertices.map(({ x, y }) => ({ x: 3 * x - 5, y: 3 * y - 5 })),
      true,
    );
    expect([outlineGap(small, large, 2), outlineGap(large, small, 2)]).toEqual([0, 0]);
  });
});

describe('outlineProfile', () => {
  it('holds every point of the outline with half the gap round it, as it lies', () => {
    for (const turned of [false, true])
      for (const half of [false, true])
        for (const swapped of [false, true]) {
          const part = partOf('H', hat(50, 10, 20));
          const profile = outlineProfile(part, turned, half, 3, swapped);
          const outline = placedOutline(part, { part: 0, x: 0, y: 0, turned, half });
          for (const point of sampled(outline)) {
            const [x, y] = swapped ? [point.y, point.x] : [point.x, point.y];
            for (let k = 0; k < 16; k++) {
              const angle = (k * Math.PI) / 8;
              const row = Math.floor(y + 1.5 * Math.sin(angle)) + profile.lead;
              const at = x + 1.5 * Math.cos(angle);
              if (at < (profile.left[row] as number) || at > (profile.right[row] as number)) expect([row, at]).toBe('inside');
            }
          }
        }
  });
});
