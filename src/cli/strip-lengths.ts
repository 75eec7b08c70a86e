import { basename } from 'node:path';
import type { Block } from '../block/block.ts';
import { readText } from '../files/read-file.ts';
import type { NormGroup } from '../hand/norm-groups.ts';
import { NORM_SOURCES, normHands } from '../hand/norm-hands.ts';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';
import { stripPiece } from '../sheet/plastic/piece.ts';
import type { NeededStrip } from '../sheet/plastic/size-plan.ts';
import { seeded, seededNormal } from '../units/chance.ts';
import { parseLength } from '../units/length.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { blockTitle } from '../words/hand-words.ts';
import type { Language } from '../words/language.ts';
import { plasticWords } from '../words/plastic/plastic-words.ts';
import { terminalSpeech } from '../words/terminal/terminal-words.ts';
import { flagProblem } from './flags/flag.ts';
import { RowReader, type RowSettings } from './hand-pieces.ts';
import { openHandTable, type RowError, rowErrorText } from './read-hand-rows.ts';
import { RowProgress } from './row-progress.ts';

const LARGEST_LENGTHS = 20_000_000;
const LONGEST_STRIP = 1000;
const MOST_PROBLEMS = 20;

/** Why a hand, a code or a line of the table, has no strip; one hand may have several reasons. */
export interface LeftOut {
  readonly hand: string | number;
  readonly code: string;
  readonly text: string;
}

/** Where strip lengths come from; block null: by each hand's target. */
export type LengthsFrom =
  | { readonly kind: 'lengths'; readonly count: number; readonly file: string }
  | {
      readonly kind: 'norms';
      readonly count: number;
      readonly group: NormGroup;
      readonly seed: number;
      readonly redrawn: number;
      readonly block: Block;
    }
  | { readonly kind: 'table'; readonly count: number; readonly file: string; readonly block: Block | null };

/** The same to be printed: a file by its name alone, since a path says nothing on paper. */
export function fromOnPaper(from: LengthsFrom, language: Language): string {
  return fromInWords('file' in from ? { ...from, file: basename(from.file) } : from, language);
}

/** The same in words. */
export function fromInWords(from: LengthsFrom, language: Language): string {
  const { from: w } = plasticWords(language);
  const count = `${from.count}`;
  if (from.kind === 'lengths') return w.lengths(count, from.file);
  const block = from.block ? blockTitle(from.block, language) : '';
  if (from.kind === 'table') return w.table(count, from.file, block);
  return w.norms(count, w.group[from.group], `${from.seed}`, `${from.redrawn}`, block);
}

/** What leaving hands out does to a drawn sample, in words. */
export function biasInWords(bias: NonNullable<StripLengths['bias']>, language: Language): string {
  const { sizes: w } = terminalSpeech(language).w;
  const { group } = plasticWords(language).from;
  return w.bias(bias.map(({ sex, out, hands }) => w.group(group[sex], `${out}`, `${hands}`)).join(', '));
}

/** Strips to serve, with what they rest on. */
export interface StripLengths {
  readonly strips: readonly NeededStrip[];
  readonly from: LengthsFrom;
  readonly sources: readonly string[];
  readonly leftOut: readonly LeftOut[];
  /** Of a drawn sample: how many hands of each group were left out, which leans what is left to the others. */
  readonly bias?: readonly { readonly sex: 'female' | 'male'; readonly hands: number; readonly out: number }[];
  readonly invented: boolean;
}

/** A strip of nobody that is known. */
const UNNAMED = { code: null, side: null, block: null, relief: [], withLittle: null, invented: false } as const;

