import { makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';
import { requestOfPiece } from '../sheet/plastic/piece-part.ts';
import { failure, type Result } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { namedBlock } from './flags/device-flags.ts';
import type { OutputPlan } from './flags/output-flags.ts';
import { pieceOfRow, type RowJob, type RowSettings } from './hand-pieces.ts';
import type { RowError } from './read-hand-rows.ts';
import { type DrawnFiles, drawFiles } from './write-patterns.ts';

/** What the rows of a table have in common; data that another thread can be given. */
export interface RowSetup {
  readonly settings: RowSettings;
  readonly columns: readonly string[];
  /** How each hand's own files are drawn; null: none are. */
  readonly drawing: { readonly plan: OutputPlan; readonly date: string | null; readonly language: Language } | null;
}

/** What a row of a table made: its piece and, where each has some, its files, or what is wrong with it. */
export type MadeRow =
  | { readonly ok: true; readonly piece: CutPiece; readonly drawn: Result<DrawnFiles> | null }
  | { readonly ok: false; readonly errors: readonly RowError[] };

/** Makes a row of a table, or draws the files of a piece that an earlier run made. */
export async function makeRow(job: RowJob | CutPiece, setup: RowSetup): Promise<MadeRow> {
  const { settings, columns } = setup;
  if ('cells' in job) {
    const made = pieceOfRow(job, settings, columns);
    if (!made.ok) return made;
    const { piece, request } = made.value;
    return { ok: true, piece, drawn: await drawnFor(piece, request, setup) };
  }
  const request = await remade(job, settings);
  return { ok: true, piece: job, drawn: request ? await drawnFor(job, request, setup) : cannotBeRead(job) };
}

async function drawnFor(piece: CutPiece, request: PatternRequest, { drawing }: RowSetup): Promise<Result<DrawnFiles> | null> {
  if (drawing === null) return null;
  const pattern = makePattern({ ...request, date: drawing.date, language: drawing.language });
  return pattern.ok ? drawFiles({ stem: piece.id, pattern: pattern.value.pattern }, drawing.plan) : pattern;
}

async function remade(piece: CutPiece, settings: RowSettings): Promise<PatternRequest | null> {
  const named = piece.block === null || piece.block === settings.block?.id ? null : await namedBlock(piece.block);
  const block = named?.ok ? named.value.block : (settings.block ?? undefined);
  const request = requestOfPiece(piece, { blockOf: () => block, options: settings.options }, null);
  return request.ok ? request.value : null;
}

function cannotBeRead({ id }: CutPiece): Result<never> {
  return failure({
    code: 'PROGRESS_BROKEN',
    where: id,
    message: `${id}: what an earlier run left cannot be read; start again with --force.`,
    kind: 'input',
  });
}
