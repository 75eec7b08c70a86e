import { seeded } from '../../units/chance.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { type CutEffort, cutBars, DEFAULT_EFFORT } from '../bars/cut-bars.ts';
import { fillOneSheet } from './fill-one-sheet.ts';
import type { LaidSheet, Layout, LayRules, SheetPart, StockSheet } from './layout.ts';
import { fullestSheet, packBothWays } from './pack-both-ways.ts';
import { exchanged, exchangedPut, fits, type PackPart, type Put, packParts, placementOf, type Room, roomOf, turnsOf } from './pack-box.ts';
import { PACK_RULES, type PackRule, packGuillotine } from './pack-guillotine.ts';
import { type BarCutter, fillRoom, packRows } from './pack-rows.ts';
import { sheetsAtLeast } from './sheet-bounds.ts';

export interface LayRequest {
  readonly parts: readonly SheetPart[];
  readonly sheet: StockSheet;
  /** Used first, each once, in the order given. */
  readonly remnants: readonly StockSheet[];
  readonly rules: LayRules;
  readonly effort?: CutEffort;
  readonly cutter?: BarCutter;
}

/** Orders of mixed boxes tried by chance, in all; with more parts fewer, so that the time stays about the same. */
const SHUFFLES = 60_000;
const MOST_SHUFFLED = 400;
/** Rounds of a stretch of the search, as a power of two. */
const STRETCH_BITS = 8;

/**
 * Parts on remnants and then on as few new sheets as were found, every sheet so that it can be cut with shears from edge to edge. The same request gives
 * the same layout. Refused with `PART_TOO_LARGE` for each part that fits no sheet.
 */
export function layOut({ parts, sheet, remnants, rules, effort = DEFAULT_EFFORT, cutter = cutBars }: LayRequest): Result<Layout> {
  const all = packParts(parts, rules);
  const room = roomOf(sheet, rules);
  const turns = turnsOf(rules.grain);
  const onRemnants = fillRemnants(all, remnants, rules);
  const rest = onRemnants.rest;
  const tooLarge = rest.filter((p) => !turns.some((turned) => fits(p, room, turned)));
  if (tooLarge.length > 0)
    return failure(
      ...tooLargeProblems(
        tooLarge.map((p) => parts[p.part] as SheetPart),
        sheet,
        rules,
      ),
    );
  const packed = rest.length === 0 ? { sheets: [], bound: 0 } : fewestSheets(rest, room, turns, effort, cutter);
  const bound = remnants.length === 0 ? packed.bound : areaBound(all, remnants, rules, room);
  const sheets: LaidSheet[] = [
    ...onRemnants.sheets,
    ...packed.sheets.map((put) => ({ stock: sheet, isRemnant: false, placements: put.map((p) => placementOf(p, rules)) })),
  ];
  return success({ parts, rules, sheets, newSheets: packed.sheets.length, atLeast: bound });
}

type Packing = readonly (readonly Put[])[];

function fewestSheets(
  parts: readonly PackPart[],
  room: Room,
  turns: readonly boolean[],
  effort: CutEffort,
  cutter: BarCutter,
): { sheets: Packing; bound: number } {
  const found: Packing[] = [];
  let rowsBound = 0;
  for (const turned of turns) {
    if (!parts.every((p) => fits(p, room, turned))) continue;
    const seen = turned ? exchanged(room) : room;
    const rows = packRows(parts, seen, effort, cutter);
    found.push(turned ? rows.sheets.map((put) => put.map(exchangedPut)) : rows.sheets);
    if (turns.length === 1)
      rowsBound = Math.max(...[...rows.rowsAtLeast].map(([width, count]) => Math.ceil(count / Math.floor(seen.across / width))));
  }
  const bound = Math.max(rowsBound, sheetsAtLeast(parts, room, turns));
  if (turns.length > 1) found.push(...[packBothWays(parts, room)].filter((p) => p !== null));
  const widths = new Set(parts.map((p) => p.width)).size;
  if (widths > 1 || turns.length > 1)
    found.push(mixed(parts, room, turns, bound, effort, Math.min(...found.map((p) => p.length), Number.POSITIVE_INFINITY)));
  if (effort.work > 0 && bound <= 1 && found.every((packing) => packing.length > 1)) {
    const one = fillOneSheet(parts, room, turns);
    if (one !== null) found.push([one]);
  }
  return { sheets: found.reduce((best, packing) => (packing.length < best.length ? packing : best)), bound };
}

