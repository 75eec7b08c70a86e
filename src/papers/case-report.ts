import { DIGIT_FIELDS } from '../hand/fields.ts';
import { CAUTIONS } from '../pattern/cautions.ts';
import type { Report, ReportLine, ReportSection, ReportTable } from '../pattern/report.ts';
import type { Case, Motion, Visit } from '../record/case.ts';
import { caseChart } from '../record/case-chart.ts';
import { chartParts } from '../record/chart-part.ts';
import { closedText } from '../record/closed-text.ts';
import { courseAdvice } from '../record/course/course-advice.ts';
import { JOINT_NAMES, type Joint } from '../record/goniometry-fields.ts';
import { blockText, madeInOrder, madeText } from '../record/made-text.ts';
import { motionText, neutralZero } from '../record/motion-text.ts';
import { NOTED_ROWS } from '../record/noted-text.ts';
import { optionsText } from '../record/options-text.ts';
import { otherHandTotal, totalAtVisit, totalNote, totalPassiveMotion } from '../record/total-active-motion.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';

/**
 * A case to be printed: chart, visits, what was made, what next, total active motion where it was measured, cautions. Holds nothing that
 * is not in the case, no clock among it. Fails with `NO_VISITS`.
 */
export function caseReport(record: Case): Result<Report> {
  const charts = chartSections(record);
  if (!charts.ok) return charts;
  const { code, side, digit, invented, visits, note, closed } = record;
  const [first, last] = [visits[0]?.date ?? '', visits.at(-1)?.date ?? ''];
  const span = visits.length === 1 ? `1 visit, ${first}` : `${visits.length} visits, ${first} to ${last}`;
  return success({
    title: `Case report ${code}`,
    head: `${code}   ${side.toUpperCase()} HAND   ${digit} finger${invented ? '   INVENTED' : ''}`,
    under: [`${invented ? 'INVENTED: nobody was measured. ' : ''}PIP joint, ${span}. Degrees and mm; nothing here is drawn at true size.`],
    sections: [
      ...(note === null ? [] : [{ heading: 'Note', lines: [line(note)] }]),
      ...(closed === null ? [] : [{ heading: 'Closed', lines: [line(`The case was ${closedText(closed)}.`)] }]),
      ...charts.value,
      visitSection(record),
      madeSection(record),
      nextSection(record),
      ...totalSection(record),
      {
        heading: 'Cautions',
        lines: [CAUTIONS.skin, CAUTIONS.contraindications, CAUTIONS.evidence, CAUTIONS.licensed].map((text) => line(text, '\u2022')),
      },
    ],
  });
}

function line(text: string, mark: string | null = null): ReportLine {
  return { mark, text };
}

function chartSections(record: Case): Result<readonly ReportSection[]> {
  const sections: ReportSection[] = [];
  const parts = chartParts(record.visits.length);
  for (const part of parts) {
    const drawing = caseChart(record, part);
    if (!drawing.ok) return failure(...drawing.problems);
    sections.push({ heading: '', drawing: drawing.value, lines: [] });
  }
  return success(sections);
}

/** In the order of reading: the treated joint first. */
const SHOWN_JOINTS: readonly Joint[] = ['pip', 'mp', 'dip'];

function visitSection(record: Case): ReportSection {
  const { visits, digit } = record;
  const made = madeInOrder(visits);
  const columns: readonly (readonly [heading: string, cell: (visit: Visit, k: number) => string])[] = [
    ...SHOWN_JOINTS.flatMap((joint) =>
      (['active', 'passive'] as const).map(
        (kind) => [`${JOINT_NAMES[joint]} ${kind}`, ({ goniometry }: Visit) => bothWays(goniometry[joint][kind])] as const,
      ),
    ),
    ...NOTED_ROWS.filter(([heading]) => COLUMNS.has(heading)).map(
      ([heading, value]) => [heading, ({ noted }: Visit) => value(noted)] as const,
    ),
    ['made', (_, k) => made.find(({ visit }) => visit === k)?.letter ?? ''],
  ];
  const used = columns.filter(([, cell]) => visits.some((visit, k) => cell(visit, k) !== ''));
  const girths = ({ measures }: Visit) =>
    (['circumference', 'pipCircumference'] as const).flatMap((field) => {
      const value = measures.digits[digit]?.[field];
      return value === undefined ? [] : [`${DIGIT_FIELDS[field].label} ${plain(value, 1)} mm`];
    });
  const table: ReportTable = {
    columns: [{ heading: 'visit', align: 'left' }, ...used.map(([heading]) => ({ heading, align: 'center' as const }))],
    rows: visits.map((visit, k) => {
      const measured = girths(visit);
      return {
        cells: [visit.date, ...used.map(([, cell]) => cell(visit, k))],
        remarks: [[...sentence(measured, ', '), ...sentence(notedBesides(visit), '; '), visit.noted.comment ?? ''].join(' ').trim()].filter(
          (words) => words !== '',
        ),
      };
    }),
  };
  const reading =
    'Motion is extension deficit / flexion (25/85 lacks 25 and bends to 85; hyper is beyond straight), and under it extension-0-flexion, the neutral-zero notation. An empty place was not noted.';
  return { heading: 'Visits', table, lines: [line(reading), ...amended(record)] };
}

