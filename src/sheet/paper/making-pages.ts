import type { Box } from '../../geometry/path.ts';
import type { CutList, MakingNotes } from '../../pattern/making-notes.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { heldGaugePicture } from '../../picture/held-gauge.ts';
import type { SheetSpeech } from '../../words/sheet-words.ts';
import { legendCell } from './beside-pattern.ts';
import type { Frame } from './frame.ts';
import { drawnLayer, joined, type Measure, type PageLayer, placeLayer } from './page.ts';
import { type Cell, columnsIn, drawing, type FlowSection, type FlowStyle, flow, paragraph, tableRow } from './page-flow.ts';
import { drawingLayer, inkOf } from './page-layers.ts';
import type { PageContent } from './pattern-pages.ts';

const MAKING: FlowStyle = { text: 2, heading: 2.8, leastColumn: 78, gap: 0.9, sectionGap: 3.4 };
/** Words over a gauge, and the space under them, so that a corner does not touch their tails. */
const GAUGE: FlowStyle = { ...MAKING, gap: 0 };
const UNDER_WORDS = 1;
const LARGEST_VIEW = 2;
/** Share of a column's height that the view may take. */
const VIEW_SHARE = 0.55;

/** What other pages say already: the pattern's own, and the steps in pictures. */
export interface ShownElsewhere {
  readonly pictures: boolean;
  readonly legend: boolean;
  readonly facts: boolean;
}

/** The making sheet: view, cut list, steps, fit check, cautions, and gauges at 1:1 where there is room. Null when the paper is too small. */
export function makingPages(
  notes: MakingNotes,
  frame: Frame,
  measure: Measure,
  shown: ShownElsewhere,
  speech: SheetSpeech,
): readonly PageContent[] | null {
  const spanning = notes.view ? SPANNING_VIEWS.flatMap((factor) => spanningView(notes, frame, factor, measure, speech)) : [];
  const tries = [...spanning, null].map((top) => makingWith(notes, frame, top, measure, shown, speech));
  // The largest view that costs no page more than the smallest does.
  const fewest = Math.min(...tries.map((pages) => pages?.length ?? Number.POSITIVE_INFINITY));
  return tries.find((pages) => pages?.length === fewest) ?? null;
}

/** A view across the page, and how much larger than life it is. */
interface SpanningView extends Cell {
  readonly factor: number;
}

/** How much larger than life the view is shown when it spans the page, in the order of trying. */
const SPANNING_VIEWS = [2, 1.75, 1.5, 1.25, 1];

/** The view across the whole page, at the top; nothing where it is too wide or takes more than half of the height. */
function spanningView(notes: MakingNotes, frame: Frame, factor: number, measure: Measure, speech: SheetSpeech): readonly SpanningView[] {
  if (!notes.view) return [];
  const { wide } = frame;
  const width = wide.maxX - wide.minX;
  const half = (wide.maxY - wide.minY) / 2;
  const shown = drawing(drawnLayer(notes.view.drawn), width, half, factor);
  if (shown.factor < factor) return [];
  const head = flow(
    [viewSection(notes.view, shown, width, measure, speech)],
    [{ minX: 0, maxX: width, minY: -half - 30, maxY: 0 }],
    MAKING,
    measure,
  );
  return head?.[0] ? [{ layer: head[0], height: shown.cell.height + VIEW_HEAD, factor }] : [];
}

/** Heading and caption of a spanning view, and the space under it. mm */
const VIEW_HEAD = 15;

