import { polyline } from '../../geometry/path.ts';
import type { ReportRow, ReportTable } from '../../pattern/report.ts';
import { joined, type Measure, type PageLayer, type PageText, placeLayer, text, wrapWords } from './page.ts';
import { type Cell, type FlowStyle, LINE_PITCH, paragraph } from './page-flow.ts';

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

/**
 * Columns no narrower than their widest word, wider where a cell would be broken and there is room, the rest shared. A word is never broken:
 * where even the words are too wide together, the letters of this table are smaller.
 */
export function tableCells({ columns, rows }: ReportTable, width: number, style: FlowStyle, measure: Measure): TableCells {
  const room = width - COLUMN_GAP * (columns.length - 1);
  const widest = (texts: readonly string[], bold: boolean) => Math.max(0, ...texts.map((words) => measure(words, style.text, bold)));
  const cells = columns.map((_, k) => rows.map((row) => row.cells[k] ?? ''));
  const words = (texts: readonly string[]) => texts.flatMap((one) => one.split(' '));
  // The first column is bold throughout: it names the row.
  const least = columns.map(({ heading }, k) => Math.max(widest(words([heading]), true), widest(words(cells[k] ?? []), k === 0)));
  const shrunk = Math.min(1, room / sum(least));
  const wanted = columns.map((_, k) => Math.max(0, widest(cells[k] ?? [], k === 0) - (least[k] ?? 0)));
  const free = Math.max(0, room - sum(least));
  const share = sum(wanted) === 0 ? 0 : Math.min(1, free / sum(wanted));
  const spare = Math.min(MOST_SPARE, (free - share * sum(wanted)) / columns.length);
  let x = 0;
  const placed = columns.map(({ align }, k): Column => {
    const column = { align, x, width: (least[k] ?? 0) * shrunk + (wanted[k] ?? 0) * share + spare };
    x += column.width + COLUMN_GAP;
    return column;
  });
  const own = { ...style, text: style.text * shrunk };
  const headings = columns.map(({ heading }) => heading);
  const head = rowCell({ cells: headings, remarks: [] }, placed, width, own, measure, true);
  return {
    head: { layer: placeLayer(head.layer, { dx: 0, dy: -OVER_HEAD }), height: head.height + OVER_HEAD },
    rows: rows.map((row) => rowCell(row, placed, width, own, measure, false)),
  };
}

/** A table of few columns is not drawn out over the whole page. mm */
const MOST_SPARE = 12;
/** Free space over the head. mm */
const OVER_HEAD = 0.8;
/** Widths are sums of many: a word must not be broken because of their last digit. mm */
const ROUNDING = 1e-6;

function sum(numbers: readonly number[]): number {
  return numbers.reduce((all, each) => all + each, 0);
}

function rowCell(
  { cells, remarks }: ReportRow,
  columns: readonly Column[],
  width: number,
  style: FlowStyle,
  measure: Measure,
  bold: boolean,
): Cell {
  const h = style.text;
  const broken = columns.map((column, k) => wrapWords(cells[k] ?? '', column.width + ROUNDING, h, bold || k === 0, measure));
  const deepest = Math.max(...broken.map((lines) => lines.length));
  const texts = columns.flatMap((column, k) =>
    // A heading of one line stands at the foot of the head.
    (broken[k] ?? []).map((words, n): PageText => {
      const row = bold ? n + deepest - (broken[k]?.length ?? 0) : n;
      const at = column.align === 'left' ? column.x : column.x + column.width / 2;
      return text(words, at, -h - row * h * LINE_PITCH, h, { align: column.align, bold: bold || k === 0 });
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
  const last = columns.at(-1);
  const right = last === undefined ? width : last.x + last.width;
  const rule = polyline([
    { x: 0, y: -depth - UNDER_ROW },
    { x: right, y: -depth - UNDER_ROW },
  ]);
  layers.push({
    clip: null,
    strokes: [
      {
        pen: { line: bold ? 'medium' : 'fine', tone: bold ? 'ink' : 'pale', fill: null, factor: 1 },
        role: 'row-rule',
        paths: [rule],
        circles: [],
      },
    ],
    texts: [],
  });
  return { layer: joined(...layers), height: depth + UNDER_ROW };
}
