import type { CloseReason } from './case-schema.ts';

/** Why cases are closed, in words. */
export const CLOSED_WORDS: Readonly<Record<CloseReason, string>> = {
  goal: 'the goal was reached',
  plateau: 'no more was gained',
  harm: 'it harmed',
  lost: 'the person came no more',
  other: 'another reason',
};

/** "closed on 2026-05-04: the goal was reached". */
export function closedText({
  date,
  reason,
  note,
}: {
  readonly date: string;
  readonly reason: CloseReason;
  readonly note?: string | undefined;
}): string {
  return `closed on ${date}: ${CLOSED_WORDS[reason]}${note === undefined ? '' : ` (${note})`}`;
}
