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
  | { readonly ok: true; readonly value: { readonly piece: CutPiece; readonly made: RowPiece | null } }
  | { readonly ok: false; readonly errors: readonly RowError[] };

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
    if (row.cells === null) return { ok: false, errors: [row.error] };
    const { line, cells } = row;
    const wrong = (where: string, code: string, message: string): ReadRow => ({
      ok: false,
      errors: [rowErrorOf({ code, where, message, kind: 'input' }, line, this.columns)],
    });
    const units = unitsOfRow(cells, this.settings.units, this.units);
    if ('wrong' in units) return wrong('units', 'UNITS', units.wrong);
    this.units = units.units;
    const hand = readHand(handOfRow(cells, units.units));
    if (!hand.ok) return this.failed(hand.problems, line);
    const request = this.requestOf(cells.block?.trim() ?? '', hand.value);
    if (!request.ok) return this.failed(request.problems, line);
    const piece = pieceOf(request.value);
    if (!piece.ok) return this.failed(piece.problems, line);
    const { piece: listed, relief } = piece.value;
    const before = this.lineOf.get(listed.id);
    if (before !== undefined)
      return wrong('code', 'ROW_TWICE', `${listed.id} stands in line ${before} already; give each hand a code of its own`);
    this.lineOf.set(listed.id, line);
    const warnings = [...new Set([...hand.warnings, ...request.warnings].map((w) => w.code).concat(listed.warnings))];
    const made = { piece: { ...listed, warnings }, relief, request: request.value };
    return { ok: true, value: { piece: made.piece, made } };
  }

  /** A row whose piece an earlier run made. */
  known(line: number, piece: CutPiece): ReadRow {
    this.units ??= LENGTH_UNITS.find((unit) => unit === getOwn(piece.hand, 'units')) ?? null;
    return this.seenBefore(piece.id, line) ?? { ok: true, value: { piece, made: null } };
  }

  private seenBefore(id: string, line: number): ReadRow | null {
    const before = this.lineOf.get(id);
    if (before === undefined) {
      this.lineOf.set(id, line);
      return null;
    }
    const message = `${id} stands in line ${before} already; give each hand a code of its own`;
    return { ok: false, errors: [rowErrorOf({ code: 'ROW_TWICE', where: 'code', message, kind: 'input' }, line, this.columns)] };
  }

  /** What the row asks for: the block or plate that its cell names, else the table's block, else what the deficits suggest. */
  private requestOf(cell: string, hand: Hand): Result<PatternRequest> {
    if (cell === '' && this.settings.block) return success(this.strip(hand, this.settings.block));
    if (cell === '' || cell === 'auto') return this.chosen(hand);
    const block = blockById(cell);
    if (block) return success(this.strip(hand, block));
    const plate = plateById(cell);
    if (plate) return plateRequest(hand, plate);
    const message = `there is no block or plate ${quote(cell)}. The blocks are ${ids(blocks())}; the plates are ${ids(plates())}.`;
    return failure({ code: 'BLOCK_UNKNOWN', where: 'block', message, kind: 'input' });
  }

  private chosen(hand: Hand): Result<PatternRequest> {
    const chosen = chooseForHand(hand, this.settings.options, { clinicianConfirms: false });
    if (chosen.ok) return success(this.strip(hand, chosen.value.block));
    const forPlate = chosen.problems.every((p) => p.code === 'BOTH_DEFICITS');
    return forPlate && this.settings.plate ? plateRequest(hand, this.settings.plate) : chosen;
  }

  private strip(hand: Hand, block: Block): PatternRequest {
    return { kind: 'strip', hand, block, options: this.settings.options, date: null };
  }

  private failed(problems: readonly Problem[], line: number): ReadRow {
    return { ok: false, errors: problems.map((problem) => rowErrorOf(problem, line, this.columns)) };
  }
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
