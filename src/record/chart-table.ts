import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { plain } from '../units/number.ts';
import { believedChange } from './believed-change.ts';
import type { Motion, Visit } from './case.ts';
import type { Frame } from './chart-frame.ts';
import type { ChartPart } from './chart-part.ts';
import { chartLine, chartText } from './chart-shapes.ts';
import { extensionText } from './motion-text.ts';

const ROW = 5;
const FIGURES = 2.5;

interface Row {
  readonly heading: string;
  readonly strong: boolean;
  readonly cells: readonly string[];
}

/** The figures under the plot, a column a visit; with the depth in mm that they take below y = 0. */
export function chartTable(part: ChartPart, frame: Frame): { readonly items: readonly (DrawnShape | DrawnText)[]; readonly depth: number } {
  const items: (DrawnShape | DrawnText)[] = [];
  let y = -3;
  for (const row of rows(part)) {
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

function rows({ visits, made }: ChartPart): readonly Row[] {
  const row = (heading: string, cell: (visit: Visit, k: number) => string, strong = false): Row => ({
    heading,
    strong,
    cells: visits.map(cell),
  });
  const years = (visit: Visit, k: number) => (visits[k - 1]?.date.slice(0, 4) === visit.date.slice(0, 4) ? '' : visit.date.slice(0, 4));
  const passive = (shown: (motion: Motion) => string) => (visit: Visit) =>
    visit.goniometry.pip.passive === undefined ? '' : shown(visit.goniometry.pip.passive);
  const all = [
    row('visit', ({ date }) => `${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`, true),
    row('', years),
    row('active flexion', ({ goniometry }) => plain(goniometry.pip.active.flexion, 1), true),
    row('since the visit before', (_, k) => change(visits, k, 'flexion', 1)),
    row('active extension deficit', ({ goniometry }) => extensionText(goniometry.pip.active.extensionDeficit), true),
    row('since the visit before', (_, k) => change(visits, k, 'extensionDeficit', -1)),
    row(
      'passive flexion',
      passive(({ flexion }) => plain(flexion, 1)),
    ),
    row(
      'passive extension deficit',
      passive(({ extensionDeficit }) => extensionText(extensionDeficit)),
    ),
    row('worn, hours a day', ({ noted: { wear } }) => (wear === null ? '' : plain(wear, 1))),
    row('made', (_, k) => made.find((one) => one.visit === k)?.letter ?? ''),
  ];
  return all.filter(({ cells, heading }) => heading === 'made' || cells.some((cell) => cell !== ''));
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "10 gained", "16 lost", or "no change" under what is believed between two readings; `sense` is 1 where more is better. */
function change(visits: readonly Visit[], k: number, key: keyof Motion, sense: 1 | -1): string {
  const [before, after] = [visits[k - 1], visits[k]];
  if (before === undefined || after === undefined) return '';
  const gain = sense * (after.goniometry.pip.active[key] - before.goniometry.pip.active[key]);
  if (Math.abs(gain) < believedChange(before, after)) return 'no change';
  return `${plain(Math.abs(gain), 1)} ${gain > 0 ? 'gained' : 'lost'}`;
}
