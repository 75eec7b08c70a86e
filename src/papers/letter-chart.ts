import type { Drawing, DrawnText } from '../pattern/drawing.ts';
import type { Case } from '../record/case.ts';
import { chartFrame, chartPart, chartText } from '../record/chart-frame.ts';
import { chartPlot, LANE_HEIGHT } from '../record/chart-plot.ts';
import type { Language } from '../words/language.ts';
import { CHART_WORDS } from '../words/record/chart-words.ts';

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
