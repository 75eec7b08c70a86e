import type { Box } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Part } from '../../pattern/pattern.ts';
import { radians } from '../../units/angle.ts';
import type { Frame } from './frame.ts';
import type { PageText } from './page.ts';
import { arrangeParts, type LaidPart, layPart } from './page-layers.ts';
import { type TileGrid, tileGrid } from './tiles.ts';

/** Free space round a tiled drawing, so that register crosses stand clear of it. mm */
const TILE_PAD = 9;

/** A page of parts in one piece: where they stand. */
export interface WholePage {
  readonly kind: 'whole';
  readonly content: LaidPart;
  readonly place: 'high' | 'wide';
}

/** A part that is larger than a page: its tiles, each shown in the given place of a page of its own. */
export interface TiledPart {
  readonly kind: 'tiled';
  readonly content: LaidPart;
  readonly grid: TileGrid;
  readonly place: 'high' | 'wide';
}

export type PlannedPages = readonly (WholePage | TiledPart)[];

const sizeOf = (box: Box) => ({ width: box.maxX - box.minX, height: box.maxY - box.minY });

/** Spreads the parts over pages of one frame: as many to a page as fit, tiles for what fits on none. Null when even tiles have no room. */
export function planPattern(parts: readonly Part[], frame: Frame, quarterTurn: boolean): PlannedPages | null {
  const laid = parts.map((part) => layPart(part, quarterTurn));
  const pages: (WholePage | TiledPart)[] = [];
  let next = 0;
  while (next < laid.length) {
    const whole = largestRun(laid.slice(next), frame);
    if (whole) {
      pages.push(whole.page);
      next += whole.count;
      continue;
    }
    const tiled = tile(laid[next] as LaidPart, frame);
    if (!tiled) return null;
    pages.push(tiled);
    next++;
  }
  return pages;
}

export function pageCount(pages: PlannedPages): number {
  return pages.reduce((sum, page) => sum + (page.kind === 'tiled' ? page.grid.tiles.length : 1), 0);
}

export function isTiled(pages: PlannedPages): boolean {
  return pages.some((page) => page.kind === 'tiled');
}

function largestRun(parts: readonly LaidPart[], frame: Frame): { page: WholePage; count: number } | null {
  for (let count = parts.length; count > 0; count--) {
    for (const place of ['high', 'wide'] as const) {
      const content = arrangeParts(parts.slice(0, count), sizeOf(frame[place]));
      if (content) return { page: { kind: 'whole', content, place }, count };
    }
  }
  return null;
}

/** The tiles of the place that needs fewer. */
function tile(content: LaidPart, frame: Frame): TiledPart | null {
  const extent = { minX: -TILE_PAD, minY: -TILE_PAD, maxX: content.width + TILE_PAD, maxY: content.height + TILE_PAD };
  const paths = content.layer.strokes.flatMap((stroke) => stroke.paths);
  const words = content.layer.texts.map(boxOfWords);
  const options = (['high', 'wide'] as const).flatMap((place): TiledPart[] => {
    const grid = tileGrid(extent, sizeOf(frame[place]), paths, words);
    return grid ? [{ kind: 'tiled', content, grid, place }] : [];
  });
  return options.sort((a, b) => a.grid.tiles.length - b.grid.tiles.length)[0] ?? null;
}

/** About where words stand: what room their strokes take. */
function boxOfWords({ text, at, height, align, angle }: PageText): Box {
  const width = textWidth(text, height);
  const from = { left: 0, center: -width / 2, right: -width }[align];
  const [c, s] = [Math.cos(radians(angle)), Math.sin(radians(angle))];
  const corners = [from, from + width].flatMap((x) => [0, height].map((y) => ({ x: at.x + x * c - y * s, y: at.y + x * s + y * c })));
  const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
