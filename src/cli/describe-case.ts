import { DIGIT_FIELDS } from '../hand/fields.ts';
import { JOINT_NAMES, JOINTS } from '../hand/target-motion.ts';
import type { Case, Visit } from '../record/case.ts';
import { closedText, madeInOrder, madeText, notedRows } from '../record/case-text.ts';
import { motionText, neutralZero } from '../record/motion-text.ts';
import {
  ASSH_SCHEME,
  otherHandTotal,
  type TotalActiveMotion,
  totalAtVisit,
  totalNote,
  totalPassiveMotion,
} from '../record/total-active-motion.ts';
import { plain, rounded } from '../units/number.ts';
import { RECORD_WORDS } from '../words/record/record-words.ts';

/** A case as `case show --json` prints it: mm and degrees, a negative extension deficit goes beyond straight. */
export function describeCase(record: Case): object {
  const { code, side, digit, invented, note, hand, visits, closed } = record;
  const other = otherHandTotal(record);
  return {
    code,
    side,
    digit,
    invented,
    note,
    hand: hand?.source ?? null,
    closed,
    amendments: record.file.amendments ?? [],
    visits: visits.map((visit) => ({
      ...visit,
      totalActiveMotion: roundedTotal(totalAtVisit(visit, other)),
      totalPassiveMotion: totalPassiveMotion(visit),
    })),
  };
}

/** Percentages to one decimal: the goniometer gives no more. */
export function roundedTotal(total: TotalActiveMotion | null): TotalActiveMotion | null {
  return total === null ? null : { ...total, percent: rounded(total.percent, 1) };
}

/** The case as a table; with a sparkline of the active PIP range where `terminal`. */
export function caseTable(record: Case, terminal: boolean): string {
  const { code, side, digit, invented, note, visits, closed } = record;
  const lines = [`${code}, ${digit} finger, ${side} hand${invented ? ' (INVENTED: nobody was measured)' : ''}`];
  if (note !== null) lines.push(note);
  if (closed !== null) lines.push(`The case was ${closedText(closed)}.`);
  if (visits.length === 0) return `${[...lines, '', 'No visit yet.'].join('\n')}\n`;
  const rows = tableRows(record).filter(([, ...cells], k) => k <= 1 || cells.some((cell) => cell !== ''));
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0))) ?? [];
  lines.push(
    '',
    ...rows.map((row) =>
      row
        .map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0)))
        .join('  ')
        .trimEnd(),
    ),
  );
  if (terminal)
    lines.push(
      '',
      `PIP active range  ${sparkline(visits.map(pipRange))}  ${visits.map((visit) => plain(pipRange(visit), 1)).join(' ')} degrees`,
    );
  const made = madeInOrder(visits);
  if (made.length > 0)
    lines.push('', 'Made', ...made.map(({ letter, visit, made: one }) => `  ${letter}  ${visits[visit]?.date}  ${madeText(one)}`));
  const comments = visits.filter(({ noted }) => noted.comment !== null);
  if (comments.length > 0) lines.push('', 'Comments', ...comments.map(({ date, noted }) => `  ${date}  ${noted.comment}`));
  const corrections = (record.file.amendments ?? []).map(
    ({ kind, was, on, why }) => `  ${was.date}  ${kind}${on === undefined ? '' : ` on ${on}`}${why === undefined ? '' : `: ${why}`}`,
  );
  if (corrections.length > 0) lines.push('', 'Corrections', ...corrections);
  const total = totalNote(record);
  lines.push(
    '',
    'Motion is extension deficit / flexion, degrees (25/85 lacks 25 and bends to 85); hyper is beyond straight.',
    ...(total === null ? [] : [total]),
  );
  return `${lines.join('\n')}\n`;
}

function pipRange({ goniometry: { pip } }: Visit): number {
  return pip.active.flexion - pip.active.extensionDeficit;
}

function tableRows(record: Case): readonly (readonly string[])[] {
  const { visits } = record;
  const row = (heading: string, cell: (visit: Visit, k: number) => string) => [heading, ...visits.map(cell)];
  const other = otherHandTotal(record);
  const made = madeInOrder(visits);
  const girths = (['circumference', 'pipCircumference'] as const).map((field) =>
    row(`${DIGIT_FIELDS[field].label}, mm`, ({ measures }) => number(measures.digits[record.digit]?.[field])),
  );
  const joints = JOINTS.flatMap((joint) =>
    (['active', 'passive'] as const).map((kind) =>
      row(`${JOINT_NAMES[joint]} ${kind}`, ({ goniometry }) => motionText(goniometry[joint][kind])),
    ),
  );
  const neutral = (['active', 'passive'] as const).map((kind) =>
    row(`PIP ${kind}, extension-0-flexion`, ({ goniometry: { pip } }) => (pip[kind] ? neutralZero(pip[kind]) : '')),
  );
  return [
    row('visit', (_, k) => `${k + 1}`),
    row('', ({ date }) => date),
    ...joints,
    ...neutral,
    ...JOINTS.map((joint) => row(`other hand ${JOINT_NAMES[joint]}`, ({ otherHand }) => motionText(otherHand[joint]))),
    row('TAM', (visit) => number(totalAtVisit(visit, other)?.degrees)),
    row(other === null ? 'TAM, % of normal' : 'TAM, % of other hand', (visit) => number(totalAtVisit(visit, other)?.percent)),
    row('TPM', (visit) => number(totalPassiveMotion(visit) ?? undefined)),
    row(`grade (${ASSH_SCHEME.name})`, (visit) => totalAtVisit(visit, other)?.grade ?? ''),
    ...girths,
    ...notedRows(RECORD_WORDS.en).map(({ heading, value }) => row(heading, ({ noted }) => value(noted))),
    row('made', (_, k) => made.find(({ visit }) => visit === k)?.letter ?? ''),
  ];
}

function number(value: number | undefined): string {
  return value === undefined ? '' : plain(value, 1);
}

const BLOCKS = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;

/** Full scale of the sparkline, degrees: a healthy PIP joint (normal flexion of the worked cases of total active motion). */
const FULL = 110;

/** One block a value, on a fixed scale from 0 to `full`, so that a change within the measuring error stays a small one. */
function sparkline(values: readonly number[], full: number = FULL): string {
  return values
    .map((value) => BLOCKS[Math.max(0, Math.min(BLOCKS.length - 1, Math.floor((value / full) * BLOCKS.length)))] ?? BLOCKS[0])
    .join('');
}
