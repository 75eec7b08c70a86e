import { join } from 'node:path';
import type { Block } from '../block/block.ts';
import { blockById } from '../block/library.ts';
import { readBlock } from '../block/read-block.ts';
import { outdatedSheets } from '../files/drawing-set.ts';
import { FileSet } from '../files/save-file.ts';
import { type Box, boxOf, type LineArcPath } from '../geometry/path.ts';
import { placePath } from '../geometry/transform.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { PLATE_GEOMETRY_VERSION } from '../pattern/plate/plate.ts';
import { digestOf } from '../pattern/set-id.ts';
import { GEOMETRY_VERSION } from '../pattern/strip/geometry-version.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import { DEFAULT_EFFORT } from '../sheet/bars/cut-bars.ts';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';
import { type LayRequest, layOut } from '../sheet/plastic/lay-out.ts';
import { layOutNested } from '../sheet/plastic/lay-out-nested.ts';
import { type Layout, placedBox, type SheetPart, type StockSheet, utilisation } from '../sheet/plastic/layout.ts';
import { provenLayout } from '../sheet/plastic/layout-faults.ts';
import { listPages } from '../sheet/plastic/list-pages.ts';
import { boxPart, type PieceSource, partOfPiece } from '../sheet/plastic/piece-part.ts';
import { type CutList, tooManyPieces } from '../sheet/plastic/read-cut-list.ts';
import { stockText } from '../sheet/plastic/read-stock.ts';
import { cutText, inReadingOrder, shearing, sheetPattern } from '../sheet/plastic/sheet-pattern.ts';
import { getOwn } from '../units/json-text.ts';
import { counted } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { SAME_POINT } from '../units/tolerance.ts';
import type { Language } from '../words/language.ts';
import { type TerminalSpeech, terminalSpeech } from '../words/terminal/terminal-words.ts';
import type { LayoutPlan } from './flags/layout-flags.ts';
import type { OutputPlan } from './flags/output-flags.ts';
import { addPatterns, fileLine, outputNames, type WrittenFile } from './write-patterns.ts';

const REMNANTS_CSV = 'remnants.csv';
const LAYOUT_JSON = 'layout.json';

/** What `sheets --json` prints; mm. */
export interface SheetsReport {
  readonly pieces: number;
  readonly newSheets: number;
  readonly atLeast: number;
  readonly verdict: string;
  readonly sheets: readonly {
    readonly stock: string;
    readonly parts: number;
    readonly utilisation: number;
    /** Plates are nested: they are cut out along their outlines, and the cuts with shears only take the rests off. */
    readonly byOutline: boolean;
    readonly cuts: readonly string[];
  }[];
  /** With --shears the straight cuts that all sheets take together; null otherwise. */
  readonly cutCount: number | null;
  /** The widest gap under this one with which fewer new sheets do, mm, and how many those are; null where none does. */
  readonly narrower: Narrower | null;
  readonly remnants: readonly StockSheet[];
  readonly files: readonly WrittenFile[];
}

/** A report with what its words need besides. */
export interface LaidOut {
  readonly report: SheetsReport;
  readonly rules: Pick<Layout['rules'], 'gap' | 'margin'>;
  readonly language: Language;
}

/** Lays the pieces of a cut list out, proves the layout, and writes the sheets, the printed list, the remnants and the layout. */
export async function layOutList(
  list: CutList,
  { rules, sheet, seed, prove, stock }: LayoutPlan,
  output: OutputPlan,
  date: string | null,
): Promise<Result<LaidOut>> {
  const { language } = output.settings.pdf;
  const many = tooManyPieces(list);
  if (many) return failure(many);
  const source = pieceSource(list, language);
  if (!source.ok) return source;
  const pieces = list.pieces.flatMap((piece) => Array.from({ length: piece.quantity }, () => piece));
  const effort = { ...DEFAULT_EFFORT, seed };
  const cutter = prove ? await (await import('./proving-cutter.ts')).provingCutter() : undefined;
  // For shears parts are their boxes, so that straight cuts set them free.
  const parts = rules.shears ? success(pieces.map(({ id, length, width }) => ({ id, length, width }))) : sheetParts(pieces, source.value);
  if (!parts.ok) return parts;
  const made = layOutNested({
    parts: parts.value,
    sheet,
    remnants: stock,
    rules,
    effort,
    ...(cutter ? { cutter } : {}),
  });
  if (!made.ok) return made;
  const proven = provenLayout(made.value, sheet, stock);
  if (!proven.ok) return proven;
  const layout = proven.value;
  const narrower = narrowerGap({ parts: parts.value, sheet, remnants: stock, rules }, layout);
  const warnings = rules.shears ? [] : touching(layout);
  const request = { rules, sheet, seed, members: membersOf(layout, pieces, list.pieces) };
  const remnants = remnantsOf(layout, stock);
  const files =
    output.folder === null
      ? success([])
      : await writeAll(output, output.folder, layout, pieces, list.pieces, source.value, remnants, date, request);
  if (!files.ok) return files;
  const { newSheets, atLeast } = layout;
  const report: SheetsReport = {
    pieces: pieces.length,
    newSheets,
    atLeast,
    verdict: verdict({ newSheets, atLeast }, rules, terminalSpeech('en')),
    cutCount: rules.shears ? layout.sheets.reduce((sum, laid) => sum + shearing(layout, laid).cuts.length, 0) : null,
    narrower,
    sheets: layout.sheets.map((laid) => ({
      stock: laid.isRemnant ? laid.stock.id : 'new',
      parts: laid.placements.length,
      utilisation: utilisation(laid, layout.parts),
      byOutline: laid.byOutline === true,
      cuts: shearing(layout, laid).cuts.map((cut, k) => cutText(cut, k + 1)),
    })),
    remnants,
    files: files.value,
  };
  return success({ report, rules, language }, [...warnings, ...files.warnings]);
}

