import type { Block } from '../block/block.ts';
import { blockById, blocks } from '../block/library.ts';
import type { Hand } from '../hand/hand.ts';
import { handOfRow } from '../hand/hand-columns.ts';
import { readHand } from '../hand/read-hand.ts';
import { chooseForHand } from '../pattern/plan-hand.ts';
import type { StripOptions } from '../pattern/strip/strip-options.ts';
import type { CutPiece } from '../sheet/cut-list.ts';
import { stripPiece } from '../sheet/strip-piece.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/length.ts';
import { own } from '../units/own.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { namedBlock } from './draw.ts';
import type { DrawFlags } from './draw-command.ts';
import { type HandRow, type RowError, rowErrorOf, unitsOfRow } from './read-hand-rows.ts';

/** How the rows of a table become strips. */
export interface RowSettings {
  /** Null: chosen for each hand. */
  readonly block: Block | null;
  readonly units: LengthUnit;
  readonly options: StripOptions;
}

export interface RowPiece {
  readonly piece: CutPiece;
  readonly hand: Hand;
  readonly block: Block;
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
    const block = this.blockOf(cells.block?.trim() ?? '', hand.value);
    if (!block.ok) return this.failed(block.problems, line);
    const piece = stripPiece(hand.value, block.value, this.settings.options);
    if (!piece.ok) return this.failed(piece.problems, line);
    const before = this.lineOf.get(piece.value.id);
    if (before !== undefined)
      return wrong('code', 'ROW_TWICE', `${piece.value.id} stands in line ${before} already; give each hand a code of its own`);
    this.lineOf.set(piece.value.id, line);
    const warnings = [...new Set([...hand.warnings.map((w) => w.code), ...piece.value.warnings])];
    const made = { piece: { ...piece.value, warnings }, hand: hand.value, block: block.value };
    return { ok: true, value: { piece: made.piece, made } };
  }

  /** A row whose piece an earlier run made. */
  known(line: number, piece: CutPiece): ReadRow {
    this.units ??= LENGTH_UNITS.find((unit) => unit === own(piece.hand, 'units')) ?? null;
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

  private blockOf(cell: string, hand: Hand): Result<Block> {
    if (cell !== '' && cell !== 'auto') {
      const named = blockById(cell);
      const ids = blocks().map((b) => b.id);
      return named
        ? success(named)
        : failure({
            code: 'BLOCK_UNKNOWN',
            where: 'block',
            message: `there is no block "${cell.slice(0, 48)}". The blocks are ${ids.join(', ')}.`,
            kind: 'input',
          });
    }
    if (cell === '' && this.settings.block) return success(this.settings.block);
    const chosen = chooseForHand(hand, this.settings.options, { clinicianConfirms: false });
    return chosen.ok ? success(chosen.value.block) : chosen;
  }

  private failed(problems: readonly Problem[], line: number): ReadRow {
    return { ok: false, errors: problems.map((problem) => rowErrorOf(problem, line, this.columns)) };
  }
}

/** The block that --block names, or null for auto. */
export async function blockFlag(flags: Pick<DrawFlags, 'block'>): Promise<Result<Block | null>> {
  if (flags.block === 'auto') return success(null);
  const named = await namedBlock(flags.block);
  return named.ok ? success(named.value.block) : named;
}
