import type { RecordFigures } from '../words/record/record-figures.ts';
import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';

/** "closed on 2026-05-04: the goal was reached". */
export function closedText(closed: RecordFigures['closed'], words: RecordWords = RECORD_WORDS.en): string {
  return words.closed(closed);
}
