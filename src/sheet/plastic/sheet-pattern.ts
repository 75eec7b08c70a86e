import type { Block } from '../../block/block.ts';
import { type Box, boxOf, polyline, unionBox } from '../../geometry/path.ts';
import { dashed } from '../../pattern/dashes.ts';
import type { Label, Mark, Part, Pattern, ReadingList } from '../../pattern/pattern.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { referenceSquare } from '../../pattern/reference-square.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { textBlock, wrapText } from '../../pattern/text-lines.ts';
import { validatePattern } from '../../pattern/validate-pattern.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { type PlasticWords, plasticWords } from '../../words/plastic/plastic-words.ts';
import { speechIn } from '../../words/speech.ts';
import type { CutPiece } from './cut-list.ts';
import { type LaidSheet, type Layout, type Placement, placedBox, type SheetPart, turnOf, utilisation } from './layout.ts';
import { pieceName } from './piece-part.ts';
import { numbered, placePart } from './place-part.ts';
import { type ShearCut, shearCuts } from './shear-cuts.ts';

export interface SheetDrawing {
  readonly layout: Layout;
  /** Place of the sheet in the layout. */
  readonly sheet: number;
  /** The pieces in the order of the layout's parts, and what each is drawn as. */
  readonly pieces: readonly CutPiece[];
  readonly partOf: (piece: CutPiece) => Result<Part>;
  /** What blocks are that the library does not have. */
  readonly blockOf?: (id: string) => Block | undefined;
  readonly language?: Language;
  readonly date: string | null;
  /** What the files carry so that the sheet can be laid out again. */
  readonly request: Readonly<Record<string, unknown>>;
}

const TEXT = 2.2;
const COLUMN_GAP = 10;
const COLUMN_WIDTH = 108;
/** Height that the text beside a low remnant takes at least, mm. */
const LEAST_HEIGHT = 120;
/** Line pitch of `textBlock`, in capital heights. */
const PITCH = 1.75;

/** Remnants narrower than this go to waste, mm. */
export const LEAST_REMNANT = 15;
/** A rest narrower than this is none: lengths are counted in tenths of a mm. */
const LEAST_CUT = 0.05;

/**
 * A laid sheet as a pattern: every part where it lies, with its number on it; the sheet's edge, the shear cuts and, to its right, the numbered list, the order of
 * cutting and the cautions on INFO. The sheet's lower left corner is (0, 0). Refused when a part cannot be drawn, or is not as large as it was laid.
 */
export function sheetPattern(drawing: SheetDrawing): Result<Pattern> {
  const { layout, pieces, partOf, date, request, language = 'en' } = drawing;
  const laid = layout.sheets[drawing.sheet];
  if (!laid) throw new RangeError(`no sheet ${drawing.sheet}`);
  const parts: Part[] = [];
  const unnumbered: number[] = [];
  const cut = shearing(layout, laid);
  const order = inReadingOrder(layout.parts, laid);
  for (const [k, placement] of order.entries()) {
    const piece = pieces[placement.part] as CutPiece;
    const made = partOf(piece);
    if (!made.ok) return made;
    const placed = placePart(made.value, placement.x, placement.y, turnOf(placement));
    const box = boxOf([placed.outline]);
    const counted = placedBox(layout.parts[placement.part] ?? { id: '', length: 0, width: 0 }, placement);
    const off = Math.max(Math.abs(box.maxX - counted.maxX), Math.abs(box.maxY - counted.maxY));
    // Sizes in a list are rounded to a thousandth.
    if (off > 0.001 + SAME_POINT) {
      const message = `${piece.id}: its outline is ${plain(off, 3)} mm larger or smaller than in the cut list; make the cut list again with these options.`;
      return failure({ code: 'PIECE_CHANGED', where: piece.id, message, kind: 'refused' });
    }
    const withNumber = numbered(placed, String(k + 1));
    if (!withNumber.found) unnumbered.push(k + 1);
    parts.push({ ...withNumber.part, id: `${k + 1}-${piece.id}`, title: `${k + 1}: ${placed.title}` });
  }
  const lists = readingLists(
    drawing,
    laid,
    order.map((p) => pieces[p.part] as CutPiece),
    cut.cuts,
    cut.remnants,
    unnumbered,
  );
  const beside = besideSheet(laid, columnLines(lists), cut.cuts, language);
  const box = unionBox([{ minX: 0, minY: 0, maxX: laid.stock.along, maxY: laid.stock.across }, boxOfDrawn(beside)]);
  const pattern: Pattern = {
    kind: 'sheet',
    title: title(drawing, laid),
    parts,
    beside,
    extents: { minX: 0, minY: 0, maxX: box.maxX + 5, maxY: box.maxY },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: GEOMETRY_VERSION,
      date,
      kind: 'sheet',
      number: drawing.sheet + 1,
      ...request,
      ...spokenIn(language),
    },
    lists,
    warnings: [],
  };
  const sound = validatePattern(pattern);
  return sound.ok ? success(pattern) : sound;
}