/** What has a column of its own; the rest is said under the visit. */
const COLUMNS: ReadonlySet<string> = new Set(['worn, h/day', 'fits', 'redirects']);

/** "25/85 0-25-85"; empty where it was not measured. */
function bothWays(motion: Motion | undefined): string {
  return motion === undefined ? '' : `${motionText(motion)} ${neutralZero(motion)}`;
}

function notedBesides({ noted }: Visit): readonly string[] {
  return NOTED_ROWS.flatMap(([heading, value]) => {
    const said = COLUMNS.has(heading) ? '' : value(noted);
    return said === '' ? [] : [`${heading}: ${said}`];
  });
}

function sentence(parts: readonly string[], between: string): readonly string[] {
  return parts.length === 0 ? [] : [`${capital(parts.join(between))}.`];
}

function amended({ file }: Case): readonly ReportLine[] {
  return (file.amendments ?? []).map(({ kind, was, on, why }) =>
    line(
      `The visit of ${was.date} was ${kind}${on === undefined ? '' : ` on ${on}`}${why === undefined ? '' : `: ${why.replace(/[.\s]+$/, '')}`}. The file keeps what stood before.`,
    ),
  );
}

function madeSection({ visits, file }: Case): ReportSection {
  const all = madeInOrder(visits);
  if (all.length === 0) return { heading: 'What was made', lines: [line('Nothing is noted.')] };
  return {
    heading: 'What was made',
    lines: all.map(({ letter, visit, made }) => {
      const given = file.visits[visit]?.made;
      const parts = [
        `${visits[visit]?.date}   ${capital(madeText(made))}.`,
        ...(made.kind === 'strip' ? [`${capital(blockText(made))}.`] : []),
        ...(given === undefined ? [] : [optionsText(given)]),
        ...(made.flatLength === null ? ['Length not noted.'] : []),
      ];
      return line(parts.join(' '), letter);
    }),
  };
}

function nextSection(record: Case): ReportSection {
  const { steps, reminders, starting } = courseAdvice(record, 'en');
  return {
    heading: `What next, after the visit of ${record.visits.at(-1)?.date}`,
    lines: [
      ...steps.flatMap(({ title, when, message, sourceText }) => [
        line(`${title.toUpperCase()}${when === null ? '' : `, ${when.toUpperCase()}`}: ${message}`),
        line(`Source: ${sourceText}.`, '\u2022'),
      ]),
      ...reminders.map((reminder) => line(reminder, '!')),
      line(starting),
    ],
  };
}

function totalSection(record: Case): readonly ReportSection[] {
  const note = totalNote(record);
  if (note === null) return [];
  const other = otherHandTotal(record);
  const rows = record.visits.flatMap((visit) => {
    const total = totalAtVisit(visit, other);
    const passive = totalPassiveMotion(visit);
    if (total === null && passive === null) return [];
    const active = total === null ? ['', '', ''] : [plain(total.degrees, 1), `${plain(total.percent, 1)} %`, total.grade];
    return [{ cells: [visit.date, ...active, passive === null ? '' : plain(passive, 1)], remarks: [] }];
  });
  const headings = ['TAM, degrees', other === null ? 'of normal' : 'of the other hand', 'grade', 'TPM, degrees'];
  // A column that nobody filled is left out.
  const used = headings.map((_, k) => k + 1).filter((k) => rows.some(({ cells }) => cells[k] !== ''));
  const columns = [
    { heading: 'visit', align: 'left' as const },
    ...used.map((k) => ({ heading: headings[k - 1] ?? '', align: 'center' as const })),
  ];
  const filled = rows.map(({ cells, remarks }) => ({ cells: [0, ...used].map((k) => cells[k] ?? ''), remarks }));
  return [{ heading: 'Total motion, active and passive', table: { columns, rows: filled }, lines: [line(note)] }];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
