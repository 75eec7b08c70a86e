import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CUT_SHEET, cutUpSheet } from '../../../tests/box-instances.ts';
import { times } from '../../../tests/by-night.ts';
import { layOut } from './lay-out.ts';
import { GRAINS, type Grain, type Layout, type LayRules, type SheetPart, type StockSheet } from './layout.ts';
import { layoutFaults } from './layout-faults.ts';

const SHEET: StockSheet = { id: 'sheet', along: 610, across: 457 };
const RULES: LayRules = { gap: 2, margin: 5, grain: 'along' };
const EFFORT = { seed: 3, work: 4_000_000 };

function laid(parts: readonly SheetPart[], rules: LayRules = RULES, remnants: readonly StockSheet[] = [], sheet = SHEET): Layout {
  const made = layOut({ parts, sheet, remnants, rules, effort: EFFORT });
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join());
  expect(layoutFaults(made.value, sheet, remnants)).toEqual([]);
  return made.value;
}

const named = (sizes: readonly (readonly [number, number])[]): SheetPart[] =>
  sizes.map(([length, width], i) => ({ id: `P${i + 1}`, length, width }));

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((t) => t / 10);
const strips = fc.array(fc.tuple(tenths(120, 230), fc.constant(20)), { minLength: 1, maxLength: 120 });
const plates = fc.array(fc.tuple(tenths(20, 180), tenths(15, 160)), { minLength: 1, maxLength: 40 });
const rulesOf = (grain: Grain) =>
  fc.record({ gap: fc.constantFrom(0, 0.5, 2, 3.3), margin: fc.constantFrom(0, 5, 12), grain: fc.constant(grain) });

describe('layOut', () => {
  it('finds back every sheet that was cut into nine parts, and never claims that fewer than one would do', () => {
    const made = Array.from({ length: 10 }, (_, k) => laid(cutUpSheet(k + 1, 9), { gap: 0, margin: 0, grain: 'free' }, [], CUT_SHEET));
    expect(made.map(({ atLeast }) => atLeast)).toEqual(made.map(() => 1));
    expect(made.map(({ newSheets }) => newSheets)).toEqual(made.map(() => 1));
  });

  it.each(GRAINS)('keeps every rule for strips of one width, grain %s', (grain) => {
    fc.assert(
      fc.property(strips, rulesOf(grain), (sizes, rules) => {
        laid(named(sizes), rules);
      }),
      { numRuns: times(8, 25) },
    );
  });

  it.each(GRAINS)('keeps every rule for boxes of many sizes, grain %s', (grain) => {
    fc.assert(
      fc.property(plates, rulesOf(grain), (sizes, rules) => {
        laid(named(sizes), rules);
      }),
      { numRuns: times(5, 15) },
    );
  });

  it('keeps every rule with remnants, and takes no more new sheets for having them (one more at most where chance picks the turns)', () => {
    const stock = fc.array(fc.tuple(tenths(30, 300), tenths(20, 200)), { maxLength: 5 });
    fc.assert(
      fc.property(strips, stock, fc.constantFrom(...GRAINS), (sizes, remnants, grain) => {
        const pieces = remnants.map(([along, across], i) => ({ id: `R${i}`, along, across }));
        const with_ = laid(named(sizes), { ...RULES, grain }, pieces);
        expect(with_.newSheets).toBeLessThanOrEqual(laid(named(sizes), { ...RULES, grain }).newSheets + (grain === 'free' ? 1 : 0));
      }),
      { numRuns: times(7, 20) },
    );
  });

  it('finds and proves the exact fit: 60 strips of 198.7 by 20 on one sheet, 61 on two', () => {
    // Inside the margins 600 x 447: three of 198.66 with two gaps of 2 in a row, twenty rows of 20 with nineteen gaps.
    const one = laid(named(Array.from({ length: 60 }, () => [198.6, 20] as const)));
    expect([one.newSheets, one.atLeast]).toEqual([1, 1]);
    const two = laid(named(Array.from({ length: 61 }, () => [198.6, 20] as const)));
    expect([two.newSheets, two.atLeast]).toEqual([2, 2]);
  });

  it('is the same for the same request and seed', () => {
    const sizes = Array.from({ length: 70 }, (_, i) => [120 + ((i * 37) % 97), 20 + (i % 3)] as const);
    expect(laid(named(sizes), { ...RULES, grain: 'free' })).toEqual(laid(named(sizes), { ...RULES, grain: 'free' }));
  });

  it('uses remnants first, so that the new sheet is not begun', () => {
    const layout = laid(
      named([
        [150, 20],
        [140, 20],
      ]),
      RULES,
      [{ id: 'R1', along: 320, across: 40 }],
    );
    expect(layout.sheets.map((s) => [s.stock.id, s.placements.length])).toEqual([['R1', 2]]);
    expect([layout.newSheets, layout.atLeast]).toEqual([0, 0]);
  });

  it('turns a part only where the grain lets it', () => {
    const tall = { id: 'sheet', along: 100, across: 300 };
    const parts = named([[250, 20]]);
    expect(laid(parts, { ...RULES, grain: 'free' }, [], tall).sheets[0]?.placements[0]?.turned).toBe(true);
    const refused = layOut({ parts, sheet: tall, remnants: [], rules: RULES });
    expect(refused.ok ? null : refused.problems.map((p) => [p.code, p.where, p.kind])).toEqual([['PART_TOO_LARGE', 'P1', 'refused']]);
  });
});

