import type { Block } from '../../block/block.ts';
import { boxOf } from '../../geometry/path.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { makePattern } from '../../pattern/make-pattern.ts';
import { stripFigures } from '../../pattern/strip/strip.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import { uprightMarks } from '../../pattern/strip/upright-marks.ts';
import { rounded } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { speechIn } from '../../words/speech.ts';
import type { CutPiece, PiecePlate } from './cut-list.ts';

const DECIMALS = 3;
/** Less is nothing to cut, mm. */
const LEAST_RELIEF = 0.0005;

/** How deep the distal edge of a strip is cut back at a digit, mm. */
export interface Relief {
  readonly digit: DigitName;
  readonly depth: number;
}

/** The line of the cut list for a hand's strip: its size and marks, proven, without drawing it. Refused as the strip itself is. */
export function stripPiece(hand: Hand, block: Block, options: StripOptions): Result<CutPiece> {
  const made = stripPieceAndRelief(hand, block, options);
  return made.ok ? success(made.value.piece) : made;
}

/** The same with what must be cut back of a straight blank. */
export function stripPieceAndRelief(
  hand: Hand,
  block: Block,
  options: StripOptions,
): Result<{ readonly piece: CutPiece; readonly relief: readonly Relief[] }> {
  const figures = stripFigures(hand, block, options);
  if (!figures.ok) return figures;
  const { flat, path, warnings, reliefs, options: settings } = figures.value;
  const faults = outlineFaults(flat.outline, 'outside');
  if (faults.length > 0)
    return failure(
      ...faults.map((f) => ({
        code: f.code,
        where: 'outline',
        message: `${f.message}. This is a fault of the program; please report the hand.`,
        kind: 'refused' as const,
      })),
    );
  const box = boxOf([flat.outline]);
  const marks = uprightMarks(path, flat, settings, speechIn('en')).map(({ v, role, title }) => ({
    at: rounded(v - flat.start, DECIMALS),
    role,
    title,
  }));
  const piece: CutPiece = {
    id: pieceId(hand, block.id),
    code: hand.code,
    side: hand.side,
    block: block.id,
    plate: null,
    length: rounded(box.maxX - box.minX, DECIMALS),
    width: rounded(box.maxY - box.minY, DECIMALS),
    quantity: 1,
    marks,
    warnings: [...new Set(warnings.map((w) => w.code))],
    invented: hand.invented,
    hand: hand.source,
  };
  const relief = reliefs
    .filter(({ depth }) => depth > LEAST_RELIEF)
    .map(({ digit, depth }) => ({ digit, depth: rounded(depth, DECIMALS) }));
  return success({ piece, relief });
}

/** Name of a hand's piece in lists and of its files; `what` is the id of the block or plate. */
function pieceId(hand: Hand, what: string): string {
  return `${hand.code}-${hand.side}-${what}`;
}

/**
 * The line of the cut list for a hand's plate, by the box of its outline: `length` runs from side to side, `width` from proximal to distal. One
 * face only (`PLATE_FACES`), since a line is one piece. Refused as the plate itself is.
 */
export function platePiece(hand: Hand, { design, options }: PiecePlate): Result<CutPiece> {
  if (design.faces === 'both') {
    const message = `${design.id}: a line of a cut list is one piece; take the dorsal and the palmar plate one after the other.`;
    return failure({ code: 'PLATE_FACES', where: 'plate', message, kind: 'input' });
  }
  const made = makePattern({ kind: 'plate', hand, plate: design, options, date: null });
  if (!made.ok) return made;
  const box = boxOf(made.value.pattern.parts.map((part) => part.outline));
  return success({
    id: pieceId(hand, design.id),
    code: hand.code,
    side: hand.side,
    block: null,
    plate: { design, options },
    length: rounded(box.maxX - box.minX, DECIMALS),
    width: rounded(box.maxY - box.minY, DECIMALS),
    quantity: 1,
    marks: [],
    warnings: [...new Set(made.value.pattern.warnings.map((w) => w.code))],
    invented: hand.invented,
    hand: hand.source,
  });
}
