import { type Box, boxOf } from '../../geometry/path.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import type { SheetSpeech } from '../../words/sheet-words.ts';
import { type Measure, type PageLayer, type PageStroke, placeLayer, scaleLayer, text } from './page.ts';
import { type Cell, columnsIn, type FlowSection, type FlowStyle, flow, paragraph } from './page-flow.ts';
import type { PageContent } from './pattern-pages.ts';

const STYLE: FlowStyle = { text: 1.9, heading: 2.5, leastColumn: 72, gap: 0.9, sectionGap: 3 };
/** Share of the page's height that the plan may take. */
const PLAN_SHARE = 0.62;
const NUMBER = 2.2;
/** Of a part's box, so that its number stands clear of its outline. */
const NUMBER_SHARE = 0.6;
const AFTER = 4;
/** By how much the second line of an entry is set in, mm. */
const SET_IN = 3;

/**
 * Pages that go before the parts of a sheet of plastic: the whole sheet made small, with each part's number, the shear cuts and the grain, and under it or beside it the
 * lists of the pattern. Nothing on them is at true size or has the pen of a cut, so that they have neither bars nor card. None for a pattern without lists; null
 * when the paper is too small.
 */
export function sheetPlanPages(pattern: Pattern, room: Box, measure: Measure, { w, fixed }: SheetSpeech): readonly PageContent[] | null {
  const { lists } = pattern;
  const edge = pattern.beside.marks.find((mark) => mark.role === 'sheet-edge');
  if (!lists || !edge) return [];
  const sheet = boxOf(edge.paths);
  const [width, height] = [room.maxX - room.minX, room.maxY - room.minY];
  const over = planFactor(sheet, width, PLAN_SHARE * height);
  const beside = planFactor(sheet, width - STYLE.leastColumn - AFTER, height);
  const factor = Math.max(over, beside);
  const free =
    over >= beside
      ? { ...room, maxY: room.maxY - factor * (sheet.maxY - sheet.minY) - AFTER }
      : { ...room, minX: room.minX + factor * (sheet.maxX - sheet.minX) + AFTER };
  const columns = columnsIn(free, STYLE, []);
  const full = columnsIn(room, STYLE, []);
  // The lines are broken once, so that they fit the columns of the first page and of the later ones.
  const narrowest = Math.min(...[...columns, ...full].map((column) => column.maxX - column.minX));
  const sections = lists.map(
    ({ heading, lines }): FlowSection => ({ heading, cells: lines.map((line) => listLine(line, narrowest, measure)) }),
  );
  const pages = flow(sections, columns, STYLE, measure, full);
  const placed = placeLayer(planLayer(pattern, sheet, factor), { dx: room.minX, dy: room.maxY });
  const title = w.plan(fixed(factor, 2));
  return (
    pages?.map((layer, k) => ({ title, kind: 'plan' as const, frame: 'plain' as const, layers: k === 0 ? [placed, layer] : [layer] })) ??
    null
  );
}

/** A line of a list; what does not fit into it stands under it, set in. */
function listLine(line: string, width: number, measure: Measure): Cell {
  const { layer, height } = paragraph(line, width - SET_IN, STYLE, measure);
  const texts = layer.texts.map((each, k) => (k === 0 ? each : { ...each, at: { ...each.at, x: each.at.x + SET_IN } }));
  return { layer: { ...layer, texts }, height };
}

/** How many times its size the sheet is drawn in a room, at most as large as it is; 0 where there is no room. */
function planFactor(sheet: Box, width: number, height: number): number {
  return Math.max(0, Math.min(1, width / (sheet.maxX - sheet.minX), height / (sheet.maxY - sheet.minY)));
}

/** The plan with its upper left corner at (0, 0). */
function planLayer(pattern: Pattern, sheet: Box, factor: number): PageLayer {
  const stroke = (role: string, pen: PageStroke['pen'], paths: PageStroke['paths']): PageStroke => ({ pen, role, paths, circles: [] });
  const beside = pattern.beside.marks
    .filter((mark) => ['sheet-edge', 'shear-cut'].includes(mark.role))
    .map((mark) => stroke(mark.role, mark.role === 'sheet-edge' ? 'rule' : 'INFO', mark.paths));
  const numbers = pattern.parts.map((part, k) => {
    const box = boxOf([part.outline]);
    const height = Math.min(NUMBER / factor, NUMBER_SHARE * Math.min(box.maxX - box.minX, box.maxY - box.minY));
    return text(String(k + 1), (box.minX + box.maxX) / 2, (box.minY + box.maxY - height) / 2, height, { align: 'center' });
  });
  const layer: PageLayer = {
    clip: null,
    strokes: [...beside, ...pattern.parts.map((part) => stroke('part', 'MARK', [part.outline, ...part.holes]))],
    texts: numbers,
  };
  return placeLayer(scaleLayer(layer, factor), { dx: -sheet.minX * factor, dy: -sheet.maxY * factor });
}
