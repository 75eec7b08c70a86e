import type { Joint } from '../hand/target-motion.ts';
import type { Drawing, DrawnText } from '../pattern/drawing.ts';
import type { Report, ReportLine, ReportSection, ReportTable } from '../pattern/report.ts';
import type { Case, Made, Motion, Visit } from '../record/case.ts';
import { heldDigits, madeInOrder } from '../record/case-text.ts';
import { chartFrame, chartPart, chartText } from '../record/chart-frame.ts';
import { chartPlot, LANE_HEIGHT } from '../record/chart-plot.ts';
import { courseOf, fullFlexion } from '../record/course/course.ts';
import { courseAdvice } from '../record/course/course-advice.ts';
import { USUAL_GOAL } from '../record/course/course-rules.ts';
import { neutralZero } from '../record/motion-text.ts';
import { otherHandTotal, totalAtVisit, totalPassiveMotion } from '../record/total-active-motion.ts';
import { daysBetween } from '../units/day.ts';
import { plain, rounded } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { PlanSpeech } from '../words/advice/plan/plan-words.ts';
import type { Language } from '../words/language.ts';
import { LETTER_WORDS, type LetterWords } from '../words/letter/letter-words.ts';
import { CHART_WORDS } from '../words/record/chart-words.ts';

/** What was made is listed as far back as this. */
const MOST_MADE = 3;

/**
 * A letter of one page on a case, for a surgeon or the notes: who, one sentence on the course, motion, chart, what was made, goal, advice in
 * plain words, lines to sign. Holds nothing that is not in the case, no clock among it. Fails with `NO_VISITS`.
 * @param chartHeight mm; null for a letter without a chart
 */
export function caseLetter(record: Case, language: Language, chartHeight: number | null): Result<Report> {
  const words = LETTER_WORDS[language];
  const number = (value: number) => decimal(value, language);
  const [first, last] = [record.visits[0], record.visits.at(-1)];
  if (first === undefined || last === undefined) {
    const message = 'the case has no visit yet, so there is nothing to write. Add one with case add.';
    return failure({ code: 'NO_VISITS', where: 'visits', message, kind: 'refused' });
  }
  const { code, side, digit, invented, hand } = record;
  const target = hand?.target ?? null;
  const who = words.who({ side, digit, diagnosis: target?.diagnosis ?? null, weeks: target?.weeks ?? null });
  const sections: ReportSection[] = [
    { heading: '', lines: [line(who), line(words.course(courseFigures(record, first, last, number)))] },
    { heading: words.motion, lines: [line(words.notation)], table: motionTable(record, words, number) },
    ...(chartHeight === null ? [] : [{ heading: '', lines: [], drawing: letterChart(record, language), tallest: chartHeight }]),
    { heading: words.made, lines: madeLines(record, words, number) },
    { heading: words.goalHeading, lines: [line(goalText(record, words))] },
    adviceSection(record, words, language),
    { heading: '', lines: [], toSign: [words.clinician, words.signature, words.date] },
  ];
  return success({
    title: words.title(code),
    head: `${code}   ${words.digit[digit]}, ${words.hand[side]}`,
    under: [`${invented ? `${words.invented} ` : ''}${first === last ? first.date : `${first.date} - ${last.date}`}`],
    sections,
    pageOf: words.page,
  });
}

function line(text: string, mark: string | null = null): ReportLine {
  return { mark, text };
}

function decimal(value: number, language: Language): string {
  const text = plain(value, 1);
  return language === 'en' ? text : text.replace('.', ',');
}

type Say = (value: number) => string;

function courseFigures({ visits }: Case, first: Visit, last: Visit, number: Say) {
  const worn = visits.flatMap(({ noted: { wear } }) => (wear === null ? [] : [wear]));
  return {
    from: first === last ? null : neutralZero(first.goniometry.pip.active, number),
    to: neutralZero(last.goniometry.pip.active, number),
    weeks: rounded(daysBetween(first.date, last.date) / 7, 0),
    hours: worn.length === 0 ? null : rounded(worn.reduce((sum, hours) => sum + hours, 0) / worn.length, 1),
  };
}

const SHOWN: readonly (readonly [Joint, 'active' | 'passive'])[] = [
  ['pip', 'active'],
  ['pip', 'passive'],
  ['mp', 'active'],
  ['mp', 'passive'],
  ['dip', 'active'],
  ['dip', 'passive'],
];

