import { type Box, polyline } from '../../geometry/path.ts';
import type { Report, ReportSection } from '../../pattern/report.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { type Measure, type PageLayer, type PrintedSheet, placeLayer, text, wrapWords } from './page.ts';
import { type Cell, type FlowSection, type FlowStyle, flow, paragraph } from './page-flow.ts';
import { drawingLayer, inkOf } from './page-layers.ts';
import { printableBox, turned } from './paper.ts';
import { tableCells } from './report-table.ts';
import type { SheetSettings } from './sheet-settings.ts';

const STYLE: FlowStyle = { text: 2.2, heading: 3, leastColumn: 0, gap: 0.9, sectionGap: 4 };
const HEAD = 3.4;
const UNDER = 2;
const PITCH = 1.75;
const PAGE_NUMBER_ROOM = 40;
/** Part of a page up to which a section stays together. */
const MOST_WHOLE = 0.6;
/** Room to write over a line to sign, and between two of them. mm */
const SIGN_ROOM = 9;
const SIGN_GAP = 8;

/** Least printable area, mm: narrower, a chart's letters are too small to be read, and lower, a chart does not fit a page. */
const LEAST_ROOM = { width: 165, height: 200 } as const;

/**
 * A report on upright pages, as many as it needs: head and page number on each, a table's head repeated where it goes on. Refused for paper
 * that is too small (`PAPER_TOO_SMALL`).
 */
export function layOutReport(
  report: Report,
  settings: Pick<SheetSettings, 'paper' | 'margin' | 'area'>,
  measure: Measure,
): Result<PrintedSheet> {
  const { paper, margin, area } = settings;
  const box = printableBox(paper, 'portrait', margin, area);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  if (width < LEAST_ROOM.width || height < LEAST_ROOM.height) return tooSmall(settings);
  const room: Box = { ...box, maxY: box.maxY - headDepth(report, width, measure) };
  const sections = report.sections.map((section) => flowSection(section, room, measure));
  const layers = flow(sections, [room], STYLE, measure);
  if (layers === null) return tooSmall(settings);
  const pages = layers.map((layer, k) => ({
    title: `${report.title}, page ${k + 1}`,
    ...turned(paper, 'portrait'),
    layers: [headLayer(report, box, k + 1, layers.length, measure), layer],
  }));
  return success({ title: report.title, pages, scale: { x: 1, y: 1 } });
}

function flowSection({ heading, drawing, tallest, table, lines, toSign }: ReportSection, room: Box, measure: Measure): FlowSection {
  const width = room.maxX - room.minX;
  const rows = table && tableCells(table, width, STYLE, measure);
  const cells: readonly Cell[] = [
    ...(drawing ? [pictureCell(drawing, width, Math.min(tallest ?? Number.POSITIVE_INFINITY, room.maxY - room.minY))] : []),
    ...lines.map(({ mark, text: words }) => paragraph(words, width, STYLE, measure, mark)),
    ...(rows?.rows ?? []),
    ...(toSign ? [signatureCell(toSign, width)] : []),
  ];
  const from = (drawing ? 1 : 0) + lines.length;
  // What fits well on a page is not parted; a longer table goes on with its head again.
  const whole = rows ? [...cells.slice(0, from), rows.head, ...cells.slice(from)] : cells;
  const height = whole.reduce((sum, cell) => sum + cell.height + STYLE.gap, STYLE.heading * PITCH);
  if (height <= MOST_WHOLE * (room.maxY - room.minY)) return { heading, cells: whole, together: true };
  return { heading, cells, ...(rows && { repeated: { cell: rows.head, from } }) };
}

/** A picture as large as the room allows, at most at its own size. Its own title is its heading. */
function pictureCell(drawing: NonNullable<ReportSection['drawing']>, width: number, height: number): Cell {
  const { minX, maxX, minY, maxY } = inkOf(drawing);
  const factor = Math.min(1, width / (maxX - minX), height / (maxY - minY));
  const dx = (width - (maxX - minX) * factor) / 2;
  return { layer: placeLayer(drawingLayer(drawing, factor), { dx, dy: 0 }), height: (maxY - minY) * factor };
}

/** Lines side by side, with room over them to write and their words under them. */
function signatureCell(words: readonly string[], width: number): Cell {
  const each = (width - (words.length - 1) * SIGN_GAP) / words.length;
  const left = (k: number) => k * (each + SIGN_GAP);
  return {
    height: SIGN_ROOM + STYLE.text * PITCH,
    layer: {
      clip: null,
      strokes: words.map((_, k) => ({
        pen: 'rule',
        role: 'to-sign',
        paths: [
          polyline([
            { x: left(k), y: -SIGN_ROOM },
            { x: left(k) + each, y: -SIGN_ROOM },
          ]),
        ],
        circles: [],
      })),
      texts: words.map((word, k) => text(word, left(k), -SIGN_ROOM - STYLE.text * 1.5, STYLE.text)),
    },
  };
}

function headLines({ over = [], head, under }: Report, width: number, measure: Measure) {
  return {
    over: over.flatMap((line) => wrapWords(line, width - PAGE_NUMBER_ROOM, UNDER, false, measure)),
    head: wrapWords(head, width - PAGE_NUMBER_ROOM, HEAD, true, measure),
    under: under.flatMap((line) => wrapWords(line, width, UNDER, false, measure)),
  };
}

function headDepth(report: Report, width: number, measure: Measure): number {
  const { over, head, under } = headLines(report, width, measure);
  return head.length * HEAD * PITCH + (over.length + under.length) * UNDER * PITCH + 3;
}

function headLayer(report: Report, box: Box, page: number, pages: number, measure: Measure): PageLayer {
  const { over, head, under } = headLines(report, box.maxX - box.minX, measure);
  const overDepth = over.length * UNDER * PITCH;
  const headTop = box.maxY - overDepth - HEAD;
  const underTop = box.maxY - overDepth - head.length * HEAD * PITCH - UNDER;
  return {
    clip: null,
    strokes: [],
    texts: [
      ...over.map((line, k) => text(line, box.minX, box.maxY - UNDER - k * UNDER * PITCH, UNDER)),
      ...head.map((line, k) => text(line, box.minX, headTop - k * HEAD * PITCH, HEAD, { bold: true })),
      ...under.map((line, k) => text(line, box.minX, underTop - k * UNDER * PITCH, UNDER)),
      text(report.pageOf?.(page, pages) ?? `page ${page} of ${pages}`, box.maxX, headTop, STYLE.heading, { bold: true, align: 'right' }),
    ],
  };
}

function tooSmall({ paper, margin }: Pick<SheetSettings, 'paper' | 'margin'>): Result<never> {
  const { width, height } = LEAST_ROOM;
  return failure({
    code: 'PAPER_TOO_SMALL',
    where: '--paper',
    message: `paper: ${paper.name} with margins of ${plain(margin)} mm leaves less than the ${width} x ${height} mm that a report needs. Use a4, letter or larger, or smaller margins.`,
    kind: 'input',
  });
}
