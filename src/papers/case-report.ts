import type { Joint } from '../hand/target-motion.ts';
import type { Report, ReportLine, ReportSection, ReportTable } from '../pattern/report.ts';
import type { Case, Motion, Visit } from '../record/case.ts';
import { caseChart } from '../record/case-chart.ts';
import { closedText, madeInOrder, madeOnPaper, notedRows, optionsText } from '../record/case-text.ts';
import { chartParts } from '../record/chart-frame.ts';
import { courseAdvice } from '../record/course/course-advice.ts';
import { motionText, neutralZero } from '../record/motion-text.ts';
import { otherHandTotal, totalAtVisit, totalNote, totalPassiveMotion } from '../record/total-active-motion.ts';
import { failure, type Result, success } from '../units/result.ts';
import { cautionWords } from '../words/cautions.ts';
import { capital } from '../words/hand-words.ts';
import type { Language } from '../words/language.ts';
import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';
import { blockOnPaper } from './block-on-paper.ts';

/**
 * A case to be printed, in a language: chart, visits, what was made, what next, total active motion where it was measured, cautions. Holds
 * nothing that is not in the case, no clock among it. Fails with `NO_VISITS`.
 */
export function caseReport(record: Case, language: Language = 'en'): Result<Report> {
  const words = RECORD_WORDS[language];
  const charts = chartSections(record, language);
  if (!charts.ok) return charts;
  const { code, invented, visits, note, closed } = record;
  const span = words.span({ visits: visits.length, first: visits[0]?.date ?? '', last: visits.at(-1)?.date ?? '' });
  const caution = cautionWords(language);
  return success({
    title: words.title(code),
    head: `${code}   ${words.who(record).toUpperCase()}${invented ? `   ${words.invented.split(':')[0]}` : ''}`,
    under: [`${invented ? `${words.invented}. ` : ''}${span}. ${words.scale}`],
    sections: [
      ...(note === null ? [] : [{ heading: words.heading.note, lines: [line(note)] }]),
      ...(closed === null ? [] : [{ heading: words.heading.closed, lines: [line(words.caseWas(closedText(closed, words)))] }]),
      ...charts.value,
      visitSection(record, words),
      madeSection(record, words, language),
      nextSection(record, language),
      ...totalSection(record, words),
      {
        heading: words.heading.cautions,
        lines: [caution.skin, caution.contraindications, caution.evidence, caution.licensed].map((text) => line(text, '\u2022')),
      },
    ],
    pageOf: words.page,
  });
}

function line(text: string, mark: string | null = null): ReportLine {
  return { mark, text };
}

function chartSections(record: Case, language: Language): Result<readonly ReportSection[]> {
  const sections: ReportSection[] = [];
  const parts = chartParts(record.visits.length);
  for (const part of parts) {
    const drawing = caseChart(record, part, language);
    if (!drawing.ok) return failure(...drawing.problems);
    sections.push({ heading: '', drawing: drawing.value, lines: [] });
  }
  return success(sections);
}

/** In the order of reading: the treated joint first. */
const SHOWN_JOINTS: readonly Joint[] = ['pip', 'mp', 'dip'];

function visitSection(record: Case, words: RecordWords): ReportSection {
  const { visits, digit } = record;
  const made = madeInOrder(visits);
  const noted = notedRows(words);
  const columns: readonly (readonly [heading: string, cell: (visit: Visit, k: number) => string])[] = [
    ...SHOWN_JOINTS.flatMap((joint) =>
      (['active', 'passive'] as const).map(
        (kind) => [words.joint[joint][kind], ({ goniometry }: Visit) => bothWays(goniometry[joint][kind], words)] as const,
      ),
    ),
    ...noted.filter(({ key }) => COLUMNS.has(key)).map(({ heading, value }) => [heading, ({ noted: one }: Visit) => value(one)] as const),
    [words.made, (_, k) => made.find(({ visit }) => visit === k)?.letter ?? ''],
  ];
  const used = columns.filter(([, cell]) => visits.some((visit, k) => cell(visit, k) !== ''));
  const girths = ({ measures }: Visit) =>
    (['circumference', 'pipCircumference'] as const).flatMap((field) => {
      const value = measures.digits[digit]?.[field];
      return value === undefined ? [] : [`${words.girth[field]} ${words.number(value)} mm`];
    });
  const besides = ({ noted: one }: Visit) =>
    noted.flatMap(({ key, heading, value }) => {
      const said = COLUMNS.has(key) ? '' : value(one);
      return said === '' ? [] : [`${heading}: ${said}`];
    });
  const table: ReportTable = {
    columns: [{ heading: words.visit, align: 'left' }, ...used.map(([heading]) => ({ heading, align: 'center' as const }))],
    rows: visits.map((visit, k) => ({
      cells: [visit.date, ...used.map(([, cell]) => cell(visit, k))],
      remarks: [[...sentence(girths(visit), ', '), ...sentence(besides(visit), '; '), visit.noted.comment ?? ''].join(' ').trim()].filter(
        (said) => said !== '',
      ),
    })),
  };
  return { heading: words.heading.visits, table, lines: [line(words.reading), ...amended(record, words)] };
}

