import { polyline } from '../geometry/path.ts';
import type { ReportRow, ReportTable } from '../pattern/report.ts';
import { type Cell, type FlowStyle, LINE_PITCH, paragraph } from './flow.ts';
import { joined, type Measure, type PageLayer, type PageText, placeLayer, text } from './page.ts';
import { wrapWords } from './wrap-words.ts';

/** Free space between columns, and under a row as far as its rule. mm */
const COLUMN_GAP = 3;
const UNDER_ROW = 0.8;

/** A table as cells of a flow: its head, to be repeated on every page, and its rows. */
export interface TableCells {
  readonly head: Cell;
  readonly rows: readonly Cell[];
}

interface Column {
  readonly align: 'left' | 'center';
  readonly x: number;
  readonly width: number;
}

/** Columns as wide as their widest word, the rest of the width shared; where they are wider together, cells are broken. */
export function tableCells({ columns, rows }: ReportTable, width: number, style: FlowStyle, measure: Measure): TableCells {
  const needed = columns.map(({ heading }, k) =>
    Math.max(
      ...heading.split(' ').map((word) => measure(word, style.text, true)),
      ...rows.map(({ cells }) => measure(cells[k] ?? '', style.text, false)),
    ),
  );
  const all = needed.reduce((sum, each) => sum + each, 0);
  const room = width - COLUMN_GAP * (columns.length - 1);
  const widths = needed.map((each) => (all > room ? (each * room) / all : each + Math.min(MOST_SPARE, (room - all) / columns.length)));
  let x = 0;
  const placed = columns.map(({ align }, k): Column => {
    const column = { align, x, width: widths[k] ?? 0 };
    x += column.width + COLUMN_GAP;
    return column;
  });
  const headings = columns.map(({ heading }) => heading);
  return {
    head: rowCell({ cells: headings, remarks: [] }, placed, width, style, measure, true),
    rows: rows.map((row) => rowCell(row, placed, width, style, measure, false)),
  };
}

/** A table of few columns is not drawn out over the whole page. mm */
const MOST_SPARE = 12;

function rowCell(
  { cells, remarks }: ReportRow,
  columns: readonly Column[],
  width: number,
  style: FlowStyle,
  measure: Measure,
  bold: boolean,
): Cell {
  const h = style.text;
  const broken = columns.map((column, k) => wrapWords(cells[k] ?? '', column.width, h, bold, measure));
  const deepest = Math.max(...broken.map((lines) => lines.length));
  const texts = columns.flatMap((column, k) =>
    // A heading of one line stands at the foot of the head.
    (broken[k] ?? []).map((words, n): PageText => {
      const row = bold ? n + deepest - (broken[k]?.length ?? 0) : n;
      const at = column.align === 'left' ? column.x : column.x + column.width / 2;
      return text(words, at, -h - row * h * LINE_PITCH, h, { align: column.align, bold: bold || (k === 0 && cells.length > 0) });
    }),
  );
  let depth = h * 1.3 + (deepest - 1) * h * LINE_PITCH;
  const layers: PageLayer[] = [{ clip: null, strokes: [], texts: texts.filter(({ text: words }) => words !== '') }];
  const indent = (columns[0]?.width ?? 0) + COLUMN_GAP;
  for (const remark of remarks) {
    const cell = paragraph(remark, width - indent, style, measure);
    layers.push(placeLayer(cell.layer, { dx: indent, dy: -depth - h * 0.4 }));
    depth += cell.height + h * 0.4;
  }
  const rule = polyline([
    { x: 0, y: -depth - UNDER_ROW },
    { x: width, y: -depth - UNDER_ROW },
  ]);
  layers.push({ clip: null, strokes: [{ pen: bold ? 'bar' : 'rule', role: 'row-rule', paths: [rule], circles: [] }], texts: [] });
  return { layer: joined(...layers), height: depth + UNDER_ROW };
}
