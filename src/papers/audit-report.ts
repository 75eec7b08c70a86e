import type { Report, ReportLine } from '../pattern/report.ts';
import { type Audit, GAIN } from '../record/audit.ts';
import { BELIEVED_CHANGE_SOURCE } from '../record/case.ts';
import { CLOSE_REASONS } from '../record/case-schema.ts';
import { plain } from '../units/number.ts';
import type { Language } from '../words/language.ts';
import { RECORD_WORDS } from '../words/record/record-words.ts';
import { withDecimalSign } from '../words/speech.ts';

/** An audit in sentences: how many gained, in how many weeks, why the cases were closed, and what the figures are. */
export function auditLines(audit: Audit, language: Language = 'en'): readonly string[] {
  const { cases, gained, medianWeeks, reasons, open, tooFewVisits, invented } = audit;
  const { audit: w, closedFor } = RECORD_WORDS[language];
  return [
    ...(invented ? [w.invented] : []),
    w.gained(`${gained}`, `${cases.length}`, `${GAIN}`),
    ...(medianWeeks === null ? [] : [w.half(withDecimalSign(plain(medianWeeks, 1), language))]),
    w.because(CLOSE_REASONS.map((reason) => `${closedFor[reason]} ${reasons[reason]}`).join('; ')),
    ...(open > 0 ? [w.open(`${open}`)] : []),
    ...(tooFewVisits > 0 ? [w.tooFew(`${tooFewVisits}`)] : []),
  ];
}

/** What the figures do not say. */
export function auditLimits(language: Language = 'en'): readonly string[] {
  const { audit: w } = RECORD_WORDS[language];
  return [w.counted(`${GAIN}`, BELIEVED_CHANGE_SOURCE), w.alone];
}

/** An audit to be printed; case codes alone. */
export function auditReport(audit: Audit, language: Language = 'en'): Report {
  const { audit: w, closedFor, page } = RECORD_WORDS[language];
  const number = (value: number) => withDecimalSign(plain(value, 1), language);
  const line = (text: string, mark: string | null = null): ReportLine => ({ mark, text });
  return {
    title: w.title,
    head: `${w.head}${audit.invented ? `   ${w.inventedMark}` : ''}`,
    under: [w.under(`${audit.cases.length}`)],
    sections: [
      { heading: '', lines: auditLines(audit, language).map((text) => line(text)) },
      {
        heading: w.cases,
        lines: [],
        table: {
          columns: Object.values(w.column).map((heading, k) => ({ heading, align: k === 0 ? 'left' : 'center' })),
          rows: audit.cases.map(({ code, motion, before, after, gained, weeks, strips, plates, reason }) => ({
            cells: [
              code,
              w.motion[motion],
              number(before),
              number(after),
              gained ? number(before - after) : w.underLimit,
              weeks === null ? '' : number(weeks),
              String(strips),
              String(plates),
              closedFor[reason],
            ],
            remarks: [],
          })),
        },
      },
      { heading: w.limits, lines: auditLimits(language).map((text) => line(text, '\u2022')) },
    ],
    pageOf: page,
  };
}
