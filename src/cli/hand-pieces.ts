import type { Block } from '../block/block.ts';
import { blockById, blocks } from '../block/library.ts';
import type { Hand } from '../hand/hand.ts';
import { handOfRow } from '../hand/hand-columns.ts';
import { readHand } from '../hand/read-hand.ts';
import type { PatternRequest } from '../pattern/make-pattern.ts';
import { chooseForHand, plannedAngle } from '../pattern/plan-hand.ts';
import { plateById, plates } from '../pattern/plate/plate-names.ts';
import { designFor, type PlatePreset, readPlateOptions } from '../pattern/plate/read-plate.ts';
import type { StripOptions } from '../pattern/strip/strip-options.ts';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';
import { platePiece, type Relief, stripPieceAndRelief } from '../sheet/plastic/piece.ts';
import { getOwn } from '../units/json-text.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/length.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { type HandRow, type RowError, rowErrorOf, unitsOfRow } from './read-hand-rows.ts';

/** How the rows of a table become strips and plates. */
export interface RowSettings {
  /** Null: chosen for each hand. */
  readonly block: Block | null;
  /** For hands that lack both motions when the block is chosen for each hand; null: those rows are wrong. */
  readonly plate: PlatePreset | null;
  readonly units: LengthUnit;
  readonly options: StripOptions;
}

export interface RowPiece {
  readonly piece: CutPiece;
  /** What must be cut back of a straight blank; none for a plate. */
  readonly relief: readonly Relief[];
  /** What it is drawn from. */
  readonly request: PatternRequest;
}

export type ReadRow =
  /** `made` is null for a piece that an earlier run made. */
  { readonly ok: true; readonly value: { readonly piece: CutPiece; readonly made: RowPiece | null } } | WrongRow;

interface WrongRow {
  readonly ok: false;
  readonly errors: readonly RowError[];
}

/** A row that can be made without looking at others. */
export interface RowJob {
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly units: LengthUnit;
}

/** Makes the piece of each row in turn, and sees to what rows must agree in: one unit, and no piece twice. */
export class RowReader {
  private readonly settings: RowSettings;
  private readonly columns: readonly string[];
  private units: LengthUnit | null = null;
  private readonly lineOf = new Map<string, number>();

  constructor(settings: RowSettings, columns: readonly string[]) {
    this.settings = settings;
    this.columns = columns;
  }

  read(row: HandRow): ReadRow {
    const job = this.begin(row);
    if ('ok' in job) return job;
    const made = pieceOfRow(job, this.settings, this.columns);
    return made.ok
      ? (this.seenBefore(made.value.piece.id, row.line) ?? { ok: true, value: { piece: made.value.piece, made: made.value } })
      : made;
  }

  /** What there is to do for a row, or what is wrong with it; asked of the rows in their order. */
  begin(row: HandRow): RowJob | WrongRow {
    if (row.cells === null) return { ok: false, errors: [row.error] };
    const { line, cells } = row;
    const units = unitsOfRow(cells, this.settings.units, this.units);
    if ('wrong' in units) {
      const problem = { code: 'UNITS', where: 'units', message: units.wrong, kind: 'input' } as const;
      return { ok: false, errors: [rowErrorOf(problem, line, this.columns)] };
    }
    this.units = units.units;
    return { line, cells, units: units.units };
  }

  /** A row whose piece an earlier run made; asked of the rows in their order, as `begin` is. */
  know(piece: CutPiece): void {
    this.units ??= LENGTH_UNITS.find((unit) => unit === getOwn(piece.hand, 'units')) ?? null;
  }

  /** What is wrong with a row whose piece an earlier row made; null for the first. */
  seenBefore(id: string, line: number): WrongRow | null {
    const before = this.lineOf.get(id);
    if (before === undefined) {
      this.lineOf.set(id, line);
      return null;
    }
    const message = `${id} stands in line ${before} already; give each hand a code of its own`;
    return { ok: false, errors: [rowErrorOf({ code: 'ROW_TWICE', where: 'code', message, kind: 'input' }, line, this.columns)] };
  }
}

/** The piece of a row, or what is wrong with the row; of others it knows nothing. */
export function pieceOfRow(
  { line, cells, units }: RowJob,
  settings: RowSettings,
  columns: readonly string[],
): { readonly ok: true; readonly value: RowPiece } | WrongRow {
  const failed = (problems: readonly Problem[]): WrongRow => ({
    ok: false,
    errors: problems.map((problem) => rowErrorOf(problem, line, columns)),
  });
  const hand = readHand(handOfRow(cells, units));
  if (!hand.ok) return failed(hand.problems);
  const request = requestOf(cells.block?.trim() ?? '', hand.value, settings);
  if (!request.ok) return failed(request.problems);
  const piece = pieceOf(request.value);
  if (!piece.ok) return failed(piece.problems);
  const { piece: listed, relief } = piece.value;
  const warnings = [...new Set([...hand.warnings, ...request.warnings].map((w) => w.code).concat(listed.warnings))];
  return { ok: true, value: { piece: { ...listed, warnings }, relief, request: request.value } };
}

/** What the row asks for: the block or plate that its cell names, else the table's block, else what the deficits suggest. */
function requestOf(cell: string, hand: Hand, settings: RowSettings): Result<PatternRequest> {
  if (cell === '' && settings.block) return success(stripRequest(hand, settings.block, settings));
  if (cell === '' || cell === 'auto') return chosen(hand, settings);
  const block = blockById(cell);
  if (block) return success(stripRequest(hand, block, settings));
  const plate = plateById(cell);
  if (plate) return plateRequest(hand, plate);
  const message = `there is no block or plate ${quote(cell)}. The blocks are ${ids(blocks())}; the plates are ${ids(plates())}.`;
  return failure({ code: 'BLOCK_UNKNOWN', where: 'block', message, kind: 'input' });
}

function chosen(hand: Hand, settings: RowSettings): Result<PatternRequest> {
  const found = chooseForHand(hand, settings.options, { clinicianConfirms: false });
  if (found.ok) return success(stripRequest(hand, found.value.block, settings));
  const forPlate = found.problems.every((p) => p.code === 'BOTH_DEFICITS');
  return forPlate && settings.plate ? plateRequest(hand, settings.plate) : found;
}

function stripRequest(hand: Hand, block: Block, { options }: RowSettings): PatternRequest {
  return { kind: 'strip', hand, block, options, date: null };
}

function ids(list: readonly { readonly id: string }[]): string {
  return list.map(({ id }) => id).join(', ');
}

function pieceOf(request: PatternRequest): Result<Pick<RowPiece, 'piece' | 'relief'>> {
  if (request.kind === 'strip') return stripPieceAndRelief(request.hand, request.block, request.options);
  const piece = platePiece(request.hand, { design: request.plate, options: request.options });
  return piece.ok ? success({ piece: piece.value, relief: [] }) : piece;
}

/** A plate for a hand at the preset's angle, else the plan's, with the preset's options. */
function plateRequest(hand: Hand, preset: PlatePreset): Result<PatternRequest> {
  const options = readPlateOptions([{ origin: preset.id, values: preset.options }]);
  if (!options.ok) return options;
  const choice = { digits: null, angle: null, planned: plannedAngle(hand, { clinicianConfirms: false }) };
  const design = designFor(hand, preset, choice);
  if (!design.ok) return design;
  return success({ kind: 'plate', hand, plate: design.value, options: options.value, date: null }, design.warnings);
}
