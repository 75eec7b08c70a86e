import { type Box, boxOf, polyline, unionBox } from '../../geometry/path.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import { joined, type Measure, type PageLayer, placeLayer, scaleLayer, text, wrapWords } from './page.ts';

/** Something of a known height that is not divided, its upper left corner at (0, 0), y up. mm */
export interface Cell {
  readonly layer: PageLayer;
  readonly height: number;
}

/** A heading, or none (''), with what belongs to it; the heading never stands alone at the foot of a column. */
export interface FlowSection {
  readonly heading: string;
  readonly cells: readonly Cell[];
  /** Cells that must not be parted, as a drawing with its caption. */
  readonly together?: boolean;
  /** Stands before the cell `from`, not parted from it nor from what is before, and again wherever a column begins with a later one: the head of a table. */
  readonly repeated?: { readonly cell: Cell; readonly from: number };
}

/** Capital heights in mm and the free space between things. */
export interface FlowStyle {
  readonly text: number;
  readonly heading: number;
  readonly leastColumn: number;
  /** Free space between paragraphs, beyond the line's own, and above a heading. */
  readonly gap: number;
  readonly sectionGap: number;
}

export const LINE_PITCH = 1.75;
const HEADING_PITCH = 1.5;
const COLUMN_GAP = 7;
const HANGING = 4.5;

/** Equal columns in a box; one that stands wholly over a box of `below` reaches down into it. */
export function columnsIn(box: Box, style: FlowStyle, below: readonly Box[] = []): readonly Box[] {
  const width = box.maxX - box.minX;
  const count = Math.max(1, Math.floor((width + COLUMN_GAP) / (style.leastColumn + COLUMN_GAP)));
  const each = (width - (count - 1) * COLUMN_GAP) / count;
  return Array.from({ length: count }, (_, k) => {
    const minX = box.minX + k * (each + COLUMN_GAP);
    const maxX = minX + each;
    const free = below.filter((b) => b.minX <= minX && maxX <= b.maxX).map((b) => b.minY);
    const minY = Math.min(box.minY, ...free);
    return { minX, maxX, minY, maxY: box.maxY };
  });
}

/** A paragraph broken to the column; `mark` (a number or a box) hangs before it. */
export function paragraph(words: string, width: number, style: FlowStyle, measure: Measure, mark: string | 'box' | null = null): Cell {
  const indent = mark === null ? 0 : HANGING;
  const h = style.text;
  const lines = wrapWords(words, width - indent, h, false, measure);
  const texts = lines.map((line, k) => text(line, indent, -h - k * h * LINE_PITCH, h));
  const height = h * 1.3 + (lines.length - 1) * h * LINE_PITCH;
  if (mark === 'box') {
    const side = h * 1.15;
    const corners = [
      { x: 0, y: -h - 0.1 },
      { x: side, y: -h - 0.1 },
      { x: side, y: -h - 0.1 + side },
      { x: 0, y: -h - 0.1 + side },
    ];
    return {
      layer: { clip: null, strokes: [{ pen: 'rule', role: 'check-box', paths: [polyline(corners, true)], circles: [] }], texts },
      height,
    };
  }
  return { layer: { clip: null, strokes: [], texts: mark === null ? texts : [text(mark, 0, -h, h, { bold: true }), ...texts] }, height };
}

/** A number, right-aligned in its column, and words. */
export function tableRow(number: string, words: string, width: number, style: FlowStyle, measure: Measure): Cell {
  const h = style.text;
  const column = 5 * h;
  const row = paragraph(words, width - column - 2, style, measure);
  return {
    height: row.height - h * 0.3,
    layer: joined(
      { clip: null, strokes: [], texts: [text(number, column, -h, h, { align: 'right' })] },
      placeLayer(row.layer, { dx: column + 2, dy: 0 }),
    ),
  };
}

