import { boxOf } from '../../geometry/path.ts';
import type { Hand } from '../../hand/hand.ts';
import { makePattern } from '../../pattern/make-pattern.ts';
import { rounded } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import type { CutPiece, PiecePlate } from './cut-list.ts';
import { pieceId } from './strip-piece.ts';

const DECIMALS = 3;

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
