import type { Block } from '../../block/block.ts';
import { boxOf } from '../../geometry/path-measures.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import type { Hand } from '../../hand/hand.ts';
import { stripFigures } from '../../pattern/strip/strip.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import { uprightMarks } from '../../pattern/strip/upright-marks.ts';
import { rounded } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { speechIn } from '../../words/speech.ts';
import type { CutPiece } from './cut-list.ts';

const DECIMALS = 3;

/** The line of the cut list for a hand's strip: its size and marks, proven, without drawing it. Refused as the strip itself is. */
export function stripPiece(hand: Hand, block: Block, options: StripOptions): Result<CutPiece> {
  const figures = stripFigures(hand, block, options);
  if (!figures.ok) return figures;
  const { flat, path, warnings, options: settings } = figures.value;
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
  return success({
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
  });
}

/** Name of a hand's piece in lists and of its files; `what` is the id of the block or plate. */
export function pieceId(hand: Hand, what: string): string {
  return `${hand.code}-${hand.side}-${what}`;
}
