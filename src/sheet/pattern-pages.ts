import type { Box } from '../geometry/path.ts';
import { polyline } from '../geometry/path.ts';
import { dashed } from '../pattern/dashes.ts';
import type { MakingNotes } from '../pattern/making-notes.ts';
import type { Frame } from './frame.ts';
import { joined, type Measure, NOTHING, type PageLayer, type PageText, placeLayer, scaleLayer, text } from './page.ts';
import type { LaidPart } from './part-layer.ts';
import type { PlannedPages, TiledPart, WholePage } from './plan-pattern.ts';
import { contains, type Tile } from './tiles.ts';
import { wrapWords } from './wrap-words.ts';

/** A page's content without its frame. */
export interface PageContent {
  readonly title: string;
  readonly layers: readonly PageLayer[];
}

const SMALL = 2;
const PITCH = 1.75;
const LEGEND_LINE = 14;
const CROSS_ARM = 3;

/** The pages of the pattern at 1:1: whole pages with legend and facts, or tiles with crosses and a thumbnail. */
export function patternPages(plan: PlannedPages, frame: Frame, notes: MakingNotes | null, measure: Measure): readonly PageContent[] {
  return plan.flatMap((page) =>
    page.kind === 'whole'
      ? [wholePage(page, frame, notes, measure)]
      : page.grid.tiles.map((tile) => tilePage(page, tile, frame, notes, measure)),
  );
}

function wholePage(page: WholePage, frame: Frame, notes: MakingNotes | null, measure: Measure): PageContent {
  const room = frame[page.place];
  const dx = (room.minX + room.maxX - page.content.width) / 2;
  const dy = (room.minY + room.maxY - page.content.height) / 2;
  const beside = notes ? legendAndFacts(page.place, frame, notes, measure) : NOTHING;
  return { title: 'pattern at 1:1', layers: [placeLayer(page.content.layer, { dx, dy }), beside] };
}

/** Legend and facts side by side under the pattern, or, where the pattern takes that place, in the corner of the bars and beside it. */
function legendAndFacts(place: 'high' | 'wide', frame: Frame, notes: MakingNotes, measure: Measure): PageLayer {
  const { shoulder, pocket, middle } = frame;
  if (hasShoulder(place, frame)) {
    const split = shoulder.minX + 82;
    return joined(
      inBox({ ...shoulder, maxX: split - 6 }, (box) => legend(box, notes)),
      inBox({ ...shoulder, minX: split }, (box) => lines(box, notes.facts, measure)),
    );
  }
  if (place === 'high' || middle === null) return NOTHING;
  return joined(
    inBox(pocket, (box) => legend(box, notes)),
    middle ? inBox(middle, (box) => lines(box, notes.facts, measure)) : NOTHING,
  );
}

/** Whether the pattern leaves the place under it to its legend and facts. */
function hasShoulder(place: 'high' | 'wide', { shoulder }: Frame): boolean {
  return (
    place === 'high' && shoulder.maxX - shoulder.minX >= LEAST_SHOULDER.width && shoulder.maxY - shoulder.minY >= LEAST_SHOULDER.height
  );
}

/** mm; enough for legend and facts side by side. */
const LEAST_SHOULDER = { width: 150, height: 40 };

/** Whether every page of the pattern says what it is, so that the making sheet need not. */
export function showsFacts(plan: PlannedPages, frame: Frame): boolean {
  return plan.every((page) => hasShoulder(page.place, frame));
}

/** What does not fit into its box is left to the making page, which has all of it. */
function inBox(box: Box, draw: (box: Box) => { readonly layer: PageLayer; readonly bottom: number }): PageLayer {
  const drawn = draw(box);
  return drawn.bottom >= box.minY ? drawn.layer : NOTHING;
}

function legend(box: Box, notes: MakingNotes): { layer: PageLayer; bottom: number } {
  let y = box.maxY - SMALL;
  const layers = notes.legend.map((row): PageLayer => {
    const middle = y + SMALL / 2;
    const line = dashed({ x: box.minX, y: middle }, { x: box.minX + LEGEND_LINE, y: middle }, row.dashes);
    const words = text(row.title, box.minX + LEGEND_LINE + 3, y, SMALL);
    y -= SMALL * PITCH * 1.15;
    return { clip: null, strokes: [{ pen: row.layer, role: 'legend', paths: line, circles: [] }], texts: [words] };
  });
  return { layer: joined(...layers), bottom: y + SMALL * PITCH * 1.15 - SMALL * 0.4 };
}

