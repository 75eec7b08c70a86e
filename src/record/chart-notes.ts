import { REAL } from '../block/figures.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { wrapText } from '../pattern/text-lines.ts';
import { COURSE_WORDS } from '../words/advice/course/course-words.ts';
import { cautionWords } from '../words/cautions.ts';
import type { Language } from '../words/language.ts';
import { CHART_WORDS, type ChartWords } from '../words/record/chart-words.ts';
import { madeOnPaper } from './case-text.ts';
import { BAND_DASH, type ChartPart, chartBox, chartDot, chartLine, chartText, PASSIVE_DASH, WORDS } from './chart-frame.ts';

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
  language: Language,
): { readonly items: readonly Item[]; readonly bottom: number } {
  const items: Item[] = [];
  const words = CHART_WORDS[language];
  let y = top;
  for (const { letter, date, made } of part.made) {
    y -= LINE;
    items.push(chartText('made-list', letter, { x: left, y }, { tone: 'accent', strong: true }));
    items.push(chartText('made-list', `${date}   ${madeOnPaper(made, words)}`, { x: left + 7, y }));
  }
  y -= LINE * 1.9;
  items.push(...legend(left, y, words.chart.legend));
  y -= LINE * 0.6;
  const band = `${words.chart.band(REAL.same, REAL.mixed)} (${COURSE_WORDS[language].source.measuring}).`;
  const { evidence, licensed } = cautionWords(language);
  for (const text of [band, `${evidence} ${licensed}`]) {
    for (const row of wrapText(text, right - left, SMALL)) {
      y -= SMALL * 1.8;
      items.push(chartText('note', row, { x: left, y }, { height: SMALL, tone: 'grey' }));
    }
  }
  return { items, bottom: y };
}

function legend(left: number, y: number, words: ChartWords['chart']['legend']): readonly Item[] {
  const middle = y + WORDS / 2;
  const across = (x: number) => [
    { x, y: middle },
    { x: x + SAMPLE, y: middle },
  ];
  const samples: readonly (readonly [string, (x: number) => readonly Item[]])[] = [
    [
      words.active,
      (x) => [
        chartBox('key', '', { x: x + 4.3, y: y - 1 }, { x: x + 7.7, y: y + WORDS + 1 }, 'pale', 'fine', 'grey'),
        chartLine('key', '', across(x), 'heavy', 'ink'),
        chartDot('key', '', { x: x + 6, y: middle }, 1.15, 'ink', 'fine', 'ink'),
      ],
    ],
    [
      words.passive,
      (x) => [
        chartLine('key', '', across(x), 'medium', 'grey', PASSIVE_DASH),
        chartDot('key', '', { x: x + 6, y: middle }, 0.92, 'paper', 'medium', 'grey'),
      ],
    ],
    [
      words.inside,
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
      words.made,
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