/** The making sheet under a view that spans the page, or with the view in its first column. */
function makingWith(
  notes: MakingNotes,
  frame: Frame,
  top: SpanningView | null,
  measure: Measure,
  shown: ShownElsewhere,
  speech: SheetSpeech,
): readonly PageContent[] | null {
  const { w } = speech;
  const box = top ? { ...frame.wide, maxY: frame.wide.maxY - top.height } : frame.wide;
  const columns = columnsIn(box, MAKING, frame.underText);
  const gauges = placeGauges(notes, frame, measure);
  const full = gauges.placed ? columnsIn(frame.bare, MAKING) : columnsIn(frame.wide, MAKING, frame.underText);
  const column = columns[0] as Box;
  const width = column.maxX - column.minX;
  const numbered = (words: readonly string[]) => words.map((line, k) => paragraph(line, width, MAKING, measure, `${k + 1}`));
  const boxed = (words: readonly string[]) => words.map((line) => paragraph(line, width, MAKING, measure, 'box'));
  const plainly = (words: readonly string[]) => words.map((line) => paragraph(line, width, MAKING, measure));
  const most = Math.min(...full.map((one) => one.maxY - one.minY));
  const columnView = top ? null : view(notes, column, measure, speech);
  const isViewTrue = isTrueSize((top ?? columnView)?.factor);
  const sections: FlowSection[] = [
    ...(columnView ? [columnView.section] : []),
    ...(shown.facts ? [] : [{ heading: w.heading.facts, cells: plainly(notes.facts) }]),
    ...(shown.legend || notes.legend.length === 0 ? [] : [{ heading: w.heading.lines, cells: [legendCell(notes.legend)] }]),
    ...notes.cutLists.map((list) => cutListSection(list, width, measure, speech)),
    ...(shown.pictures && notes.besidePictures
      ? [{ heading: '', cells: plainly(notes.besidePictures) }]
      : [{ heading: w.heading.steps, cells: numbered(notes.steps) }]),
    { heading: w.heading.checks, cells: boxed(notes.checks) },
    { heading: w.heading.cautions, cells: notes.cautions.map((line) => paragraph(line, width, MAKING, measure, '\u2022')) },
  ];
  const asCells = gauges.placed
    ? []
    : notes.gauges.map(
        (gauge): FlowSection => ({ heading: '', cells: [gaugeCell(gauge, notes.made, width, measure, most)], together: true }),
      );
  const laid = (all: readonly FlowSection[]) => flow(all, columns, MAKING, measure, full);
  const loose = laid([...sections, ...asCells]);
  // A check list that would be parted by the end of a page goes over whole, where that costs no page.
  const whole = sections.map((section) => (section.heading === w.heading.checks ? { ...section, together: true } : section));
  const kept = loose !== null && loose.length > 1 ? laid([...whole, ...asCells]) : null;
  const isKept = kept !== null && kept.length === loose?.length;
  const pages = isKept ? kept : loose;
  const read = laid(isKept ? whole : sections);
  const head = top ? [placeLayer(top.layer, { dx: frame.wide.minX, dy: frame.wide.maxY })] : [];
  const first = gauges.placed ? [...head, gauges.placed] : head;
  // A page with strokes besides those of what is read has a gauge: they follow it, where they do not stand at the foot of the first page.
  const atTrueSize = (layer: PageLayer, k: number) =>
    (k === 0 && (gauges.placed !== null || isViewTrue)) || layer.strokes.length > (read?.[k]?.strokes.length ?? 0);
  return (
    pages?.map((layer, k) => ({
      title: w.making,
      kind: 'making' as const,
      frame: atTrueSize(layer, k) ? ('scale' as const) : ('head' as const),
      layers: k === 0 ? [layer, ...first] : [layer],
    })) ?? null
  );
}

/** What a picture of how a gauge is held takes at least and at most, and the space round it. mm */
const HELD = { least: 26, most: 46, gap: 3 } as const;

/**
 * A gauge at 1:1 under its words, which are broken to the width, with a picture of how it is held: beside it where there is room, else under it. On the
 * least paper, whose columns are lower than both (`most`), without.
 */
function gaugeCell(
  { title, drawn }: MakingNotes['gauges'][number],
  made: MakingNotes['made'],
  width: number,
  measure: Measure,
  most: number = Number.POSITIVE_INFINITY,
): Cell {
  const words = paragraph(title, width, GAUGE, measure);
  const head = { ...words, height: words.height + UNDER_WORDS };
  const box = boxOfDrawn(drawn);
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const gauge = placeLayer(drawnLayer(drawn), { dx: -box.minX, dy: -box.maxY - head.height });
  const { drawing: picture } = heldGaugePicture(made);
  const ink = inkOf(picture);
  const beside = width - wide - HELD.gap;
  const room = Math.min(HELD.most, beside >= HELD.least ? beside : width);
  const factor = Math.min(room / (ink.maxX - ink.minX), HELD.most / (ink.maxY - ink.minY));
  const [shownHigh, layer] = [factor * (ink.maxY - ink.minY), drawingLayer(picture, factor)];
  if (beside >= HELD.least) {
    const held = placeLayer(layer, { dx: wide + HELD.gap, dy: -head.height });
    return { layer: joined(head.layer, gauge, held), height: head.height + Math.max(high, shownHigh) };
  }
  // A line of the column's own above it, as every cell has.
  const bare = head.height + high;
  if (bare + HELD.gap + shownHigh > most - GAUGE.sectionGap) return { layer: joined(head.layer, gauge), height: bare };
  const held = placeLayer(layer, { dx: 0, dy: -head.height - high - HELD.gap });
  return { layer: joined(head.layer, gauge, held), height: head.height + high + HELD.gap + shownHigh };
}

