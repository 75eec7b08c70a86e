import { type Box, polyline } from '../../geometry/path.ts';
import type { MakingNotes } from '../../pattern/making-notes.ts';
import type { Language } from '../../words/language.ts';
import type { SheetSpeech } from '../../words/sheet-words.ts';
import { besidePattern } from './beside-pattern.ts';
import type { Frame, PageFrame } from './frame.ts';
import { joined, type Measure, NOTHING, type PageKind, type PageLayer, placeLayer, scaleLayer, text, wrapWords } from './page.ts';
import type { LaidPart } from './page-layers.ts';
import type { PlannedPages, TiledPart, WholePage } from './plan-pattern.ts';
import type { ClinicLines } from './sheet-settings.ts';
import { contains, type Tile } from './tiles.ts';

/** A page's content without its frame. */
export interface PageContent {
  readonly title: string;
  readonly kind: PageKind;
  /** Absent: `scale`. */
  readonly frame?: PageFrame;
  readonly layers: readonly PageLayer[];
}

const SMALL = 2;
const PITCH = 1.75;
const CROSS_ARM = 3;
/** Free space between the head and a pattern in one piece. mm */
const FROM_TOP = 6;

/** The pages of the pattern at 1:1: whole pages with legend and facts, or tiles with crosses and a thumbnail. */
export function patternPages(
  plan: PlannedPages,
  frame: Frame,
  notes: Beside,
  measure: Measure,
  speech: SheetSpeech,
  title = speech.w.pattern,
): readonly PageContent[] {
  return plan.flatMap((page) =>
    page.kind === 'whole'
      ? [wholePage(page, frame, notes, measure, title)]
      : page.grid.tiles.map((tile) => tilePage(page, tile, frame, notes, measure, speech, title)),
  );
}

type Beside = Pick<MakingNotes, 'facts' | 'legend'> | null;

function wholePage(page: WholePage, frame: Frame, notes: Beside, measure: Measure, title: string): PageContent {
  const room = frame[page.place];
  const dx = (room.minX + room.maxX - page.content.width) / 2;
  // Near the top, where one looks first; what is free lies in one piece under it.
  const dy = Math.max(room.minY, room.maxY - page.content.height - FROM_TOP);
  const beside = notes ? besidePattern(page, frame, notes, measure).layer : NOTHING;
  return { title, kind: 'pattern', layers: [placeLayer(page.content.layer, { dx, dy }), beside] };
}

function tilePage(
  part: TiledPart,
  tile: Tile,
  frame: Frame,
  notes: Beside,
  measure: Measure,
  { w }: SheetSpeech,
  title: string,
): PageContent {
  const { grid, content } = part;
  const room = frame[part.place];
  const { window } = tile;
  // The window stands in the middle of its place; every coordinate of the drawing moves by the same amount.
  const dx = (room.minX + room.maxX - window.minX - window.maxX) / 2;
  const dy = (room.minY + room.maxY - window.minY - window.maxY) / 2;
  const shown = { minX: window.minX + dx, minY: window.minY + dy, maxX: window.maxX + dx, maxY: window.maxY + dy };
  const name = w.tile(String(tile.row), String(grid.rows), String(tile.column), String(grid.columns));
  const drawing: PageLayer = { ...placeLayer(content.layer, { dx, dy }), clip: shown };
  const crosses = grid.crosses
    .filter((cross) => contains(window, cross.at))
    .map((cross) => crossLayer(cross.name, cross.at.x + dx, cross.at.y + dy));
  const border: PageLayer = {
    clip: null,
    strokes: [{ pen: 'rule', role: 'tile-edge', paths: [rectangle(shown)], circles: [] }],
    texts: [],
  };
  const thumbnail = thumbnailLayer(part, tile, frame.pocket, [name, w.join], measure);
  return {
    title: `${title}, ${name}`,
    kind: 'pattern',
    layers: [drawing, border, ...crosses, thumbnail, ...(notes ? [besidePattern(part, frame, notes, measure).layer] : [])],
  };
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

/** The whole drawing small, with the frames of all tiles and this one in grey, and how to join them. */
function thumbnailLayer(part: TiledPart, tile: Tile, pocket: Box, [name, join]: readonly [string, string], measure: Measure): PageLayer {
  const words = [name, ...wrapWords(join, pocket.maxX - pocket.minX, SMALL, false, measure)];
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

/** Where and how a paper is laid out: its free room on the page (mm from the page's lower left corner), the text measure, the language. */
export interface PaperRoom {
  readonly box: Box;
  readonly measure: Measure;
  readonly language: Language;
  readonly clinic: ClinicLines;
}

/** Makes the papers that go with a pattern. */
export interface PaperMaker {
  /** The making in pictures; none where there are none, or the paper is too small for them. */
  readonly story: (notes: MakingNotes, room: PaperRoom) => readonly PageContent[];
  /** The patient's sheet; null where the room is too small for it. */
  readonly handout: (notes: MakingNotes, room: PaperRoom) => readonly PageContent[] | null;
}