/** First visit, making of the device in use, last visit: what changed under what is worn now stands beside the whole course. */
function motionTable(record: Case, words: LetterWords, number: Say): ReportTable {
  const course = courseOf(record, USUAL_GOAL);
  const picked = [...new Set([0, course?.device.start ?? 0, record.visits.length - 1])].toSorted((a, b) => a - b);
  const shown = picked.flatMap((k) => record.visits[k] ?? []);
  const other = otherHandTotal(record);
  const motion = (given: Motion | undefined) => {
    if (given === undefined) return '';
    const { extensionDeficit, flexion } = given;
    const said =
      extensionDeficit < 0
        ? words.beyond(number(-extensionDeficit), number(flexion))
        : words.lacks(number(extensionDeficit), number(flexion));
    return `${neutralZero(given, number)}  (${said})`;
  };
  const total = (visit: Visit) => {
    const found = totalAtVisit(visit, other);
    if (found === null) return '';
    const [percent, reference] = [number(found.percent), number(found.reference)];
    return `${number(found.degrees)}, ${found.comparedWith === 'otherHand' ? words.ofOther(percent, reference) : words.ofNormal(percent, reference)}`;
  };
  const optional = (value: number | null) => (value === null ? '' : number(value));
  const rows: readonly (readonly [string, (visit: Visit) => string])[] = [
    ...SHOWN.map(([joint, kind]) => [words.jointMotion[joint][kind], ({ goniometry }: Visit) => motion(goniometry[joint][kind])] as const),
    [words.tam, total],
    [words.tpm, (visit) => optional(totalPassiveMotion(visit))],
    [words.pain, ({ noted }) => optional(noted.pain)],
    [words.wear, ({ noted }) => optional(noted.wear)],
  ];
  return {
    columns: [{ heading: words.visit, align: 'left' }, ...shown.map(({ date }) => ({ heading: date, align: 'left' as const }))],
    rows: rows
      .map(([heading, cell]) => ({ cells: [heading, ...shown.map(cell)], remarks: [] }))
      .filter(({ cells }) => cells.slice(1).some((cell) => cell !== '')),
  };
}

function madeLines({ visits }: Case, words: LetterWords, number: Say): readonly ReportLine[] {
  const all = madeInOrder(visits);
  if (all.length === 0) return [line(words.nothingMade)];
  const listed = all.slice(-MOST_MADE);
  const before = all.length - listed.length;
  return [
    ...(before === 0 ? [] : [line(words.earlier(before))]),
    ...listed.map(({ letter, visit, made }) => line(`${visits[visit]?.date}   ${madeSaid(made, words, number)}`, letter)),
  ];
}

function madeSaid(made: Made, words: LetterWords, number: Say): string {
  if (made.kind === 'plate') return words.plate(number(made.mpAngle));
  return words.strip({ ...heldDigits(made), differential: made.differential });
}

function goalText(record: Case, words: LetterWords): string {
  const course = courseOf(record, USUAL_GOAL);
  const otherHand =
    record.visits.some(({ otherHand: other }) => other.pip !== undefined) || record.hand?.target?.otherHandPip !== undefined;
  return words.goal({
    degrees: course?.goal ?? USUAL_GOAL,
    own: course?.goalIsOwn ?? false,
    flexionFull: fullFlexion(record),
    other: otherHand,
  });
}

function adviceSection(record: Case, words: LetterWords, language: Language): ReportSection {
  // A block has no name outside the program: it goes by which fingers are held where.
  // Within a sentence; a German noun keeps its capital.
  const within = (text: string) => (language === 'de' ? text : text.charAt(0).toLowerCase() + text.slice(1));
  const speech: PlanSpeech = {
    blockName: (block) => within(words.strip({ ...heldDigits({ block }), differential: null }).replace(/\.$/, '')),
  };
  const { steps } = courseAdvice(record, language, speech);
  return {
    heading: words.advice,
    lines: [
      ...steps.map(({ title, when, message }, k) =>
        line(`${title}${when === null ? '' : `, ${when}`}: ${message}`, k === 0 ? null : '\u2022'),
      ),
      line(words.evidence),
    ],
  };
}

/** Most visits in the chart of a letter: more make its letters too small. */
const MOST_VISITS = 8;
const TITLE = 3.2;
const DATES = 2.5;

/** PIP motion at the last visits without table and notes, which a letter has beside it: plot, days, a line of title. mm */
export function letterChart(record: Case, language: Language): Drawing {
  const { subtitle, plot } = CHART_WORDS[language].chart;
  const last = record.visits.length - 1;
  const part = chartPart(record, { first: Math.max(0, last - MOST_VISITS + 1), last });
  const frame = chartFrame(record, part.visits.length);
  const top = frame.height + LANE_HEIGHT + 3;
  const days = part.visits.map(
    ({ date }, k): DrawnText => chartText('day', date, { x: frame.x(k), y: -5 }, { height: DATES, align: 'center', tone: 'grey' }),
  );
  const title = chartText('title', subtitle, { x: 0, y: top + 2 }, { height: TITLE, strong: true });
  return {
    title: subtitle,
    description: subtitle,
    items: [title, ...chartPlot(part, frame, plot), ...days],
    extents: { minX: frame.left, minY: -8, maxX: frame.right, maxY: top + 2 + TITLE * 1.5 },
  };
}