function lines(box: Box, words: readonly string[], measure: Measure): { layer: PageLayer; bottom: number } {
  const wrapped = words.flatMap((line) => wrapWords(line, box.maxX - box.minX, SMALL, false, measure));
  const texts = wrapped.map((line, k): PageText => text(line, box.minX, box.maxY - SMALL - k * SMALL * PITCH, SMALL));
  return { layer: { clip: null, strokes: [], texts }, bottom: box.maxY - (wrapped.length - 1) * SMALL * PITCH - SMALL * 1.4 };
}

function tilePage(part: TiledPart, tile: Tile, frame: Frame, notes: MakingNotes | null, measure: Measure): PageContent {
  const { grid, content } = part;
  const room = frame[part.place];
  const { window } = tile;
  // The window stands in the middle of its place; every coordinate of the drawing moves by the same amount.
  const dx = (room.minX + room.maxX - window.minX - window.maxX) / 2;
  const dy = (room.minY + room.maxY - window.minY - window.maxY) / 2;
  const shown = { minX: window.minX + dx, minY: window.minY + dy, maxX: window.maxX + dx, maxY: window.maxY + dy };
  const name = tileName(grid.rows, grid.columns, tile);
  const drawing: PageLayer = { ...placeLayer(content.layer, { dx, dy }), clip: shown };
  const crosses = grid.crosses
    .filter((cross) => contains(window, cross.at))
    .map((cross) => crossLayer(cross.name, cross.at.x + dx, cross.at.y + dy));
  const border: PageLayer = {
    clip: null,
    strokes: [{ pen: 'rule', role: 'tile-edge', paths: [rectangle(shown)], circles: [] }],
    texts: [],
  };
  const thumbnail = thumbnailLayer(part, tile, frame.pocket, name, measure);
  return {
    title: `pattern at 1:1, ${name}`,
    layers: [
      drawing,
      border,
      ...crosses,
      thumbnail,
      ...(notes && hasShoulder(part.place, frame) ? [legendAndFacts(part.place, frame, notes, measure)] : []),
    ],
  };
}

function tileName(rows: number, columns: number, tile: Tile): string {
  return `row ${tile.row} of ${rows}, column ${tile.column} of ${columns}`;
}

function crossLayer(name: string, x: number, y: number): PageLayer {
  const arms = [
    polyline([
      { x: x - CROSS_ARM, y },
      { x: x + CROSS_ARM, y },
    ]),
    polyline([
      { x, y: y - CROSS_ARM },
      { x, y: y + CROSS_ARM },
    ]),
  ];
  return {
    clip: null,
    strokes: [{ pen: 'rule', role: 'register-cross', paths: arms, circles: [] }],
    texts: [text(name, x + 1, y + 1, SMALL * 0.9)],
  };
}

const HOW_TO_JOIN = 'Cut one of two neighbours along its frame, lay crosses of the same letter on each other against the light, tape.';

/** The whole drawing small, with the frames of all tiles and this one in grey, and how to join them. */
function thumbnailLayer(part: TiledPart, tile: Tile, pocket: Box, name: string, measure: Measure): PageLayer {
  const words = [name, ...wrapWords(HOW_TO_JOIN, pocket.maxX - pocket.minX, SMALL, false, measure)];
  const texts = words.map((line, k) => text(line, pocket.minX, pocket.maxY - SMALL - k * SMALL * PITCH, SMALL, { bold: k === 0 }));
  const top = pocket.maxY - words.length * SMALL * PITCH - 1;
  const { content, grid } = part;
  const factor = Math.min((pocket.maxX - pocket.minX) / (content.width + 20), (top - pocket.minY) / (content.height + 20));
  const small = (box: Box) =>
    rectangle({ minX: box.minX * factor, minY: box.minY * factor, maxX: box.maxX * factor, maxY: box.maxY * factor });
  const outlines: LaidPart['layer'] = {
    clip: null,
    texts: [],
    strokes: content.layer.strokes.filter((s) => s.pen === 'CUT').map((s) => ({ ...s, pen: 'rule' as const, role: 'thumbnail' })),
  };
  const picture = joined(
    { clip: null, texts: [], strokes: [{ pen: 'shade', role: 'this-tile', paths: [small(tile.window)], circles: [] }] },
    { clip: null, texts: [], strokes: [{ pen: 'rule', role: 'tiles', paths: grid.tiles.map((t) => small(t.window)), circles: [] }] },
    scaleLayer(outlines, factor),
  );
  return joined(
    { clip: null, strokes: [], texts },
    placeLayer(picture, { dx: pocket.minX + 10 * factor, dy: top - (content.height + 10) * factor }),
  );
}

function rectangle(box: Box) {
  return polyline(
    [
      { x: box.minX, y: box.minY },
      { x: box.maxX, y: box.minY },
      { x: box.maxX, y: box.maxY },
      { x: box.minX, y: box.maxY },
    ],
    true,
  );
}
