import type { Box } from '../geometry/path.ts';
import { unionBox } from '../geometry/path-measures.ts';
import type { CutList, MakingNotes } from '../pattern/making-notes.ts';
import { boxOfDrawn } from '../pattern/place-marks.ts';
import { fixed, plain } from '../units/number.ts';
import { type Cell, columnsIn, drawing, type FlowSection, type FlowStyle, flow, paragraph, tableRow } from './flow.ts';
import type { Frame } from './frame.ts';
import { drawnLayer, joined, type Measure, type PageLayer, placeLayer, text } from './page.ts';
import type { PageContent } from './pattern-pages.ts';

const MAKING: FlowStyle = { text: 2, heading: 2.8, leastColumn: 78 };
const HANDOUT: FlowStyle = { text: 3, heading: 3.8, leastColumn: 110 };
const LARGEST_VIEW = 2;
/** Share of a column's height that the view may take. */
const VIEW_SHARE = 0.55;

/** The making sheet: view, cut list, steps, fit check, cautions, and gauges at 1:1 where there is room. Null when the paper is too small. */
export function makingPages(notes: MakingNotes, frame: Frame, measure: Measure): readonly PageContent[] | null {
  const columns = columnsIn(frame.wide, MAKING);
  const column = columns[0] as Box;
  const width = column.maxX - column.minX;
  const numbered = (words: readonly string[]) => words.map((line, k) => paragraph(line, width, MAKING, measure, `${k + 1}`));
  const boxed = (words: readonly string[]) => words.map((line) => paragraph(line, width, MAKING, measure, 'box'));
  const plainly = (words: readonly string[]) => words.map((line) => paragraph(line, width, MAKING, measure));
  const gauges = placeGauges(notes, frame);
  const sections: FlowSection[] = [
    ...view(notes, column, measure),
    { heading: 'What it is', cells: plainly(notes.facts) },
    ...notes.cutLists.map((list) => cutListSection(list, width, measure)),
    { heading: 'Making, in this order', cells: numbered(notes.steps) },
    { heading: 'Fit check', cells: boxed(notes.checks) },
    { heading: 'Cautions', cells: plainly(notes.cautions) },
    ...(gauges.placed
      ? []
      : notes.gauges.map(
          (gauge): FlowSection => ({ heading: gauge.title, cells: [drawing(drawnLayer(gauge.drawn), 1e6, 1e6, 1).cell], together: true }),
        )),
  ];
  const pages = flow(sections, columns, MAKING);
  return pages?.map((layer, k) => ({ title: 'making', layers: k === 0 && gauges.placed ? [layer, gauges.placed] : [layer] })) ?? null;
}

/** The patient's page. */
export function handoutPages(notes: MakingNotes, frame: Frame, measure: Measure): readonly PageContent[] | null {
  const columns = columnsIn(frame.wide, HANDOUT);
  const column = columns[0] as Box;
  const sections = notes.handout.map(
    (section): FlowSection => ({
      heading: section.heading,
      cells: section.paragraphs.map((words) => paragraph(words, column.maxX - column.minX, HANDOUT, measure)),
    }),
  );
  return flow(sections, columns, HANDOUT)?.map((layer) => ({ title: 'for the patient', layers: [layer] })) ?? null;
}

function view(notes: MakingNotes, column: Box, measure: Measure): readonly FlowSection[] {
  if (!notes.view) return [];
  const { heading, caption, drawn } = notes.view;
  const width = column.maxX - column.minX;
  const { cell, factor } = drawing(drawnLayer(drawn), width, VIEW_SHARE * (column.maxY - column.minY), LARGEST_VIEW);
  const size = Math.abs(factor - 1) < 1e-9 ? 'True size.' : `Drawn ${fixed(factor, 2)} times true size.`;
  return [
    { heading, cells: [paragraph(`${caption} ${size}`, width, MAKING, measure), { ...cell, height: cell.height + 1 }], together: true },
  ];
}

function cutListSection(list: CutList, width: number, measure: Measure): FlowSection {
  const size: Cell = paragraph(
    `${plain(list.length, 1)} mm long, ${plain(list.width, 1)} mm wide. Marks in ${list.from}:`,
    width,
    MAKING,
    measure,
  );
  const rows = list.rows.map((row) => tableRow(fixed(row.at, 1), row.title, width, MAKING, measure));
  const remarks = list.remarks.map((line) => paragraph(line, width, MAKING, measure));
  return { heading: `${list.title}: cut list for a ruler`, cells: [size, ...rows, ...remarks] };
}

/** Gauges in the corner of the bars (or between bars and card), true size; null when they do not fit there. */
function placeGauges(notes: MakingNotes, frame: Frame): { readonly placed: PageLayer | null } {
  const layers: PageLayer[] = [];
  const rooms = [frame.pocket, ...(frame.middle ? [frame.middle] : [])];
  for (const gauge of notes.gauges) {
    const box = unionBox([boxOfDrawn(gauge.drawn)]);
    const head = 6;
    const k = rooms.findIndex(
      (room) => box.maxX - box.minX <= room.maxX - room.minX && box.maxY - box.minY + head <= room.maxY - room.minY,
    );
    const room = rooms[k];
    if (!room) return { placed: null };
    rooms.splice(k, 1);
    const dy = room.maxY - head - box.maxY;
    const title: PageLayer = {
      clip: null,
      strokes: [],
      texts: [text(gauge.title, room.minX, room.maxY - MAKING.text, MAKING.text, { bold: true })],
    };
    layers.push(title, placeLayer(drawnLayer(gauge.drawn), { dx: room.minX - box.minX, dy }));
  }
  return { placed: layers.length > 0 ? joined(...layers) : null };
}