describe('layoutFaults', () => {
  const good = laid(
    named([
      [200, 20],
      [190, 20],
      [180, 20],
      [150, 20],
    ]),
  );
  const moved = (change: (placements: { part: number; x: number; y: number; turned: boolean }[]) => unknown): Layout => {
    const placements = good.sheets.flatMap((s) => s.placements.map((p) => ({ ...p })));
    change(placements);
    return { ...good, sheets: [{ stock: SHEET, isRemnant: false, placements }] };
  };
  const codes = (layout: Layout, remnants: readonly StockSheet[] = []) => [
    ...new Set(layoutFaults(layout, SHEET, remnants).map((f) => f.code)),
  ];

  it.each([
    ['a part left out', moved((p) => p.pop()), 'PART_MISSING'],
    ['a part twice', moved((p) => p.push({ part: 0, x: 300, y: 400, turned: false })), 'PART_TWICE'],
    ['a part that is not in the list', moved((p) => p.push({ part: 9, x: 300, y: 400, turned: false })), 'PART_UNKNOWN'],
    ['a part in the margin', moved((p) => Object.assign(p[0] ?? {}, { x: 4.99 })), 'OUTSIDE_MARGIN'],
    ['a part over the far edge', moved((p) => Object.assign(p[3] ?? {}, { x: 5, y: 433 })), 'OUTSIDE_MARGIN'],
    ['a part not a number', moved((p) => Object.assign(p[0] ?? {}, { x: Number.NaN })), 'OUTSIDE_MARGIN'],
    ['a part too near', moved((p) => Object.assign(p[3] ?? {}, { x: 5, y: 5 + 20 + 1.99 })), 'GAP'],
    ['a turned part', moved((p) => Object.assign(p[3] ?? {}, { x: 5, y: 100, turned: true })), 'GRAIN'],
  ])('finds %s', (_, layout, code) => {
    expect(codes(layout)).toContain(code);
  });

  it('finds a pinwheel, which no cut from edge to edge takes apart', () => {
    const parts = named([
      [100, 50],
      [50, 100],
      [100, 50],
      [50, 100],
    ]);
    const at = [
      [10, 10],
      [112, 10],
      [62, 112],
      [10, 62],
    ] as const;
    const placements = at.map(([x, y], part) => ({ part, x, y, turned: false }));
    const layout: Layout = { parts, rules: RULES, sheets: [{ stock: SHEET, isRemnant: false, placements }], newSheets: 1, atLeast: 1 };
    expect(codes(layout)).toEqual(['NOT_FOR_SHEARS']);
  });

  it('finds stock that is not there or used twice, and a bound above what was found', () => {
    const remnant = { id: 'R1', along: 610, across: 457 };
    const twice = {
      ...good,
      sheets: [...good.sheets, ...good.sheets].map((s) => ({ ...s, stock: remnant, isRemnant: true })),
      newSheets: 0,
      atLeast: 0,
    };
    expect(codes(twice, [remnant])).toContain('STOCK');
    expect(codes({ ...good, sheets: good.sheets.map((s) => ({ ...s, stock: { ...SHEET, along: 700 } })) })).toEqual(['STOCK']);
    expect(codes({ ...good, atLeast: 2 })).toEqual(['BOUND']);
  });
});