/** Mixed boxes: a few fixed orders, then shuffled ones until the bound is reached. */
function mixed(
  parts: readonly PackPart[],
  room: Room,
  turns: readonly boolean[],
  bound: number,
  effort: CutEffort,
  toBeat: number,
): Packing {
  const orders: ((a: PackPart, b: PackPart) => number)[] = [
    (a, b) => b.length * b.width - a.length * a.width,
    (a, b) => b.width - a.width || b.length - a.length,
    (a, b) => b.length - a.length || b.width - a.width,
    (a, b) => Math.min(b.length, b.width) - Math.min(a.length, a.width),
  ];
  const size = new Map(parts.map((p) => [p.part, (p.length * p.width) / (room.along * room.across)]));
  let bestOrder = parts;
  let bestRule = PACK_RULES[0] as PackRule;
  let best: Packing | null = null;
  const attempt = (order: readonly PackPart[], rule: PackRule) => {
    const packing = packGuillotine(order, room, turns, rule);
    if (best !== null && fullness(packing, size) <= fullness(best, size)) return;
    best = packing;
    bestOrder = order;
    bestRule = rule;
  };
  // Parts of one width lie in rows, which are cut as bars; no order of boxes does better often enough to be looked for.
  const hasWidths = parts.some((p) => p.width !== parts[0]?.width);
  const isSearched = effort.work > 0 && hasWidths && parts.length <= MOST_SHUFFLED;
  const isOver = () => Math.min(toBeat, (best as Packing | null)?.length ?? toBeat) <= bound;
  const sorted = orders.map((order) => parts.toSorted((a, b) => order(a, b) || a.part - b.part));
  for (const rule of isSearched ? PACK_RULES : PACK_RULES.slice(0, 1))
    for (const order of sorted) if (best === null || !isOver()) attempt(order, rule);
  const random = seeded(effort.seed);
  const rounds = isSearched ? Math.ceil(SHUFFLES / parts.length) : 0;
  for (let round = 0; round < rounds && !isOver(); round++) {
    // Mostly from the best order so far and by any rule; every fourth stretch from a sorted order, moved as far as chance will.
    const isNew = (round >> STRETCH_BITS) % 4 === 3;
    const order = [...(isNew ? (sorted[round % sorted.length] as readonly PackPart[]) : bestOrder)];
    const moves = isNew ? 1 + Math.floor(random() * order.length) : 1 + (round % 4);
    for (let k = 0; k < moves; k++) {
      const from = Math.floor(random() * order.length);
      const [moved] = order.splice(from, 1) as [PackPart];
      order.splice(Math.floor(random() * (order.length + 1)), 0, moved);
    }
    attempt(order, round % 4 === 0 ? bestRule : (PACK_RULES[Math.floor(random() * PACK_RULES.length)] as PackRule));
  }
  if (best === null) throw new RangeError('nothing to lay out');
  return best;
}

/** Fewer sheets are better, then a last sheet with less on it. */
function fullness(packing: Packing, size: ReadonlyMap<number, number>): number {
  const last = (packing.at(-1) ?? []).reduce((sum, { part }) => sum + (size.get(part) ?? 0), 0);
  return -packing.length - last / (1 + last);
}

function fillRemnants(
  parts: readonly PackPart[],
  remnants: readonly StockSheet[],
  rules: LayRules,
): { sheets: LaidSheet[]; rest: readonly PackPart[] } {
  const sheets: LaidSheet[] = [];
  let rest = parts;
  for (const stock of remnants) {
    const room = roomOf(stock, rules);
    if (rest.length === 0 || room.along <= 0 || room.across <= 0) continue;
    const put =
      rules.grain === 'along'
        ? fillRoom(rest, room)
        : rules.grain === 'across'
          ? fillRoom(rest, exchanged(room)).map(exchangedPut)
          : fullestSheet(rest, room);
    if (put.length === 0) continue;
    sheets.push({ stock, isRemnant: true, placements: put.map((p) => placementOf(p, rules)) });
    const taken = new Set(put.map((p) => p.part));
    rest = rest.filter((p) => !taken.has(p.part));
  }
  return { sheets, rest };
}

/** With remnants only areas bound the new sheets: what the remnants could hold at most is taken off. */
function areaBound(parts: readonly PackPart[], remnants: readonly StockSheet[], rules: LayRules, room: Room): number {
  const needed = parts.reduce((sum, p) => sum + p.length * p.width, 0);
  const given = remnants.reduce((sum, stock) => {
    const { along, across } = roomOf(stock, rules);
    return sum + Math.max(0, along) * Math.max(0, across);
  }, 0);
  return Math.max(0, Math.ceil((needed - given) / (room.along * room.across) - 1e-9));
}

/** Sizes that are told one by one. */
const MOST_TOLD = 20;

/** One problem for each size that fits nowhere, and of many sizes how many more there are. */
function tooLargeProblems(parts: readonly SheetPart[], sheet: StockSheet, rules: LayRules): readonly Problem[] {
  const bySize = new Map<string, SheetPart[]>();
  for (const part of parts) {
    const size = `${plain(part.length, 1)} x ${plain(part.width, 1)} mm`;
    const alike = bySize.get(size);
    if (alike) alike.push(part);
    else bySize.set(size, [part]);
  }
  const problems = [...bySize].slice(0, MOST_TOLD).map(([size, alike]) => tooLargeProblem(size, alike, sheet, rules));
  const more = bySize.size - problems.length;
  if (more === 0) return problems;
  return [...problems, { code: 'PART_TOO_LARGE', where: '', message: `and pieces of ${more} more sizes fit no sheet.`, kind: 'refused' }];
}

function tooLargeProblem(size: string, [first, ...others]: readonly SheetPart[], sheet: StockSheet, rules: LayRules): Problem {
  const within = `${plain(sheet.along - 2 * rules.margin, 1)} x ${plain(sheet.across - 2 * rules.margin, 1)} mm`;
  const id = first?.id ?? '';
  const subject = others.length === 0 ? `${id} is ${size} and fits` : `${id} and ${others.length} more pieces of ${size} fit`;
  const message = `${subject} no sheet: inside the margins there are ${within} along and across the grain, and the grain is ${rules.grain}. Take a larger sheet, a smaller margin or --grain free.`;
  return { code: 'PART_TOO_LARGE', where: id, message, kind: 'refused' };
}
