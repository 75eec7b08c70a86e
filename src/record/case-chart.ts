import { REAL } from '../block/figures.ts';
import type { Drawing, DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { CHART_WORDS, type ChartWords } from '../words/record/chart-words.ts';
import type { Case, Motion } from './case.ts';
import { madeOnPaper } from './case-text.ts';
import { type ChartPart, chartFrame, chartPart, chartText, MARGIN, type ShownVisits } from './chart-frame.ts';
import { chartNotes } from './chart-notes.ts';
import { chartPlot, LANE_HEIGHT } from './chart-plot.ts';
import { chartTable } from './chart-table.ts';
import { neutralZero } from './motion-text.ts';

const TITLE = 4.4;
const SUBTITLE = 2.8;
const TITLES = 20;

/**
 * PIP motion by visit as a picture: active and passive range, flexion and extension deficit, what was made, and the band inside which no
 * change is read; under it a table of the same figures. mm, lower left corner at (0, 0). Fails with `NO_VISITS`. Visits stand at equal
 * distances, whatever the days between them.
 * @param shown which visits; all of them where it is not given
 * @param language of what is read; roles and the titles of shapes stay English
 */
export function caseChart(
  record: Case,
  shown: ShownVisits = { first: 0, last: record.visits.length - 1 },
  language: Language = 'en',
): Result<Drawing> {
  const words = CHART_WORDS[language];
  if (record.visits.length === 0) {
    return failure({
      code: 'NO_VISITS',
      where: 'visits',
      message: 'the case has no visit yet, so there is nothing to draw. Add one with case add.',
      kind: 'refused',
    });
  }
  const part = chartPart(record, shown);
  const frame = chartFrame(record, part.visits.length);
  const [left, right] = [frame.left + MARGIN, frame.right - MARGIN];
  const table = chartTable(part, frame, words);
  const notes = chartNotes(part, left, right, -table.depth, language);
  const top = frame.height + LANE_HEIGHT + TITLES + MARGIN;
  const bottom = notes.bottom - MARGIN;
  const items = [
    ...headings(record, whichVisits(record, shown, words), words, left, right, top - MARGIN),
    ...chartPlot(part, frame, words.chart.plot),
    ...table.items,
    ...notes.items,
  ];
  return success({
    title: `${record.code}: ${words.chart.title(record)}${whichVisits(record, shown, words)}`,
    description: description(part, words),
    items: items.map((item) => moved(item, -frame.left, -bottom)),
    extents: { minX: 0, minY: 0, maxX: frame.right - frame.left, maxY: top - bottom },
  });
}

/** ", visits 1 to 8 of 24" for a picture of a part of the case, else nothing. */
function whichVisits({ visits }: Case, { first, last }: ShownVisits, words: ChartWords): string {
  return first === 0 && last === visits.length - 1 ? '' : words.chart.shown({ first: first + 1, last: last + 1, of: visits.length });
}

function headings(record: Case, which: string, words: ChartWords, left: number, right: number, top: number): readonly DrawnText[] {
  const { code, invented } = record;
  const texts = [
    chartText('title', words.chart.title(record), { x: left, y: top - TITLE }, { height: TITLE, strong: true }),
    chartText('subtitle', `${words.chart.subtitle}${which}`, { x: left, y: top - TITLE - 6 }, { height: SUBTITLE, tone: 'grey' }),
    chartText('code', code, { x: right, y: top - TITLE }, { height: TITLE, align: 'right', strong: true }),
  ];
  if (invented)
    texts.push(chartText('invented', words.invented, { x: right, y: top - TITLE - 6 }, { height: SUBTITLE, align: 'right', strong: true }));
  return texts;
}

function description({ visits, made: all }: ChartPart, words: ChartWords): string {
  const { plot, subtitle, band } = words.chart;
  const zero = (motion: Motion) => neutralZero(motion, words.number);
  const motion = visits.map(({ date, goniometry: { pip } }) => {
    const passive = pip.passive ? `, ${plot.passive} ${zero(pip.passive)}` : '';
    return `${date}: ${plot.active} ${zero(pip.active)}${passive}`;
  });
  const made = all.map(({ letter, date, made: one }) => `${letter}, ${date}: ${madeOnPaper(one, words)}`);
  return [
    `${subtitle}.`,
    `${motion.join('; ')}.`,
    ...(made.length > 0 ? [`${made.join('; ')}.`] : []),
    `${band(REAL.same, REAL.mixed)}.`,
  ].join(' ');
}

function moved<T extends DrawnShape | DrawnText>(item: T, dx: number, dy: number): T {
  if (item.kind === 'text') return { ...item, at: { x: item.at.x + dx, y: item.at.y + dy } };
  return {
    ...item,
    paths: item.paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy })) })),
    circles: item.circles.map(({ center, radius }) => ({ center: { x: center.x + dx, y: center.y + dy }, radius })),
  };
}