/**
 * Placements from the upper left, row by row, as one reads; numbers follow this order. A row is what lies with its middle above the lower edge of the highest
 * part that is left.
 */
export function inReadingOrder(parts: readonly SheetPart[], laid: LaidSheet): LaidSheet['placements'] {
  let left = laid.placements
    .map((placement) => ({ placement, box: placedBox(parts[placement.part] ?? { id: '', length: 0, width: 0 }, placement) }))
    .sort((a, b) => b.box.maxY - a.box.maxY || a.box.minX - b.box.minX);
  const order: Placement[] = [];
  while (left.length > 0) {
    const lower = left[0]?.box.minY ?? 0;
    const inRow = ({ box }: (typeof left)[number]) => (box.minY + box.maxY) / 2 > lower;
    const row = left.filter(inRow).sort((a, b) => a.box.minX - b.box.minX || b.box.minY - a.box.minY);
    order.push(...row.map(({ placement }) => placement));
    left = left.filter((each) => !inRow(each));
  }
  return order;
}

/** Cuts and remnants of a sheet whose layout was proven. Where parts are nested, shears only cut off the rests beside all of them. */
export function shearing(layout: Layout, laid: LaidSheet): { readonly cuts: readonly ShearCut[]; readonly remnants: readonly Box[] } {
  const boxes = laid.placements.map((p) => placedBox(layout.parts[p.part] ?? { id: '', length: 0, width: 0 }, p));
  const edge = { minX: 0, minY: 0, maxX: laid.stock.along, maxY: laid.stock.across };
  // For shears each part is cut to its box, so that the narrowest rest beside it is a cut as well.
  const worth = layout.rules.shears ? LEAST_CUT : LEAST_REMNANT;
  const found = shearCuts(laid.byOutline ? [unionBox(boxes)] : boxes, edge, layout.rules.gap, worth);
  if (!found) throw new Error('a proven layout cannot be cut with shears');
  const isKept = ({ minX, maxX, minY, maxY }: Box) => Math.min(maxX - minX, maxY - minY) >= LEAST_REMNANT;
  return { cuts: found.cuts, remnants: layout.rules.shears ? found.remnants.filter(isKept) : found.remnants };
}

function title(drawing: SheetDrawing, laid: LaidSheet): string {
  const { title: inWords } = plasticWords(drawing.language ?? 'en').sheet;
  const remnant = laid.isRemnant ? laid.stock.id : '';
  return inWords(`${drawing.sheet + 1}`, `${drawing.layout.sheets.length}`, remnant, `${laid.placements.length}`);
}

function readingLists(
  drawing: SheetDrawing,
  laid: LaidSheet,
  pieces: readonly CutPiece[],
  cuts: readonly ShearCut[],
  remnants: readonly Box[],
  unnumbered: readonly number[],
): readonly ReadingList[] {
  const { rules, parts } = drawing.layout;
  const used = utilisation(laid, parts);
  const language = drawing.language ?? 'en';
  const [words, speech] = [plasticWords(language), speechIn(language)];
  const { sheet: w } = words;
  const { cautions } = speech;
  const mm = (value: number) => speech.number(value, 1);
  const named = (p: CutPiece) => [p.code, ...(p.side ? [words.side[p.side]] : [])].join(' ');
  const about = (p: CutPiece) =>
    [named(p), `${mm(p.length)} x ${mm(p.width)}`, pieceName(p, speech, drawing.blockOf)].filter((text) => text !== '').join('   ');
  const ordered = cuts.map((cut, k) => cutText(cut, k + 1, language));
  return [
    {
      heading: title(drawing, laid).toUpperCase(),
      lines: [
        w.size(mm(laid.stock.along), mm(laid.stock.across), mm(100 * used)),
        `${w.rules(mm(rules.gap), mm(rules.margin), w.grainRule[rules.grain])}${drawing.date ? `, ${drawing.date}` : ''}`,
        ...(pieces.some((p) => p.invented) ? [words.invented] : []),
      ],
    },
    {
      heading: w.parts,
      lines: [...pieces.map((p, k) => `${k + 1}   ${about(p)}`), ...(unnumbered.length > 0 ? [w.noRoom(unnumbered.join(', '))] : [])],
    },
    laid.byOutline
      ? {
          heading: w.outlines,
          lines: [w.nested, ...(cuts.length > 0 ? [w.restsFirst, ...ordered] : []), w.thenOutlines],
        }
      : rules.shears
        ? { heading: w.orderOf(`${ordered.length}`), lines: ordered }
        : { heading: w.order, lines: [...ordered, w.thenOutlines] },
    { heading: w.remnants, lines: remnants.length === 0 ? [w.none] : counted(remnants, w, mm) },
    { heading: '', lines: [cautions.heat, cautions.skin, cautions.contraindications, cautions.laser, cautions.model, cautions.licensed] },
  ];
}

