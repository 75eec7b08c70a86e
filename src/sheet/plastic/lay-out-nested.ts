import { seeded } from '../../units/chance.ts';
import { type Result, success } from '../../units/result.ts';
import { DEFAULT_EFFORT } from '../bars/cut-bars.ts';
import { type LayRequest, layOut } from './lay-out.ts';
import { areaOf, type LaidSheet, type Layout, type LayRules, type SheetPart, type StockSheet } from './layout.ts';
import { packParts, roomOf, turnsOf } from './pack-box.ts';
import { type Liking, type NestPart, nestParts, packOutlines } from './pack-outlines.ts';
import { sheetsAtLeast } from './sheet-bounds.ts';

/** Steps over rows that all orders together may take: some tenths of a second on a machine of 2020, and the same layout on every one. */
const MOST_WORK = 400_000_000;
const MOST_ORDERS = 400;

/**
 * Lays parts out as `layOut` does, and also by their true outlines where parts have one: nested as far as the outlines let them, half turned or not, on sheets
 * of their own, with straight strips in what is left of these. The nested layout is taken only when it saves a sheet, since its parts cannot be cut apart with
 * shears. The same request gives the same layout. Refused as `layOut` is.
 */
export function layOutNested(request: LayRequest): Result<Layout> {
  const boxes = layOut(request);
  if (!boxes.ok || request.rules.shears || request.parts.every((part) => !part.outline)) return boxes;
  const atLeast = leastSheets(request);
  // What holds for boxes does not hold for outlines.
  const byBox: Layout = { ...boxes.value, atLeast: Math.min(atLeast, boxes.value.newSheets) };
  const nested = byBox.newSheets > byBox.atLeast ? nest(request, byBox) : null;
  return success(nested && nested.newSheets < byBox.newSheets ? { ...nested, atLeast: byBox.atLeast } : byBox);
}

/** The best nesting found of what lies on new sheets. */
function nest(request: LayRequest, byBox: Layout): Layout | null {
  const { parts, rules, effort = DEFAULT_EFFORT } = request;
  const onRemnants = byBox.sheets.filter((laid) => laid.isRemnant);
  const placed = new Set(onRemnants.flatMap((laid) => laid.placements.map((p) => p.part)));
  const rest = parts.map((_, part) => part).filter((part) => !placed.has(part));
  const size = (part: number) => areaOf(parts[part] as SheetPart);
  const isNested = (part: number) => parts[part]?.outline !== undefined;
  const plates = rest.filter(isNested).sort((a, b) => size(b) - size(a) || a - b);
  const strips = rest.filter((part) => !isNested(part)).sort((a, b) => size(b) - size(a) || a - b);
  if (plates.length === 0) return null;
  const random = seeded(effort.seed);
  let work = 0;
  let best: Layout | null = null;
  const ways = [false, true].flatMap((swapped) => {
    const made = nestParts(parts, [...plates, ...strips], rules, swapped);
    return (['end', 'loss'] as const).map((liking) => ({
      swapped,
      liking,
      sorted: made.slice(0, plates.length),
      plates: made.slice(0, plates.length) as readonly NestPart[],
      strips: made.slice(plates.length),
      left: Number.POSITIVE_INFINITY,
    }));
  });
  for (let order = 0; order < MOST_ORDERS && work < MOST_WORK && (effort.work > 0 || order < ways.length); order++) {
    const way = ways[order % ways.length] as (typeof ways)[number];
    // From the largest first and from the best order so far in turn, since one finds what the other does not.
    const from = Math.floor(order / ways.length) % 2 === 0 ? way.sorted : way.plates;
    const inOrder = order < ways.length ? way.plates : shuffled(from, random);
    const tried = attempt(request, onRemnants, way, inOrder, (best?.newSheets ?? byBox.newSheets) - 1);
    work += tried.work;
    // An order that leaves no more out is the next one's start.
    if (tried.left <= way.left) {
      way.plates = inOrder;
      way.left = tried.left;
    }
    if (tried.layout) best = tried.layout;
    if (best && best.newSheets <= byBox.atLeast) break;
  }
  return best;
}

