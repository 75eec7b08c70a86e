import { heldDigits } from '../record/made-text.ts';
import type { PlanSpeech } from '../words/advice/plan/plan-words.ts';
import type { RecordWords } from '../words/record/record-words.ts';

/** A block has no name outside the program: on paper it goes by which fingers are held where. */
export function blockOnPaper(words: RecordWords): PlanSpeech['blockName'] {
  return (block) => words.runs(heldDigits({ block }));
}
