import type { Side } from '../../hand/digits.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { plasticWords } from '../../words/plastic/plastic-words.ts';
import type { Relief } from './piece.ts';
import { type StockSizes, stockSizes, WASTE_WEIGHT } from './stock-sizes.ts';

/** A strip that a blank from stock is to serve; mm. */
export interface NeededStrip {
  /** The case code; null where nobody has one: lengths from a file, hands drawn from norms. */
  readonly code: string | null;
  readonly side: Side | null;
  readonly block: string | null;
  readonly length: number;
  /** As high as its edges span: the strip's width, and more where they follow the webs. */
  readonly height: number;
  readonly relief: readonly Relief[];
  /** Whether the little finger is among its digits; null where that is not known. */
  readonly withLittle: boolean | null;
  readonly invented: boolean;
}

/** What blanks of one width serve: strips on index to ring, those that take in the little finger, or both. */
type Serves = 'withoutLittle' | 'withLittle' | 'all';

/** Strips that are cut from blanks of one width. */
interface WidthClass {
  readonly serves: Serves;
  /** Of the blanks, mm: as high as the highest of its strips spans, rounded up to a mm. */
  readonly width: number;
  readonly strips: readonly NeededStrip[];
}

const CLASSES = [
  [false, 'withoutLittle'],
  [true, 'withLittle'],
] as const;
/** Rounding of a height that came out of the geometry is no mm more. */
const HEIGHT_ROUNDING = 1e-6;

/**
 * Strips by the width of the blank they need, narrow first: those on index to ring lie at nearly one level, those that take in the little finger step back by
 * the setback of its web. One class where that makes no difference, as for straight outlines.
 */
export function widthClasses(strips: readonly NeededStrip[]): readonly WidthClass[] {
  const groups = CLASSES.flatMap(([withLittle, serves]) => {
    const own = strips.filter((strip) => strip.withLittle === withLittle);
    return own.length === 0 ? [] : [{ serves, width: widthFor(own), strips: own }];
  });
  const known = groups.reduce((sum, group) => sum + group.strips.length, 0);
  const isOne = known < strips.length || new Set(groups.map(({ width }) => width)).size <= 1;
  if (isOne)
    return [
      { serves: groups.length === 1 && known === strips.length ? (groups[0]?.serves ?? 'all') : 'all', width: widthFor(strips), strips },
    ];
  return groups.sort((a, b) => a.width - b.width);
}

function widthFor(strips: readonly NeededStrip[]): number {
  return Math.ceil(Math.max(...strips.map(({ height }) => height)) - HEIGHT_ROUNDING);
}

/** Rounding of a length that came out of the geometry, or of a share, is no more of it. */
const ROUNDING = 1e-6;

/** A size of blanks to keep in stock; mm. */
export interface StockSize {
  /** SIZE-1, SIZE-2, ... by class, then length. */
  readonly id: string;
  readonly serves: Serves;
  readonly length: number;
  readonly width: number;
  /** How many of the strips it serves. */
  readonly served: number;
}

/** Which blank a strip is cut from; null: it is cut singly. */
export interface Assigned {
  readonly strip: NeededStrip;
  readonly size: StockSize | null;
  /** mm; of the blank's length, at the finishing end. */
  readonly cutOff: number;
  /** mm by which the blank is shorter than the strip as drawn: so much of its trim is not there. */
  readonly trimUsed: number;
}

/** Sizes for a number of them; what is cut off in mm. */
export interface SizePlan {
  readonly sizes: readonly StockSize[];
  /** Share of all strips that are served. */
  readonly cover: number;
  readonly meanWaste: number;
  /** Area cut off, as a share of the area of all blanks that are used. */
  readonly wasteShare: number;
}

export interface SizePlanRequest {
  readonly strips: readonly NeededStrip[];
  /** The number of sizes that is asked for. */
  readonly count: number;
  /** Answers for as many sizes as there are classes of width, up to this many. */
  readonly most: number;
  readonly cover: number;
  readonly step: number;
  /** mm by which a blank may be shorter than its strip. */
  readonly useTrim: number;
  /** Cost of a blank in place of what is cut off. */
  readonly costOf?: (size: { readonly length: number; readonly width: number }) => number;
}

/**
 * For each number of sizes the best of them, shared out between the classes of width: the least area cut off, or the least cost. The longest strips beyond the
 * share `cover` of all are left out, from each class as many as is best. Fails as `stockSizes`, or with `SIZES_INPUT` when there are fewer sizes than classes.
 */
