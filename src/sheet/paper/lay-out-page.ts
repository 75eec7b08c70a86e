import type { Pattern } from '../../pattern/pattern.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { drawnLayer, type PageLayer, placeLayer, scaleLayer } from './page.ts';
import { type Orientation, printableBox, turned } from './paper.ts';
import type { SheetSettings } from './sheet-settings.ts';

/** A drawing that is a page already, on one page of paper. */
export interface LaidPage {
  readonly orientation: Orientation;
  readonly width: number;
  readonly height: number;
  readonly layer: PageLayer;
}

/**
 * A list or a chart (`kind: 'page'`) at the head of one page of the paper, in the middle between its edges, at its own size or, where the paper is smaller, as large
 * as it has room: nothing is cut by it, so it needs no scale. Upright where that makes it larger or as large.
 */
export function layOutPage(pattern: Pattern, { paper, margin, area, orientation }: SheetSettings): LaidPage {
  const ink = boxOfDrawn(pattern.beside);
  const ways = (orientation === 'auto' ? (['portrait', 'landscape'] as const) : [orientation]).map((way) => {
    const room = printableBox(paper, way, margin, area);
    const factor = Math.min(1, (room.maxX - room.minX) / (ink.maxX - ink.minX), (room.maxY - room.minY) / (ink.maxY - ink.minY));
    return { way, room, factor };
  });
  const best = ways.reduce((a, b) => (b.factor > a.factor + 1e-9 ? b : a));
  const { room, factor, way } = best;
  const size = turned(paper, way);
  const layer = placeLayer(scaleLayer(placeLayer(drawnLayer(pattern.beside), { dx: -ink.minX, dy: -ink.maxY }), factor), {
    dx: (room.minX + room.maxX - factor * (ink.maxX - ink.minX)) / 2,
    dy: room.maxY,
  });
  return { orientation: way, width: size.width, height: size.height, layer };
}
