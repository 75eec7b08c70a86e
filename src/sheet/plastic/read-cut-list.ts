import * as z from 'zod';
import { SIDES } from '../../hand/digits.ts';
import { carriedDesign, readPlateOptions } from '../../pattern/plate/read-plate.ts';
import { formWords } from '../../units/form-problems.ts';
import { parseJsonText } from '../../units/json-text.ts';
import { parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { CUT_LIST_COLUMNS, CUT_LIST_SCHEMA, type CutPiece } from './cut-list.ts';
import { MOST_PROBLEMS, readTable } from './read-table.ts';

export interface CutList {
  readonly pieces: readonly CutPiece[];
  /** What the strips were made with; null in a CSV. */
  readonly settings: Readonly<Record<string, unknown>> | null;
}

export const MOST_PIECES = 100_000;
const LARGEST_SIDE = 3000;

const size = z.number().positive().max(LARGEST_SIDE);
const pieceForm = z.strictObject({
  id: z.string().min(1).max(120),
  code: z.string().min(1).max(60),
  side: z.enum(SIDES).nullable(),
  block: z.string().max(60).nullable(),
  plate: z.strictObject({ design: carriedDesign(), options: z.record(z.string(), z.unknown()) }).nullable(),
  length: size,
  width: size,
  quantity: z.int().min(1).max(MOST_PIECES),
  marks: z.array(z.strictObject({ at: z.number(), role: z.string().max(60), title: z.string().max(120) })).max(100),
  warnings: z.array(z.string().max(60)).max(100),
  invented: z.boolean(),
  hand: z.unknown(),
});
const listForm = z.strictObject({
  schema: z.literal(CUT_LIST_SCHEMA),
  units: z.literal('mm'),
  settings: z.record(z.string(), z.unknown()),
  pieces: z.array(pieceForm).min(1).max(MOST_PIECES),
});

/** The largest file of pieces that is read. */
export const LARGEST_LIST_BYTES = 100_000_000;

/** Pieces that are laid out at once; 5,000 of mixed sizes take a quarter of a minute. */
const MOST_LAID_OUT = 5000;

/** What is said of a list that asks for more pieces than are laid out at once; null for others. */
export function tooManyPieces({ pieces }: CutList, source = ''): Problem | null {
  const count = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  if (count <= MOST_LAID_OUT) return null;
  const message = `asks for ${count} pieces; at most ${MOST_LAID_OUT} are laid out at once. Cut the list in parts, each with a folder of its own`;
  return problem(source || 'the cut list', '', message);
}

/** A cut list from the text of a file, JSON when it begins so, else CSV. All problems at once: `CUT_LIST`, with line and column for CSV, or those of `parseJsonText`. */
export function readCutList(text: string, source: string): Result<CutList> {
  const list = /^\uFEFF?\s*\{/.test(text) ? fromJson(text, source) : fromCsv(text, source);
  const many = list.ok ? tooManyPieces(list.value, source) : null;
  return many ? failure(many) : list;
}

function fromJson(text: string, source: string): Result<CutList> {
  const parsed = parseJsonText(text, source, LARGEST_LIST_BYTES);
  if (!parsed.ok) return parsed;
  const json = parsed.value;
  const read = listForm.safeParse(json);
  if (!read.success)
    return failure(
      ...read.error.issues.slice(0, 20).map((issue) => problem(source, issue.path.map(String).join('.'), formWords(issue, json))),
    );
  const problems: Problem[] = [];
  const pieces = read.data.pieces.map((piece): CutPiece => {
    if (!piece.plate) return { ...piece, plate: null };
    const options = readPlateOptions([{ origin: `${source}: ${piece.id}`, values: piece.plate.options }]);
    if (options.ok) return { ...piece, plate: { design: piece.plate.design, options: options.value } };
    problems.push(...options.problems);
    return { ...piece, plate: null };
  });
  return problems.length > 0 ? failure(...problems.slice(0, MOST_PROBLEMS)) : success({ pieces, settings: read.data.settings });
}

function fromCsv(text: string, source: string): Result<CutList> {
  const table = readTable(text, CUT_LIST_COLUMNS, MOST_PIECES, (message) => problem(source, '', message));
  if (!table.ok) return table;
  const { header, rows } = table.value;
  // A wrong header would make every row wrong.
  const unknown = header.filter((name) => !CUT_LIST_COLUMNS.some((known) => known === name));
  if (unknown.length > 0)
    return failure(
      problem(
        source,
        'header',
        `has unknown columns (${unknown.slice(0, 5).map(quote).join(', ')}); it may have ${CUT_LIST_COLUMNS.join(', ')}`,
      ),
    );
  const problems: Problem[] = [];
  const pieces: CutPiece[] = [];
  for (const [i, { line, cells }] of rows.entries()) {
    if (problems.length >= MOST_PROBLEMS) break;
    const piece = pieceOf(cells, i, (column, message) => problems.push(problem(source, `line ${line}, ${column}`, message)));
    if (piece) pieces.push(piece);
  }
  if (rows.length === 0) problems.push(problem(source, '', 'has no rows; a cut list has at least the columns length and width, in mm'));
  const ids = new Set<string>();
  for (const { id } of pieces) {
    if (ids.has(id)) problems.push(problem(source, 'id', `${quote(id)} stands twice`));
    ids.add(id);
  }
  return problems.length > 0 ? failure(...problems.slice(0, MOST_PROBLEMS)) : success({ pieces, settings: null });
}

function pieceOf(
  record: Readonly<Record<string, string>>,
  row: number,
  report: (column: string, message: string) => void,
): CutPiece | null {
  const length = sizeOf(record, 'length', report);
  const width = sizeOf(record, 'width', report);
  const quantity = record.quantity?.trim() ? Number(record.quantity) : 1;
  if (!(Number.isInteger(quantity) && quantity >= 1 && quantity <= MOST_PIECES)) {
    report('quantity', `is ${quote(record.quantity)}; a whole number from 1 is needed`);
    return null;
  }
  if (length === null || width === null) return null;
  const id = record.id?.trim() || `PIECE-${row + 1}`;
  const side = SIDES.find((known) => known === record.side?.trim()) ?? null;
  const code = record.code?.trim() || id;
  const warnings = record.warnings?.split(' ').filter((w) => w !== '') ?? [];
  return {
    id,
    code,
    side,
    block: record.block?.trim() || null,
    plate: null,
    length,
    width,
    quantity,
    marks: [],
    warnings,
    invented: record.invented?.trim() === 'yes',
    hand: null,
  };
}

function sizeOf(
  record: Readonly<Record<string, string>>,
  column: 'length' | 'width',
  report: (column: string, message: string) => void,
): number | null {
  const parsed = parseLength(record[column] ?? '', 'mm');
  const message = parsed.ok ? (parsed.mm > LARGEST_SIDE ? `is ${quote(record[column])}; at most ${LARGEST_SIDE} mm` : null) : parsed.reason;
  if (message === null && parsed.ok) return parsed.mm;
  report(column, message ?? '');
  return null;
}

function problem(source: string, where: string, message: string): Problem {
  return { code: 'CUT_LIST', where, message: `${source}: ${where === '' ? '' : `${where}: `}${message}.`, kind: 'input' };
}