/** One order: the plates, then strips in what their sheets leave, the other strips by their boxes; null when more than `mostSheets` are needed. */
function attempt(
  request: LayRequest,
  onRemnants: readonly LaidSheet[],
  way: { readonly swapped: boolean; readonly liking: Liking; readonly strips: readonly NestPart[] },
  plates: readonly NestPart[],
  mostSheets: number,
): { layout: Layout | null; left: number; work: number } {
  const { parts, sheet, rules } = request;
  const alone = packOutlines(plates, sheet, rules, way.swapped, way.liking, mostSheets);
  const left = alone.rest.reduce((sum, part) => sum + areaOf(parts[part] as SheetPart), 0);
  if (alone.rest.length > 0) return { layout: null, left, work: alone.work };
  if (way.strips.length === 0) return { layout: whole(parts, rules, onRemnants, alone.sheets), left, work: alone.work };
  const filled = packOutlines([...plates, ...way.strips], sheet, rules, way.swapped, way.liking, alone.sheets.length);
  const work = alone.work + filled.work;
  if (filled.rest.length === 0) return { layout: whole(parts, rules, onRemnants, filled.sheets), left, work };
  const others = layOut({ ...request, remnants: [], parts: filled.rest.map((part) => parts[part] as SheetPart) });
  if (!others.ok || filled.sheets.length + others.value.newSheets > mostSheets) return { layout: null, left, work };
  const straight = others.value.sheets.map((laid) => ({
    ...laid,
    placements: laid.placements.map((p) => ({ ...p, part: filled.rest[p.part] as number })),
  }));
  return { layout: whole(parts, rules, onRemnants, [...filled.sheets, ...straight]), left, work };
}

function whole(parts: readonly SheetPart[], rules: LayRules, onRemnants: readonly LaidSheet[], fresh: readonly LaidSheet[]): Layout {
  return { parts, rules, sheets: [...onRemnants, ...fresh], newSheets: fresh.length, atLeast: 0 };
}

/** Two parts change places, up to a third of them one after the other. */
function shuffled(parts: readonly NestPart[], random: () => number): readonly NestPart[] {
  const order = [...parts];
  const swaps = 1 + Math.floor((random() * order.length) / 3);
  for (let k = 0; k < swaps; k++) {
    const [i, j] = [Math.floor(random() * order.length), Math.floor(random() * order.length)];
    [order[i], order[j]] = [order[j] as NestPart, order[i] as NestPart];
  }
  return order;
}

/**
 * New sheets that every layout needs at least: the straight parts by their boxes, and all by area, each part with half the gap round it. A figure of area A so
 * widened by r has at least (sqrt(A) + r sqrt(pi))² (Brunn and Minkowski), whatever its outline.
 */
function leastSheets({ parts, sheet, remnants, rules }: LayRequest): number {
  const area = (stock: StockSheet) => {
    const { along, across } = roomOf(stock, rules);
    return Math.max(0, along) * Math.max(0, across);
  };
  const packed = packParts(parts, rules);
  const needed = parts.reduce((sum, part, i) => {
    const { length, width } = packed[i] as { length: number; width: number };
    // Packing counts in tenths of a mm.
    return sum + (part.outline ? 100 * (Math.sqrt(areaOf(part)) + (rules.gap / 2) * Math.sqrt(Math.PI)) ** 2 : length * width);
  }, 0);
  const given = remnants.reduce((sum, stock) => sum + area(stock), 0);
  const byArea = Math.max(0, Math.ceil((needed - given) / area(sheet) - 1e-9));
  const straight = packed.filter((_, i) => !parts[i]?.outline);
  if (remnants.length > 0 || straight.length === 0) return byArea;
  return Math.max(byArea, sheetsAtLeast(straight, roomOf(sheet, rules), turnsOf(rules.grain)));
}
