import type { Report, ReportLine } from '../pattern/report.ts';
import { type Audit, GAIN } from '../record/audit.ts';
import { BELIEVED_CHANGE_SOURCE } from '../record/believed-change.ts';
import { CLOSE_REASONS } from '../record/case-schema.ts';

import { plain } from '../units/number.ts';
import { RECORD_WORDS } from '../words/record/record-words.ts';

/** An audit in sentences: how many gained, in how many weeks, why the cases were closed, and what the figures are. */
export function auditLines({ cases, gained, medianWeeks, reasons, open, tooFewVisits, invented }: Audit): readonly string[] {
  const count = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`;
  return [
    ...(invented ? ['INVENTED cases are among these: nobody was measured.'] : []),
    `${gained} of ${count(cases.length, 'closed case', 'closed cases')} gained ${GAIN} degrees or more of active PIP motion between the first and the last visit.`,
    ...(medianWeeks === null ? [] : [`Half of them had that gain within ${plain(medianWeeks, 1)} weeks of the first visit.`]),
    `Closed because: ${CLOSE_REASONS.map((reason) => `${RECORD_WORDS.en.closedFor[reason]} ${reasons[reason]}`).join('; ')}.`,
    ...(open > 0 ? [`${count(open, 'open case is', 'open cases are')} not counted.`] : []),
    ...(tooFewVisits > 0
      ? [
          `${count(tooFewVisits, 'closed case', 'closed cases')} with fewer than two visits ${tooFewVisits === 1 ? 'is' : 'are'} not counted.`,
        ]
      : []),
  ];
}

/** What the figures do not say. */
export const AUDIT_LIMITS: readonly string[] = [
  `A gain is counted of the motion that lacked more at the first visit, from ${GAIN} degrees, from 13 where the raters differ (${BELIEVED_CHANGE_SOURCE}).`,
  'Nobody was compared with: stiff fingers also gain by time and exercise alone, so these figures do not say what the orthosis did.',
];

/** An audit to be printed; case codes alone. */
export function auditReport(audit: Audit): Report {
  const line = (text: string, mark: string | null = null): ReportLine => ({ mark, text });
  const columns = ['case', 'motion', 'deficit first', 'deficit last', 'gained', 'weeks to the gain', 'strips', 'plates', 'closed because'];
  return {
    title: 'Audit of closed cases',
    head: `AUDIT OF CLOSED CASES${audit.invented ? '   INVENTED' : ''}`,
    under: [`${audit.cases.length} closed cases. Degrees and weeks.`],
    sections: [
      { heading: '', lines: auditLines(audit).map((text) => line(text)) },
      {
        heading: 'Cases',
        lines: [],
        table: {
          columns: columns.map((heading, k) => ({ heading, align: k === 0 ? 'left' : 'center' })),
          rows: audit.cases.map(({ code, motion, before, after, gained, weeks, strips, plates, reason }) => ({
            cells: [
              code,
              motion,
              plain(before, 1),
              plain(after, 1),
              gained ? plain(before - after, 1) : 'under the limit',
              weeks === null ? '' : plain(weeks, 1),
              String(strips),
              String(plates),
              reason,
            ],
            remarks: [],
          })),
        },
      },
      { heading: 'What the figures say', lines: AUDIT_LIMITS.map((text) => line(text, '\u2022')) },
    ],
  };
}