/** The pieces by their boxes, plates by their true outlines besides. Refused when a plate cannot be drawn. */
function sheetParts(pieces: readonly CutPiece[], source: PieceSource): Result<readonly SheetPart[]> {
  const outlines = new Map<CutPiece, LineArcPath>();
  for (const piece of new Set(pieces)) {
    if (!piece.plate) continue;
    const part = partOfPiece(piece, source);
    if (!part.ok) return part;
    const { minX, minY } = boxOf([part.value.outline]);
    outlines.set(piece, placePath(part.value.outline, { dx: -minX, dy: -minY }));
  }
  return success(
    pieces.map((piece) => {
      const { id, length, width } = piece;
      const outline = outlines.get(piece);
      return { id, length, width, ...(outline ? { outline } : {}) };
    }),
  );
}

/** How the pieces of the list are drawn: with the options and the block that they were made with. */
function pieceSource(list: CutList, language: Language): Result<PieceSource> {
  const options = readStripOptions([{ origin: 'cut list', values: getOwn(list.settings, 'options') ?? {} }]);
  if (!options.ok) return options;
  const old = list.settings ? olderGeometry(list.settings, list.pieces) : null;
  if (old) return failure(old);
  const stored = getOwn(list.settings, 'block');
  const block = stored ? readBlock({ schema: 'knucklewright/block@1', ...(stored as object) }, 'cut list') : null;
  if (block && !block.ok) return block;
  const blockOf = (id: string): Block | undefined => (block?.ok && block.value.id === id ? block.value : blockById(id));
  return success({ options: list.settings ? options.value : DEFAULT_STRIP_OPTIONS, blockOf, language });
}

/** What of the list was made with another geometry than this program's, which would draw it otherwise; null when nothing was. */
function olderGeometry(settings: Readonly<Record<string, unknown>>, pieces: readonly CutPiece[]): Problem | null {
  const drawn = pieces.filter((p) => p.hand);
  const kinds = [
    ['geometryVersion', GEOMETRY_VERSION, drawn.some((p) => !p.plate)],
    ['plateGeometryVersion', PLATE_GEOMETRY_VERSION, drawn.some((p) => p.plate)],
  ] as const;
  for (const [key, current, used] of kinds) {
    const version = getOwn(settings, key);
    if (!used || version === current) continue;
    const message = `the cut list was made with geometry ${quote(version)}, this is geometry ${quote(current)}; make the cut list again.`;
    return { code: 'CUT_LIST_OLD', where: `settings.${key}`, message, kind: 'input' };
  }
  return null;
}

