import type { Block } from '../../block/block.ts';
import { blockById } from '../../block/library.ts';
import { holdsIn, plateName } from '../../pattern/plate/plate-names.ts';
import { blockTitle } from '../../words/hand/hand-words.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { CutPiece } from './cut-list.ts';

/** What a piece is, on paper: how its strip runs, its plate, or nothing for a blank. */
export function pieceName({ block, plate }: CutPiece, speech: Speech, blockOf?: (id: string) => Block | undefined): string {
  if (plate) return `${plateName(plate.design, speech)}, ${holdsIn(plate.design, speech)}`;
  return block === null ? '' : blockName(block, speech, blockOf);
}

/** How the strip of a block runs; a block that is not known keeps its id. */
export function blockName(
  id: string,
  { language }: Speech = speechIn('en'),
  blockOf: (id: string) => Block | undefined = blockById,
): string {
  const block = blockOf(id);
  return block ? blockTitle(block, language) : id;
}
