import { heldDigits } from '../record/case-text.ts';
import type { PlanSpeech } from '../words/advice/plan/plan-words.ts';
import type { ChartWords } from '../words/record/chart-words.ts';

/** A block has no name outside the program: on paper and page it goes by which fingers are held where. */
export function blockOnPaper(words: Pick<ChartWords, 'runs'>): PlanSpeech['blockName'] {
  return (block) => words.runs(heldDigits({ block }));
}