/** Lengths that were measured, one a line. */
export async function measuredLengths(path: string, width: number): Promise<Result<StripLengths>> {
  const text = await readText(path, LARGEST_LENGTHS);
  if (!text.ok) return text;
  const problems: Problem[] = [];
  const strips: NeededStrip[] = [];
  for (const [i, line] of text.value
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '') continue;
    const parsed = parseLength(line, 'mm');
    if (parsed.ok && parsed.mm <= LONGEST_STRIP) strips.push({ ...UNNAMED, length: parsed.mm, height: width });
    else
      problems.push({
        code: 'LENGTH',
        where: `line ${i + 1}`,
        message: `${path}: line ${i + 1}: ${parsed.ok ? `over ${LONGEST_STRIP} mm` : parsed.reason}.`,
        kind: 'input',
      });
  }
  if (strips.length === 0 && problems.length === 0)
    problems.push({ code: 'LENGTH', where: path, message: `${path} has no lengths; write one a line.`, kind: 'input' });
  if (problems.length > 0) return failure(...problems.slice(0, MOST_PROBLEMS));
  return success({ strips, from: { kind: 'lengths', count: strips.length, file: path }, sources: [], leftOut: [], invented: false });
}

/** What hands need that are drawn from published means and spreads. */
export function normLengths(
  norms: NormGroup,
  { hands: count, seed }: { readonly hands: number; readonly seed: number },
  { block, options }: RowSettings,
): Result<StripLengths> {
  if (!block)
    return failure(flagProblem('--block', 'auto needs deficits, which drawn hands have not; name a block (knucklewright blocks)'));
  const { hands, redrawn } = normHands(norms, count, seededNormal(seeded(seed)));
  const byGroup = new Map<'female' | 'male', { hands: number; out: number }>();
  const leftOut: LeftOut[] = [];
  const strips = hands.flatMap(({ hand, sex }): readonly NeededStrip[] => {
    const group = byGroup.get(sex) ?? { hands: 0, out: 0 };
    byGroup.set(sex, group);
    group.hands++;
    const piece = stripPiece(hand, block, options);
    if (piece.ok) return [{ ...UNNAMED, ...sizeOf(piece.value), block: block.id, withLittle: takesLittle(block), invented: true }];
    group.out++;
    leftOut.push({ hand: hand.code, code: piece.problems[0]?.code ?? '', text: `${hand.code}: ${piece.problems[0]?.message ?? ''}` });
    return [];
  });
  const from = { kind: 'norms', count: hands.length, group: norms, seed, redrawn, block } as const;
  // Strips too narrow for the palmar room are refused more often for small hands, so what is left is not the group that was drawn.
  const bias = [...byGroup].map(([sex, group]) => ({ sex, ...group }));
  return success({ strips, from, sources: NORM_SOURCES, leftOut, bias, invented: true });
}

/** What the hands of a table need. */
export async function tableLengths(path: string, settings: RowSettings): Promise<Result<StripLengths>> {
  const table = await openHandTable(path);
  if (!table.ok) return table;
  const reader = new RowReader(settings, table.value.columns);
  const strips: NeededStrip[] = [];
  const errors: RowError[] = [];
  const leftOut: LeftOut[] = [];
  let invented = false;
  let wrong = 0;
  const shown = new RowProgress(path);
  for await (const row of table.value.rows) {
    const read = reader.read(row);
    shown.row(row.line, strips.length, wrong);
    if (!read.ok) {
      wrong++;
      errors.push(...read.errors);
      continue;
    }
    const { piece, made } = read.value;
    if (piece.plate || made?.request.kind !== 'strip')
      leftOut.push({
        hand: row.line,
        code: 'PLATE',
        text: `${path}: line ${row.line}: a plate, which is cut for one hand, not from stock sizes`,
      });
    else {
      const { code, side, block } = piece;
      const withLittle = takesLittle(made.request.block);
      strips.push({ code, side, block, ...sizeOf(piece), relief: made.relief, withLittle, invented: piece.invented });
    }
    invented ||= piece.invented;
  }
  shown.end();
  if (strips.length === 0)
    return failure({
      code: 'ROWS',
      where: path,
      message: `${path}: no row could be made (${errors.length} faults; see knucklewright batch).`,
      kind: 'input',
    });
  for (const error of errors) leftOut.push({ hand: error.line, code: error.code, text: rowErrorText(path, error) });
  const from = { kind: 'table', count: strips.length, file: path, block: settings.block } as const;
  return success({ strips, from, sources: [], leftOut, invented });
}

function sizeOf({ length, width }: CutPiece): Pick<NeededStrip, 'length' | 'height'> {
  return { length, height: width };
}

function takesLittle(block: Block): boolean {
  return block.places.little !== undefined;
}