/** What has a column of its own; the rest is said under the visit. */
const COLUMNS: ReadonlySet<string> = new Set(['wear', 'fits', 'redirects']);

/** "25/85 0-25-85"; empty where it was not measured. */
function bothWays(motion: Motion | undefined, words: RecordWords): string {
  return motion === undefined ? '' : `${motionText(motion, words)} ${neutralZero(motion, words.number)}`;
}

function sentence(parts: readonly string[], between: string): readonly string[] {
  return parts.length === 0 ? [] : [`${capital(parts.join(between))}.`];
}

function amended({ file }: Case, words: RecordWords): readonly ReportLine[] {
  return (file.amendments ?? []).map(({ kind, was, on, why }) =>
    line(words.amended({ kind, was: was.date, on, why: why?.replace(/[.\s]+$/, '') })),
  );
}

function madeSection({ visits, file }: Case, words: RecordWords, language: Language): ReportSection {
  const all = madeInOrder(visits);
  if (all.length === 0) return { heading: words.heading.made, lines: [line(words.nothingMade)] };
  return {
    heading: words.heading.made,
    lines: all.map(({ letter, visit, made }) => {
      const given = file.visits[visit]?.made;
      const parts = [
        `${visits[visit]?.date}   ${capital(madeOnPaper(made, words))}.`,
        ...(given === undefined ? [] : [optionsText(given, language)]),
        ...(made.flatLength === null ? [words.lengthNotNoted] : []),
      ];
      return line(parts.join(' '), letter);
    }),
  };
}

function nextSection(record: Case, language: Language): ReportSection {
  const words = RECORD_WORDS[language];
  const { steps, reminders, starting } = courseAdvice(record, language, { blockName: blockOnPaper(words) });
  return {
    heading: words.heading.next(record.visits.at(-1)?.date ?? ''),
    lines: [
      ...steps.flatMap(({ title, when, message, sourceText }) => [
        line(`${title.toUpperCase()}${when === null ? '' : `, ${when.toUpperCase()}`}: ${message}`),
        line(words.source(sourceText), '\u2022'),
      ]),
      ...reminders.map((reminder) => line(reminder, '!')),
      line(starting),
    ],
  };
}

function totalSection(record: Case, words: RecordWords): readonly ReportSection[] {
  const note = totalNote(record, words);
  if (note === null) return [];
  const other = otherHandTotal(record);
  const rows = record.visits.flatMap((visit) => {
    const total = totalAtVisit(visit, other);
    const passive = totalPassiveMotion(visit);
    if (total === null && passive === null) return [];
    const active =
      total === null ? ['', '', ''] : [words.number(total.degrees), `${words.number(total.percent)} %`, words.grades[total.grade]];
    return [{ cells: [visit.date, ...active, passive === null ? '' : words.number(passive)], remarks: [] }];
  });
  const headings = [words.tam, other === null ? words.ofNormal : words.ofOther, words.grade, words.tpm];
  // A column that nobody filled is left out.
  const used = headings.map((_, k) => k + 1).filter((k) => rows.some(({ cells }) => cells[k] !== ''));
  const columns = [
    { heading: words.visit, align: 'left' as const },
    ...used.map((k) => ({ heading: headings[k - 1] ?? '', align: 'center' as const })),
  ];
  const filled = rows.map(({ cells, remarks }) => ({ cells: [0, ...used].map((k) => cells[k] ?? ''), remarks }));
  return [{ heading: words.heading.totals, table: { columns, rows: filled }, lines: [line(note)] }];
}
