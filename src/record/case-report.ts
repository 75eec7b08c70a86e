import { DIGIT_FIELDS } from '../hand/fields.ts';
import { CAUTIONS } from '../pattern/cautions.ts';
import type { Report, ReportLine, ReportSection, ReportTable } from '../pattern/report.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { Case, Visit } from './case.ts';
import { caseChart } from './case-chart.ts';
import { chartParts } from './chart-part.ts';
import { COURSE_RULES } from './course-rules.ts';
import { JOINT_NAMES, type Joint } from './goniometry-fields.ts';
import { blockText, madeInOrder, madeText } from './made-text.ts';
import { motionText } from './motion-text.ts';
import { nextSteps } from './next-step.ts';
import { optionsText } from './options-text.ts';
import { otherHandTotal, totalAtVisit, totalNote } from './total-active-motion.ts';

/**
 * A case to be printed: chart, visits, what was made, what next, total active motion where it was measured, cautions. Holds nothing that
 * is not in the case, no clock among it. Fails with `NO_VISITS`.
 */
export function caseReport(record: Case): Result<Report> {
  const charts = chartSections(record);
  if (!charts.ok) return charts;
  const { code, side, digit, invented, visits, note } = record;
  const [first, last] = [visits[0]?.date ?? '', visits.at(-1)?.date ?? ''];
  const span = visits.length === 1 ? `1 visit, ${first}` : `${visits.length} visits, ${first} to ${last}`;
  return success({
    title: `Case report ${code}`,
    head: `${code}   ${side.toUpperCase()} HAND   ${digit} finger${invented ? '   INVENTED' : ''}`,
    under: [`${invented ? 'INVENTED: nobody was measured. ' : ''}PIP joint, ${span}. Degrees and mm; nothing here is drawn at true size.`],
    sections: [
      ...(note === null ? [] : [{ heading: 'Note', lines: [line(note)] }]),
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
        (kind) => [`${JOINT_NAMES[joint]} ${kind}`, ({ goniometry }: Visit) => motionText(goniometry[joint][kind])] as const,
      ),
    ),
    ['worn, h/day', ({ wearHoursPerDay }) => (wearHoursPerDay === null ? '' : plain(wearHoursPerDay, 1))],
    ['fits', ({ seen }) => yesNo(seen.fits)],
    ['redirects', ({ seen }) => yesNo(seen.redirects)],
    ['marks on skin', ({ seen }) => yesNo(seen.marksOnSkin)],
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
        remarks: [[...(measured.length > 0 ? [`${capital(measured.join(', '))}.`] : []), visit.seen.comment ?? ''].join(' ').trim()].filter(
          (words) => words !== '',
        ),
      };
    }),
  };
  const reading = 'Motion is extension deficit / flexion; hyper is beyond straight. An empty place was not noted.';
  return { heading: 'Visits', table, lines: [line(reading)] };
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
        `Geometry version ${made.geometryVersion}.`,
        ...(made.flatLength === null ? ['Length not noted.'] : []),
      ];
      return line(parts.join(' '), letter);
    }),
  };
}

function nextSection(record: Case): ReportSection {
  const { steps, between } = nextSteps(record);
  const { says, source } = COURSE_RULES.MEASURING_ERROR;
  return {
    heading: between === null ? 'What next' : `What next, from ${between[0]} to ${between[1]}`,
    lines: [
      ...steps.flatMap(({ action, message, rule, ruleSays, source: from }) => [
        line(`${action.toUpperCase()}: ${message}`),
        line(`Rule ${rule}: ${ruleSays} Source: ${from}.`, '\u2022'),
      ]),
      line(`Rule MEASURING_ERROR: ${says} Source: ${source}.`, '\u2022'),
      line('A starting point; the clinician decides.'),
    ],
  };
}

function totalSection(record: Case): readonly ReportSection[] {
  const note = totalNote(record);
  if (note === null) return [];
  const other = otherHandTotal(record);
  const rows = record.visits.flatMap((visit) => {
    const total = totalAtVisit(visit, other);
    return total === null
      ? []
      : [{ cells: [visit.date, plain(total.degrees, 1), `${plain(total.percent, 1)} %`, total.grade], remarks: [] }];
  });
  const headings = ['TAM, degrees', other === null ? 'of normal' : 'of the other hand', 'grade'];
  const columns = [{ heading: 'visit', align: 'left' as const }, ...headings.map((heading) => ({ heading, align: 'center' as const }))];
  return [{ heading: 'Total active motion', table: { columns, rows }, lines: [line(note)] }];
}

function yesNo(value: boolean | null): string {
  return value === null ? '' : value ? 'yes' : 'no';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
