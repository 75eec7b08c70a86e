import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import type { ChartWords } from '../words/record/chart-words.ts';
import { believedChange, type Motion, type Visit } from './case.ts';
import { type ChartPart, chartLine, chartText, type Frame } from './chart-frame.ts';
import { extensionText } from './motion-text.ts';

const ROW = 5;
const FIGURES = 2.5;

interface Row {
  readonly heading: string;
  readonly strong: boolean;
  readonly cells: readonly string[];
}

/** The figures under the plot, a column a visit; with the depth in mm that they take below y = 0. */
export function chartTable(
  part: ChartPart,
  frame: Frame,
  words: ChartWords,
): { readonly items: readonly (DrawnShape | DrawnText)[]; readonly depth: number } {
  const items: (DrawnShape | DrawnText)[] = [];
  let y = -3;
  for (const row of rows(part, words)) {
    y -= ROW;
    const style = { height: FIGURES, tone: row.strong ? 'ink' : 'grey', strong: row.strong } as const;
    items.push(chartText('row-heading', row.heading, { x: -2.5, y }, { ...style, align: 'right' }));
    for (const [k, cell] of row.cells.entries()) {
      if (cell !== '') items.push(chartText('cell', cell, { x: frame.x(k), y }, { ...style, align: 'center' }));
    }
    const under = y - (ROW - FIGURES) / 2;
    items.push(
      chartLine(
        'row-rule',
        '',
        [
          { x: frame.left + 9, y: under },
          { x: frame.width, y: under },
        ],
        'fine',
        'pale',
      ),
    );
  }
  return { items, depth: -y + ROW };
}

function rows({ visits, made }: ChartPart, words: ChartWords): readonly Row[] {
  const { chart, number } = words;
  const months = chart.months.split(' ');
  const row = (heading: string, cell: (visit: Visit, k: number) => string, strong = false): Row => ({
    heading,
    strong,
    cells: visits.map(cell),
  });
  const years = (visit: Visit, k: number) => (visits[k - 1]?.date.slice(0, 4) === visit.date.slice(0, 4) ? '' : visit.date.slice(0, 4));
  const passive = (shown: (motion: Motion) => string) => (visit: Visit) =>
    visit.goniometry.pip.passive === undefined ? '' : shown(visit.goniometry.pip.passive);
  const all = [
    row(words.visit, ({ date }) => `${Number(date.slice(8))} ${months[Number(date.slice(5, 7)) - 1]}`, true),
    row('', years),
    row(chart.activeFlexion, ({ goniometry }) => number(goniometry.pip.active.flexion), true),
    row(chart.sinceBefore, (_, k) => change(visits, k, 'flexion', 1, chart)),
    row(chart.activeDeficit, ({ goniometry }) => extensionText(goniometry.pip.active.extensionDeficit, words), true),
    row(chart.sinceBefore, (_, k) => change(visits, k, 'extensionDeficit', -1, chart)),
    row(
      chart.passiveFlexion,
      passive(({ flexion }) => number(flexion)),
    ),
    row(
      chart.passiveDeficit,
      passive(({ extensionDeficit }) => extensionText(extensionDeficit, words)),
    ),
    row(chart.worn, ({ noted: { wear } }) => (wear === null ? '' : number(wear))),
    row(words.made, (_, k) => made.find((one) => one.visit === k)?.letter ?? ''),
  ];
  return all.filter(({ cells, heading }) => heading === words.made || cells.some((cell) => cell !== ''));
}

/** "10 gained", "16 lost", or "no change" under what is believed between two readings; `sense` is 1 where more is better. */
function change(visits: readonly Visit[], k: number, key: keyof Motion, sense: 1 | -1, words: ChartWords['chart']): string {
  const [before, after] = [visits[k - 1], visits[k]];
  if (before === undefined || after === undefined) return '';
  const gain = sense * (after.goniometry.pip.active[key] - before.goniometry.pip.active[key]);
  if (Math.abs(gain) < believedChange(before, after)) return words.noChange;
  return gain > 0 ? words.gained(gain) : words.lost(-gain);
}