export function sizePlans(request: SizePlanRequest): Result<readonly SizePlan[]> {
  const { strips, count: asked, most, cover, step, useTrim, costOf } = request;
  const classes = widthClasses(strips);
  if (asked < classes.length) {
    const named = classes.map(({ serves, width }) => `${plasticWords('en').sizes.serves[serves]} (${width} mm)`).join(', ');
    const message = `stock sizes: blanks of ${classes.length} widths are needed: ${named}; ask for at least ${classes.length} sizes, or --outline straight.`;
    return failure({ code: 'SIZES_INPUT', where: '--count', message, kind: 'input' });
  }
  const best = new Map<number, { readonly chosen: readonly Choice[]; readonly cost: number }>();
  const spare = strips.length - Math.ceil(cover * strips.length - ROUNDING);
  for (const left of sharesOf(spare, classes)) {
    const layers: (readonly Choice[])[] = [];
    for (const [k, one] of classes.entries()) {
      const { width } = one;
      const lengths = one.strips.map(({ length }) => length - useTrim);
      const share = classes.length === 1 ? cover : (lengths.length - (left[k] ?? 0)) / lengths.length;
      const found = stockSizes({ lengths, most, cover: share, step, ...(costOf ? { costOf: (length) => costOf({ length, width }) } : {}) });
      if (!found.ok) return found;
      layers.push(found.value.map((sizes) => ({ one, sizes, cost: costOfChoice(one, sizes, costOf) })));
    }
    for (let count = classes.length; count <= most; count++) {
      const found = cheapest(layers, count);
      if (found.chosen.reduce((sum, { sizes }) => sum + sizes.sizes.length, 0) < count) break;
      if (found.cost < (best.get(count)?.cost ?? Number.POSITIVE_INFINITY)) best.set(count, found);
    }
  }
  return success([...best.keys()].sort((a, b) => a - b).map((count) => planOf(best.get(count)?.chosen ?? [], strips.length)));
}

/** Ways to share out the strips that may be left out between the classes, none of which is left out whole; with very many strips some of the ways. */
function sharesOf(spare: number, classes: readonly WidthClass[]): readonly (readonly number[])[] {
  const [first, second] = classes.map(({ strips }) => strips.length);
  if (first === undefined || second === undefined) return [[spare]];
  const step = Math.max(1, Math.ceil(spare / MOST_SHARES));
  const ways = Array.from({ length: Math.floor(spare / step) + 1 }, (_, k) => [k * step, spare - k * step] as const);
  const able = ways.filter(([a, b]) => a < first && b < second);
  return able.length > 0 ? able : [[0, 0]];
}

const MOST_SHARES = 40;

/** Sizes of one class, and what they cost. */
interface Choice {
  readonly one: WidthClass;
  readonly sizes: StockSizes;
  readonly cost: number;
}

function costOfChoice({ width }: WidthClass, { sizes, served, meanWaste }: StockSizes, costOf: SizePlanRequest['costOf']): number {
  const count = served.reduce((a, b) => a + b, 0);
  const waste = meanWaste * count * width;
  if (!costOf) return waste;
  return sizes.reduce((sum, length, k) => sum + (served[k] ?? 0) * costOf({ length, width }), WASTE_WEIGHT * waste);
}

/** One choice of each class with `count` sizes in all, or as many as there are, at the least cost. */
function cheapest(layers: readonly (readonly Choice[])[], count: number): { readonly chosen: readonly Choice[]; readonly cost: number } {
  let best: readonly { readonly chosen: readonly Choice[]; readonly cost: number }[] = [{ chosen: [], cost: 0 }];
  for (const [k, layer] of layers.entries()) {
    const later = layers.length - k - 1;
    const next = new Map<number, { chosen: readonly Choice[]; cost: number }>();
    for (const { chosen, cost } of best) {
      const used = chosen.reduce((sum, { sizes }) => sum + sizes.sizes.length, 0);
      for (const choice of layer) {
        const total = used + choice.sizes.sizes.length;
        const sum = cost + choice.cost;
        if (total + later <= count && sum < (next.get(total)?.cost ?? Number.POSITIVE_INFINITY))
          next.set(total, { chosen: [...chosen, choice], cost: sum });
      }
    }
    best = [...next.values()];
  }
  return best.reduce((a, b) => (b.cost < a.cost ? b : a));
}

function planOf(chosen: readonly Choice[], all: number): SizePlan {
  const flat = chosen.flatMap(({ one, sizes }) =>
    sizes.sizes.map((length, k) => ({ serves: one.serves, length, width: one.width, served: sizes.served[k] ?? 0 })),
  );
  const sizes = flat.map((size, k) => ({ id: `SIZE-${k + 1}`, ...size }));
  const count = sizes.reduce((sum, { served }) => sum + served, 0);
  const waste = chosen.map(({ one, sizes: { meanWaste, served } }) => ({
    mm: meanWaste * served.reduce((a, b) => a + b, 0),
    width: one.width,
  }));
  const used = sizes.reduce((sum, { length, width, served }) => sum + length * width * served, 0);
  return {
    sizes,
    cover: count / all,
    meanWaste: waste.reduce((sum, { mm }) => sum + mm, 0) / count,
    wasteShare: waste.reduce((sum, { mm, width }) => sum + mm * width, 0) / used,
  };
}

/** The blank for each strip: the shortest of its class that serves it; the longest of a class are cut singly. In the order of the strips. */
export function assignSizes(strips: readonly NeededStrip[], sizes: readonly StockSize[], useTrim: number): readonly Assigned[] {
  const classOf = new Map(widthClasses(strips).flatMap((one) => one.strips.map((strip) => [strip, one.serves] as const)));
  return strips.map((strip) => {
    const size =
      sizes
        .filter(({ serves, length }) => serves === classOf.get(strip) && length >= strip.length - useTrim - ROUNDING)
        .reduce<StockSize | null>((best, one) => (best === null || one.length < best.length ? one : best), null) ?? null;
    const over = size === null ? 0 : size.length - strip.length;
    return { strip, size, cutOff: Math.max(0, over), trimUsed: Math.max(0, -over) };
  });
}