/** The sizes of boxes, equal ones once with how many there are. */
function counted(boxes: readonly Box[], w: PlasticWords['sheet'], mm: (value: number) => string): readonly string[] {
  const texts = boxes.map((box) => `${mm(box.maxX - box.minX)} x ${mm(box.maxY - box.minY)}`);
  return [...new Set(texts)].map((each) => {
    const count = texts.filter((text) => text === each).length;
    return count === 1 ? each : w.several(`${count}`, each);
  });
}

/** The lists as lines of one column. */
function columnLines(lists: readonly ReadingList[]): readonly string[] {
  const wrapped = (line: string) => wrapText(line, COLUMN_WIDTH, TEXT);
  return lists.flatMap(({ heading, lines }, k) => [
    ...(k > 0 ? [''] : []),
    ...(heading === '' ? [] : wrapped(heading)),
    ...lines.flatMap(wrapped),
  ]);
}

/** A cut in words: which way, where, and from where to where. */
export function cutText({ direction, at, piece }: ShearCut, number: number, language: Language = 'en'): string {
  const { sheet } = plasticWords(language);
  const mm = (value: number) => speechIn(language).number(value, 1);
  const [from, to] = direction === 'along' ? [piece.minX, piece.maxX] : [piece.minY, piece.maxY];
  return `${number}   ${sheet[direction](mm(at), mm(from), mm(to))}`;
}

/** Edge of the sheet, grain arrow, cuts as dashes, and the text in columns as high as the sheet. */
function besideSheet(
  laid: LaidSheet,
  lines: readonly string[],
  cuts: readonly ShearCut[],
  language: Language,
): { marks: readonly Mark[]; labels: readonly Label[] } {
  const { along, across } = laid.stock;
  const info = (role: string, name: string, paths: Mark['paths']): Mark => ({ layer: 'INFO', role, title: name, paths, circles: [] });
  const edge = polyline(
    [
      { x: 0, y: 0 },
      { x: along, y: 0 },
      { x: along, y: across },
      { x: 0, y: across },
    ],
    true,
  );
  const x = along + COLUMN_GAP;
  const top = Math.max(across, LEAST_HEIGHT);
  const square = referenceSquare(x, top, speechIn(language));
  const columns = inColumns(lines, x, top, 50 + COLUMN_GAP);
  const arrowY = top - 50 - COLUMN_GAP / 2;
  const arrow = [
    polyline([
      { x, y: arrowY },
      { x: x + 40, y: arrowY },
    ]),
    polyline([
      { x: x + 37, y: arrowY + 2 },
      { x: x + 40, y: arrowY },
      { x: x + 37, y: arrowY - 2 },
    ]),
  ];
  const grain: Label = {
    layer: 'INFO',
    text: plasticWords(language).sheet.grain,
    at: { x: x + 43, y: arrowY - TEXT / 2 },
    height: TEXT,
    align: 'left',
    angle: 0,
  };
  return {
    marks: [
      info('sheet-edge', 'edge of the sheet', [edge]),
      info('grain', 'direction of the grain', arrow),
      ...cuts.map((cut, k) => info('shear-cut', `cut ${k + 1}`, cutLine(cut))),
      ...square.marks,
    ],
    labels: [...square.labels, grain, ...columns],
  };
}

function cutLine({ direction, at, piece }: ShearCut): Mark['paths'] {
  return direction === 'along'
    ? dashed({ x: piece.minX, y: at }, { x: piece.maxX, y: at }, [6, 4])
    : dashed({ x: at, y: piece.minY }, { x: at, y: piece.maxY }, [6, 4]);
}

function inColumns(lines: readonly string[], left: number, top: number, firstDrop: number): readonly Label[] {
  const perColumn = (drop: number) => Math.max(1, Math.floor((top - drop) / (TEXT * PITCH)));
  const labels: Label[] = [];
  let from = 0;
  for (let column = 0; from < lines.length; column++) {
    const drop = column === 0 ? firstDrop : 0;
    const count = perColumn(drop);
    const x = left + column * (COLUMN_WIDTH + COLUMN_GAP);
    labels.push(...textBlock(lines.slice(from, from + count), { x, y: top - drop }, TEXT).labels);
    from += count;
  }
  return labels;
}