async function writeAll(
  plan: OutputPlan,
  folder: string,
  layout: Layout,
  pieces: readonly CutPiece[],
  list: readonly CutPiece[],
  source: PieceSource,
  remnants: readonly StockSheet[],
  date: string | null,
  request: Readonly<Record<string, unknown>>,
): Promise<Result<readonly WrittenFile[]>> {
  const sheetStems = layout.sheets.map((_, i) => `sheet-${String(i + 1).padStart(2, '0')}`);
  const pages = listPages(list, date, source.language, source.blockOf);
  const pageStems = pages.map((_, i) => `cut-list-${String(i + 1).padStart(2, '0')}`);
  // Pages are to be printed; no machine cuts them.
  const printed = { ...plan, formats: plan.formats.filter((format) => format !== 'dxf') };
  const names = [
    ...sheetStems.flatMap((stem) => outputNames(plan, stem)),
    ...pageStems.flatMap((stem) => outputNames(printed, stem)),
    REMNANTS_CSV,
    LAYOUT_JSON,
  ];
  const set = await FileSet.open(folder, names, { force: plan.force });
  if (!set.ok) return set;
  const outdated = plan.force ? await outdatedSheets(folder, new Set(names)) : [];
  const leaving = new Set([...names, ...outdated]);
  const files: WrittenFile[] = [];
  const warnings: Warning[] = [];
  const add = async (stem: string, pattern: Pattern, to: OutputPlan): Promise<Result<null>> => {
    const added = await addPatterns(set.value, [{ stem, pattern }], to, leaving);
    if (!added.ok) return added;
    files.push(...added.value);
    warnings.push(...added.warnings);
    return success(null);
  };
  for (const [i, stem] of sheetStems.entries()) {
    const drawn = sheetPattern({
      layout,
      sheet: i,
      pieces,
      partOf: (piece) => (layout.rules.shears ? success(boxPart(piece, source.language)) : partOfPiece(piece, source)),
      blockOf: source.blockOf,
      ...(source.language ? { language: source.language } : {}),
      date,
      request,
    });
    const added = drawn.ok ? await add(stem, drawn.value, plan) : drawn;
    if (!added.ok) {
      await set.value.discard();
      return added;
    }
  }
  for (const [i, stem] of pageStems.entries()) {
    const added = await add(stem, pages[i] as Pattern, printed);
    if (!added.ok) return added;
  }
  for (const file of [
    { name: REMNANTS_CSV, content: stockText(remnants) },
    { name: LAYOUT_JSON, content: layoutJson(layout, pieces, request) },
  ]) {
    const added = await set.value.add(file);
    if (!added.ok) return added;
  }
  const saved = await set.value.commit(outdated);
  if (!saved.ok) return saved;
  return success(files, outdated.length === 0 ? warnings : [...warnings, takenAway(folder, outdated)]);
}

function takenAway(folder: string, names: readonly string[]): Warning {
  const shown = names.slice(0, 6).join(', ') + (names.length > 6 ? ` and ${names.length - 6} more` : '');
  const message = `${folder}: ${shown} of an earlier layout, which this one does not have, were taken away`;
  return { code: 'OLD_SHEETS_REMOVED', where: folder, message, value: names.length };
}

/** What lies where, in 16 hex digits: with it the files of one layout know each other. */
function membersOf(layout: Layout, pieces: readonly CutPiece[], list: readonly CutPiece[]): string {
  const sheets = layout.sheets.map(({ stock, placements }) => ({
    stock,
    placements: placements.map((placement) => ({ ...placement, part: pieces[placement.part]?.id })),
  }));
  return digestOf({ list: digestOf(list), sheets });
}

/** Where every piece lies, for other programs; mm from the sheet's lower left corner. */
function layoutJson(layout: Layout, pieces: readonly CutPiece[], request: Readonly<Record<string, unknown>>): string {
  const sheets = layout.sheets.map((laid) => ({
    stock: laid.stock,
    isRemnant: laid.isRemnant,
    byOutline: laid.byOutline === true,
    parts: inReadingOrder(layout.parts, laid).map(({ part, x, y, turned, half }, k) => ({
      number: k + 1,
      id: pieces[part]?.id,
      x,
      y,
      turned,
      half: half === true,
    })),
  }));
  return `${JSON.stringify({ schema: 'knucklewright/layout@1', units: 'mm', ...request, newSheets: layout.newSheets, atLeast: layout.atLeast, sheets }, null, 2)}\n`;
}

/** What can be kept: the rests of all sheets, and the remnants in stock that were not touched. */
function remnantsOf(layout: Layout, stock: readonly StockSheet[]): readonly StockSheet[] {
  const used = new Set(layout.sheets.filter((laid) => laid.isRemnant).map((laid) => laid.stock.id));
  const rests = layout.sheets.flatMap((laid, i) =>
    shearing(layout, laid).remnants.map((box, k) => ({
      id: `R${i + 1}-${k + 1}`,
      along: box.maxX - box.minX,
      across: box.maxY - box.minY,
    })),
  );
  return [...stock.filter((s) => !used.has(s.id)), ...rests.map((r) => ({ ...r, id: freeId(r.id, stock) }))];
}

/** A name that no remnant in stock has. */
function freeId(id: string, stock: readonly StockSheet[]): string {
  let name = id;
  while (stock.some((s) => s.id === name)) name += 'A';
  return name;
}

