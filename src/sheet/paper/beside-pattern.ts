import type { Box } from '../../geometry/path.ts';
import { dashed } from '../../pattern/dashes.ts';
import type { LegendRow, MakingNotes } from '../../pattern/making-notes.ts';
import type { Frame } from './frame.ts';
import { joined, type Measure, NOTHING, type PageLayer, type PageText, placeLayer, text, wrapWords } from './page.ts';
import type { PlannedPages } from './plan-pattern.ts';

const SMALL = 2;
const PITCH = 1.75;
const LEGEND_LINE = 14;
const LEGEND_WIDTH = 76;
const GAP = 6;

/** What stands beside the pattern on its page. What found no room is left to the making sheet. */
export interface BesidePattern {
  readonly layer: PageLayer;
  readonly legend: boolean;
  readonly facts: boolean;
}

/** Legend and facts side by side under the pattern, or, where the pattern takes that place, in the corner of the bars and beside it. */
export function besidePattern(
  page: PlannedPages[number],
  frame: Frame,
  notes: Pick<MakingNotes, 'facts' | 'legend'>,
  measure: Measure,
): BesidePattern {
  const { shoulder, pocket, middle, card } = frame;
  const high = page.place === 'high';
  const legendRoom = high ? { ...shoulder, maxX: shoulder.minX + LEGEND_WIDTH } : page.kind === 'whole' && pocket !== card ? pocket : null;
  const factsRoom = high ? { ...shoulder, minX: shoulder.minX + LEGEND_WIDTH + GAP } : middle;
  const legend = legendRoom && fitting(legendRoom, legendCell(notes.legend), LEGEND_WIDTH);
  const facts = factsRoom && fitting(factsRoom, factsCell(notes.facts, factsRoom.maxX - factsRoom.minX, measure), LEAST_FACTS_WIDTH);
  return { layer: joined(legend ?? NOTHING, facts ?? NOTHING), legend: legend !== null, facts: facts !== null };
}

/** Narrower columns break every line of the facts. mm */
const LEAST_FACTS_WIDTH = 40;

interface Cell {
  readonly layer: PageLayer;
  readonly height: number;
}

function fitting(room: Box, cell: Cell, leastWidth: number): PageLayer | null {
  const fits = room.maxX - room.minX >= leastWidth && room.maxY - room.minY >= cell.height;
  return fits ? placeLayer(cell.layer, { dx: room.minX, dy: room.maxY }) : null;
}

/** Each kind of line with its meaning; upper left corner at (0, 0). */
export function legendCell(rows: readonly LegendRow[]): Cell {
  const pitch = SMALL * PITCH * 1.15;
  const layers = rows.map((row, k): PageLayer => {
    const y = -SMALL - k * pitch;
    const middle = y + SMALL / 2;
    const line = dashed({ x: 0, y: middle }, { x: LEGEND_LINE, y: middle }, row.dashes);
    const strokes = [{ pen: row.layer, role: 'legend', paths: line, circles: [] }];
    return { clip: null, strokes, texts: [text(row.title, LEGEND_LINE + 3, y, SMALL)] };
  });
  return { layer: joined(...layers), height: SMALL * 1.4 + (rows.length - 1) * pitch };
}

function factsCell(words: readonly string[], width: number, measure: Measure): Cell {
  const lines = words.flatMap((line) => wrapWords(line, width, SMALL, false, measure));
  const texts = lines.map((line, k): PageText => text(line, 0, -SMALL - k * SMALL * PITCH, SMALL));
  return { layer: { clip: null, strokes: [], texts }, height: SMALL * 1.4 + (lines.length - 1) * SMALL * PITCH };
}
