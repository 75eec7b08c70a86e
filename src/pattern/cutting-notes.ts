import { plain } from '../units/number.ts';
import type { Pattern } from './pattern.ts';

/** The kerf in one sentence; `inspect` reads the number back from it. */
export function kerfNote(kerf: number): string {
  return kerf === 0
    ? 'kerf 0 mm: the outlines are the true edges.'
    : `kerf ${plain(kerf, 3)} mm is already in the outlines (outlines grown, holes shrunk by ${plain(kerf / 2, 4)} mm): switch off the machine's own kerf offset.`;
}

/** What every file says to the people at the machine; the kerf comes first, also when it is 0 (output rule 11). */
export function cuttingNotes(pattern: Pattern): readonly string[] {
  return pattern.cutting ? pattern.cutting.notes : [kerfNote(0)];
}