/** A drawing as large as the room allows, at most `most` times its size; the factor is returned so that it can be stated. */
export function drawing(
  layer: PageLayer,
  width: number,
  height: number,
  most: number,
): { readonly cell: Cell; readonly width: number; readonly factor: number } {
  const box = strokesBox(layer);
  const factor = Math.min(most, width / (box.maxX - box.minX), height / (box.maxY - box.minY));
  const scaled = placeLayer(scaleLayer(layer, factor), { dx: -box.minX * factor, dy: -box.maxY * factor });
  return { cell: { layer: scaled, height: (box.maxY - box.minY) * factor }, width: (box.maxX - box.minX) * factor, factor };
}

function strokesBox(layer: PageLayer): Box {
  const boxes = layer.strokes.flatMap((s) => s.paths.map((p) => boxOf([p])));
  // Words may stand out of the drawing by their own height; their width is bounded by what they name.
  const words = layer.texts.map((t) => ({ minX: t.at.x, maxX: t.at.x, minY: t.at.y - t.height * 0.4, maxY: t.at.y + t.height * 1.2 }));
  return unionBox([...boxes, ...words]);
}

function headingCells(heading: string, style: FlowStyle, width: number, measure: Measure): readonly Cell[] {
  if (heading === '') return [];
  const lines = wrapWords(heading, width, style.heading, true, measure);
  const pitch = style.heading * HEADING_PITCH;
  const texts = lines.map((line, k) => text(line, 0, -style.heading - k * pitch, style.heading, { bold: true }));
  return [{ layer: { clip: null, strokes: [], texts }, height: style.heading * 1.35 + (lines.length - 1) * pitch }];
}

/** What a heading is not parted from. */
function firstGroup(heading: readonly Cell[], { cells, repeated }: FlowSection): readonly Cell[] {
  if (!repeated) return [...heading, ...cells.slice(0, 1)];
  return [...heading, ...cells.slice(0, repeated.from), repeated.cell, ...cells.slice(repeated.from, repeated.from + 1)];
}

function heightOf(cells: readonly Cell[], style: FlowStyle): number {
  return cells.reduce((sum, cell) => sum + cell.height + style.gap, -style.gap);
}

/**
 * Sets sections into the columns of as many pages as they need, one layer for each page; the first page may have columns of its own. Null when a cell is taller than a column.
 */
export function flow(
  sections: readonly FlowSection[],
  firstColumns: readonly Box[],
  style: FlowStyle,
  measure: Measure,
  laterColumns: readonly Box[] = firstColumns,
): readonly PageLayer[] | null {
  let columns = firstColumns;
  const first = columns[0];
  if (!first) return null;
  const narrowest = Math.min(...[...firstColumns, ...laterColumns].map((box) => box.maxX - box.minX));
  const pages: PageLayer[][] = [[]];
  let column = 0;
  let y = first.maxY;
  const next = () => {
    column++;
    if (column === columns.length) {
      column = 0;
      columns = laterColumns;
      pages.push([]);
    }
    y = (columns[column] as Box).maxY;
  };
  for (const section of sections) {
    const heading = headingCells(section.heading, style, narrowest, measure);
    const groups: (readonly Cell[])[] = section.together
      ? [[...heading, ...section.cells]]
      : [firstGroup(heading, section), ...section.cells.slice(1 + (section.repeated?.from ?? 0)).map((cell) => [cell])];
    for (const [k, cells] of groups.entries()) {
      const again = section.repeated && k > 0 ? [section.repeated.cell] : [];
      let group = cells;
      let height = heightOf(group, style);
      const room = (box: Box) => box.maxY - box.minY;
      if (heightOf([...again, ...group], style) > Math.max(...laterColumns.map(room))) return null;
      const gap = y < (columns[column] as Box).maxY ? (k === 0 ? style.sectionGap : style.gap) : 0;
      if (y - gap - height >= (columns[column] as Box).minY - SAME_POINT) y -= gap;
      else {
        group = [...again, ...group];
        height = heightOf(group, style);
        do next();
        while (height > room(columns[column] as Box) + SAME_POINT);
      }
      for (const cell of group) {
        const { minX } = columns[column] as Box;
        pages.at(-1)?.push(placeLayer(cell.layer, { dx: minX, dy: y }));
        y -= cell.height + style.gap;
      }
      y += style.gap;
    }
  }
  return pages.map((cells) => joined(...cells));
}
