import { REAL } from '../block/figures.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import { CAUTIONS } from '../pattern/cautions.ts';
import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { wrapText } from '../pattern/text-lines.ts';
import { BELIEVED_CHANGE_SOURCE } from './believed-change.ts';
import type { ChartPart } from './chart-part.ts';
import { BAND_DASH, chartBox, chartDot, chartLine, chartText, PASSIVE_DASH, WORDS } from './chart-shapes.ts';
import { madeText } from './made-text.ts';

type Item = DrawnShape | DrawnText;

const LINE = 4.6;
const SMALL = 2.1;
const SAMPLE = 12;
const KEY_GAP = 11;

/** What was made, what the lines mean and how to read the band, from `top` downward; with the y of its lower end. */
export function chartNotes(
  part: ChartPart,
  left: number,
  right: number,
  top: number,
): { readonly items: readonly Item[]; readonly bottom: number } {
  const items: Item[] = [];
  let y = top;
  for (const { letter, date, made } of part.made) {
    y -= LINE;
    items.push(chartText('made-list', letter, { x: left, y }, { tone: 'accent', strong: true }));
    items.push(chartText('made-list', `${date}   ${madeText(made)}`, { x: left + 7, y }));
  }
  y -= LINE * 1.9;
  items.push(...legend(left, y));
  y -= LINE * 0.6;
  const band = `Band: ${REAL.same} degrees (${REAL.mixed} between two raters) above and below each active value, up to the next visit. A value inside it is not read as a change (${BELIEVED_CHANGE_SOURCE}).`;
  for (const text of [band, `${CAUTIONS.evidence} ${CAUTIONS.licensed}`]) {
    for (const words of wrapText(text, right - left, SMALL)) {
      y -= SMALL * 1.8;
      items.push(chartText('note', words, { x: left, y }, { height: SMALL, tone: 'grey' }));
    }
  }
  return { items, bottom: y };
}

function legend(left: number, y: number): readonly Item[] {
  const middle = y + WORDS / 2;
  const across = (x: number) => [
    { x, y: middle },
    { x: x + SAMPLE, y: middle },
  ];
  const samples: readonly (readonly [string, (x: number) => readonly Item[]])[] = [
    [
      'active; bar: its range',
      (x) => [
        chartBox('key', '', { x: x + 4.3, y: y - 1 }, { x: x + 7.7, y: y + WORDS + 1 }, 'pale', 'fine', 'grey'),
        chartLine('key', '', across(x), 'heavy', 'ink'),
        chartDot('key', '', { x: x + 6, y: middle }, 1.15, 'ink', 'fine', 'ink'),
      ],
    ],
    [
      'passive',
      (x) => [
        chartLine('key', '', across(x), 'medium', 'grey', PASSIVE_DASH),
        chartDot('key', '', { x: x + 6, y: middle }, 0.92, 'paper', 'medium', 'grey'),
      ],
    ],
    [
      'inside: not read as a change',
      (x) => [
        chartBox('key', '', { x, y: y - 1 }, { x: x + SAMPLE, y: y + WORDS + 1 }, 'wash'),
        ...[y - 1, y + WORDS + 1].map((at) =>
          chartLine(
            'key',
            '',
            [
              { x, y: at },
              { x: x + SAMPLE, y: at },
            ],
            'fine',
            'grey',
            BAND_DASH,
          ),
        ),
      ],
    ],
    [
      'made, until the next',
      (x) => [
        chartLine('key', '', across(x), 'medium', 'accent'),
        chartDot('key', '', { x: x + 2.6, y: middle }, 2.6, 'paper', 'medium', 'accent'),
      ],
    ],
  ];
  let x = left;
  return samples.flatMap(([text, draw]) => {
    const drawn = [...draw(x), chartText('key-word', text, { x: x + SAMPLE + 2, y })];
    x += SAMPLE + 2 + textWidth(text, WORDS) + KEY_GAP;
    return drawn;
  });
}