function verdict(
  { newSheets, atLeast }: Pick<Layout, 'newSheets' | 'atLeast'>,
  rules: LaidOut['rules'],
  { w: { sheets: w }, number }: TerminalSpeech,
): string {
  if (newSheets === 0) return w.enough;
  const [count, gap, margin] = [w.count(`${newSheets}`), number(rules.gap, 2), number(rules.margin, 2)];
  return newSheets === atLeast ? w.proved(count, gap, margin) : w.bound(count, `${atLeast}`, gap, margin);
}

interface Narrower {
  readonly gap: number;
  readonly newSheets: number;
}

/** Gaps that are tried in place of a wider one, mm. */
const NARROWER_GAPS = [1.5, 1, 0.5, 0];
/** With more parts the layouts that only serve as advice take too long. */
const MOST_TRIED = 400;

/** The widest narrower gap with which fewer new sheets do; for few parts only. */
function narrowerGap(request: LayRequest, { newSheets }: Layout): Narrower | null {
  const { rules, parts } = request;
  if (newSheets < 2 || parts.length > MOST_TRIED) return null;
  const tried = (gap: number): Narrower | null => {
    const laid = layOut({ ...request, rules: { ...rules, gap } });
    return laid.ok && laid.value.newSheets < newSheets ? { gap, newSheets: laid.value.newSheets } : null;
  };
  // What no gap at all does not save, a narrower one does not either.
  if (rules.gap === 0 || tried(0) === null) return null;
  for (const gap of NARROWER_GAPS) {
    const found = gap < rules.gap ? tried(gap) : null;
    if (found) return found;
  }
  return null;
}

/** Says that edges of neighbours lie on each other, which a machine would cut twice. */
function touching(layout: Layout): readonly Warning[] {
  const { parts, rules, sheets } = layout;
  if (rules.gap > 0) return [];
  const boxes = sheets.map(({ placements }) => placements.map((p) => placedBox(parts[p.part] ?? { id: '', length: 0, width: 0 }, p)));
  const pairs = boxes.reduce((sum, on) => sum + on.reduce((all, a, i) => all + on.slice(i + 1).filter((b) => touch(a, b)).length, 0), 0);
  if (pairs === 0) return [];
  return [
    {
      code: 'EDGES_TOUCH',
      where: '--gap',
      message: `without a gap ${counted(pairs, 'pair')} of parts lie edge to edge; a machine would cut there twice`,
      value: pairs,
      next: 'for shears say --shears; for a machine give a gap, or --share-edges with its --cutter',
    },
  ];
}

/** Whether two boxes that do not overlap share more of their edges than a corner. */
function touch(a: Box, b: Box): boolean {
  const [x, y] = [Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX), Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY)];
  return Math.min(x, y) > -SAME_POINT && Math.max(x, y) > SAME_POINT;
}

/** What `sheets` says: pieces, sheets and the bound, each sheet, what is left, files. */
export function sheetsReportText({ report, rules, language }: LaidOut): string {
  const t = terminalSpeech(language);
  const { number } = t;
  const { sheets: w } = t.w;
  const { narrower, remnants, files } = report;
  const [shown, more] = [remnants.slice(0, MOST_REMNANTS), remnants.length - MOST_REMNANTS];
  const list = shown.map((r) => `${number(r.along, 1)} x ${number(r.across, 1)}`).join(language === 'en' ? ', ' : '; ');
  const lines = [
    w.pieces(`${report.pieces}`, verdict(report, rules, t)),
    ...(report.cutCount === null ? [] : [w.inAll(`${report.cutCount}`)]),
    ...(narrower === null ? [] : [w.narrower(number(narrower.gap, 2), `${narrower.newSheets}`, narrower.gap === 0)]),
    ...report.sheets.map(({ stock, parts, utilisation: used, byOutline, cuts }, i) => {
      const shears = (byOutline ? w.nested : w.cuts)(`${cuts.length}`);
      return w.sheet(`${i + 1}`, stock === 'new' ? '' : stock, `${parts}`, number(100 * used, 1), shears);
    }),
    remnants.length === 0 ? w.noRemnants : w.remnants(list, more > 0 ? `${more}` : ''),
    ...files.map((file) => fileLine(file, t)),
  ];
  const [first] = files;
  if (first) lines.push(join(first.path, '..', REMNANTS_CSV), join(first.path, '..', LAYOUT_JSON));
  return `${lines.join('\n')}\n`;
}

/** Remnants that are told on the terminal; all of them stand in their file. */
const MOST_REMNANTS = 12;