function view(
  notes: MakingNotes,
  column: Box,
  measure: Measure,
  speech: SheetSpeech,
): { readonly section: FlowSection; readonly factor: number } | null {
  if (!notes.view) return null;
  const width = column.maxX - column.minX;
  const shown = drawing(drawnLayer(notes.view.drawn), width, VIEW_SHARE * (column.maxY - column.minY), LARGEST_VIEW);
  return { section: viewSection(notes.view, shown, width, measure, speech), factor: shown.factor };
}

function isTrueSize(factor: number | undefined): boolean {
  return factor !== undefined && Math.abs(factor - 1) < 1e-9;
}

function viewSection(
  { heading, caption }: NonNullable<MakingNotes['view']>,
  { cell, factor, width: shown }: ReturnType<typeof drawing>,
  width: number,
  measure: Measure,
  { w, fixed }: SheetSpeech,
): FlowSection {
  const size = isTrueSize(factor) ? w.trueSize : w.enlarged(fixed(factor, 2));
  const words = paragraph(`${caption} ${size}`, width, MAKING, measure);
  const centred = placeLayer(cell.layer, { dx: (width - shown) / 2, dy: 0 });
  return { heading, cells: [words, { layer: centred, height: cell.height + 1 }], together: true };
}

function cutListSection(list: CutList, width: number, measure: Measure, { w, number, fixed }: SheetSpeech): FlowSection {
  const size: Cell = paragraph(
    w.size(number(list.length, 1), number(list.width, 1), list.rows.length > 0 ? list.from : ''),
    width,
    MAKING,
    measure,
  );
  const rows = list.rows.map((row) =>
    tableRow(
      fixed(row.at, 1),
      row.edges ? `${row.title} (${w.edges(fixed(row.edges[0], 1), fixed(row.edges[1], 1))})` : row.title,
      width,
      MAKING,
      measure,
    ),
  );
  const remarks = list.remarks.map((line, k) => lowered(paragraph(line, width, MAKING, measure), k === 0 ? 1.2 : 0));
  return { heading: list.rows.length > 0 ? w.heading.ruler(list.title) : list.title, cells: [size, ...rows, ...remarks] };
}

/** A cell with free space above it, mm. */
function lowered(cell: Cell, by: number): Cell {
  return { layer: placeLayer(cell.layer, { dx: 0, dy: -by }), height: cell.height + by };
}

/** Gauges between bars and card or inside the card outline, true size; null when they do not fit there. */
function placeGauges(notes: MakingNotes, frame: Frame, measure: Measure): { readonly placed: PageLayer | null } {
  const layers: PageLayer[] = [];
  const rooms = [frame.card, ...(frame.middle ? [frame.middle] : [])];
  for (const gauge of notes.gauges) {
    const box = boxOfDrawn(gauge.drawn);
    const cells = rooms.map((room) => {
      const width = room.maxX - room.minX;
      if (box.maxX - box.minX > width) return null;
      const cell = gaugeCell(gauge, notes.made, width, measure);
      return cell.height <= room.maxY - room.minY ? cell : null;
    });
    const k = cells.findIndex((cell) => cell !== null);
    const [room, cell] = [rooms[k], cells[k]];
    if (!room || !cell) return { placed: null };
    rooms.splice(k, 1);
    layers.push(placeLayer(cell.layer, { dx: room.minX, dy: room.maxY }));
  }
  return { placed: layers.length > 0 ? joined(...layers) : null };
}
