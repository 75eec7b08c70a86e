import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';
import type { Case } from './case.ts';
import { otherHandTotal, totalAtVisit, totalPassiveMotion } from './total-active-motion.ts';

/** What TAM and TPM are, what TAM is compared with, and the scheme of its grades with its source; null where no visit has a total. */
export function totalNote(record: Pick<Case, 'visits'>, words: RecordWords = RECORD_WORDS.en): string | null {
  const other = otherHandTotal(record);
  const against = record.visits.map((visit) => totalAtVisit(visit, other)).find((total) => total !== null);
  if (against === undefined) return record.visits.some((visit) => totalPassiveMotion(visit) !== null) ? words.aboutTpm : null;
  return `${words.aboutTam({ reference: against.reference, otherHand: against.comparedWith === 'otherHand' })} ${words.aboutTpm}`;
}
