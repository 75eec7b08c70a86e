import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { plain } from '../units/number.ts';
import type { Translations } from '../words/language.ts';
import type { englishChart } from '../words/record/chart-english.ts';
import { believedChange, type Motion, type Visit } from './case.ts';
import {
  BAND_DASH,
  type ChartPart,
  chartBox,
  chartDot,
  chartLine,
  chartText,
  type Frame,
  PASSIVE_DASH,
  SCALE_STEP,
  WORDS,
} from './chart-frame.ts';

type Item = DrawnShape | DrawnText;

const BAR = 3.4;
const DOT = 1.15;
const TICK = 1.6;
/** How far the last visit's band reaches, in pitches: as far as to where the next visit would be judged, but short of the line ends. */
const LAST_BAND = 0.45;
const LANE = 7;
const LETTER_RADIUS = 2.6;
/** Least distance between the words at the line ends, mm. */
const WORD_PITCH = 4.2;

/** Height above the plot that the lane of what was made takes, mm. */
export const LANE_HEIGHT = LANE + LETTER_RADIUS;

const KEYS = ['flexion', 'extensionDeficit'] as const;
/** The words of a plot. */
export type PlotWords = Translations<typeof englishChart.chart.plot>;

/** Roles and titles in the file stay English. */
const KEY_WORDS: PlotWords['end']['active'] = {
  flexion: 'flexion',
  extensionDeficit: 'extension deficit',
  hyperextension: 'hyperextension',
};

/** Everything inside the axes and the words at the ends of the lines. */
export function chartPlot({ visits, made }: ChartPart, frame: Frame, words: PlotWords): readonly Item[] {
  return [
    ...bands(visits, frame),
    ...scale(frame, words),
    ...madeLane(made, frame),
    ...bars(visits, frame),
    ...lines(visits, frame),
    ...lineEnds(visits, frame, words),
  ];
}

/**
 * About each active value, as far as to the next visit: a value inside it is not read as a change. Its half-width is the least change that
 * is believed between the two visits, the same as in the rules of `case next`.
 */
function bands(visits: readonly Visit[], frame: Frame): readonly Item[] {
  return KEYS.flatMap((key) =>
    visits.flatMap((visit, k): Item[] => {
      const value = visit.goniometry.pip.active[key];
      const [from, to] = [frame.x(k), k + 1 < visits.length ? frame.x(k + 1) : frame.x(k) + LAST_BAND * frame.pitch];
      const within = believedChange(visit, visits[k + 1]);
      const [low, high] = [frame.y(value - within), frame.y(value + within)];
      const title = `less than ${within} degrees from ${KEY_WORDS[key]} ${plain(value)} of ${visit.date}: not read as a change`;
      const edge = (y: number) =>
        chartLine(
          'error-band-edge',
          '',
          [
            { x: from, y },
            { x: to, y },
          ],
          'fine',
          'grey',
          BAND_DASH,
        );
      return [chartBox('error-band', title, { x: from, y: low }, { x: to, y: high }, 'wash'), edge(low), edge(high)];
    }),
  );
}

function scale(frame: Frame, { straight: straightWord, beyond }: PlotWords): readonly Item[] {
  const steps = Array.from({ length: (frame.high - frame.low) / SCALE_STEP + 1 }, (_, k) => frame.low + k * SCALE_STEP);
  const across = (degrees: number) => [
    { x: 0, y: frame.y(degrees) },
    { x: frame.width, y: frame.y(degrees) },
  ];
  return steps.flatMap((degrees): Item[] => {
    const straight = degrees === 0;
    const rule = chartLine(
      straight ? 'straight' : 'scale',
      straight ? 'straight' : '',
      across(degrees),
      straight ? 'medium' : 'fine',
      straight ? 'grey' : 'pale',
    );
    if (degrees % (2 * SCALE_STEP) !== 0) return [rule];
    const name = straight ? `${straightWord}  0` : degrees < 0 ? `${beyond} ${plain(-degrees)}` : plain(degrees);
    return [rule, chartText('scale-number', name, { x: -2.5, y: frame.y(degrees) - WORDS / 2 }, { align: 'right', tone: 'grey' })];
  });
}

/** Above the plot: what was made at which visit, by letter, and the line of the time until the next one was made. */
function madeLane(all: ChartPart['made'], frame: Frame): readonly Item[] {
  const y = frame.height + LANE;
  return all.flatMap(({ letter, visit, made, date }, k): readonly Item[] => {
    const next = all[k + 1];
    const end = next === undefined ? frame.width : frame.x(next.visit ?? 0) - LETTER_RADIUS - 1;
    const title = `${letter}: ${made.kind} made on ${date}`;
    if (visit === null) return wornOn(letter, title, end, y);
    const x = frame.x(visit);
    return [
      chartLine(
        'made-drop',
        '',
        [
          { x, y: y - LETTER_RADIUS },
          { x, y: 0 },
        ],
        'fine',
        'accent',
        [3, 1, 0.6, 1],
      ),
      chartLine(
        'made-until',
        '',
        [
          { x: x + LETTER_RADIUS, y },
          { x: Math.max(x + LETTER_RADIUS, end), y },
        ],
        'medium',
        'accent',
      ),
      chartDot('made', title, { x, y }, LETTER_RADIUS, 'paper', 'medium', 'accent'),
      chartText('made-letter', letter, { x, y: y - WORDS / 2 }, { align: 'center', tone: 'accent', strong: true }),
    ];
  });
}

/** What was made before the first visit shown and is still worn: its line from the edge, without the circle that marks the making. */
function wornOn(letter: string, title: string, end: number, y: number): readonly Item[] {
  const across = [
    { x: 0, y },
    { x: end, y },
  ];
  return [
    chartLine('made-until', title, across, 'medium', 'accent'),
    chartText('made-letter', letter, { x: 0.5, y: y + 1 }, { tone: 'accent', strong: true }),
  ];
}

/** Active range as a bar, passive range as a broken line with ends. */
function bars(visits: readonly Visit[], frame: Frame): readonly Item[] {
  return visits.flatMap((visit, k): Item[] => {
    const { active, passive } = visit.goniometry.pip;
    const x = frame.x(k);
    const range = ({ extensionDeficit, flexion }: Motion) => `${plain(extensionDeficit)} to ${plain(flexion)} degrees on ${visit.date}`;
    const bar = chartBox(
      'active-range',
      `active range ${range(active)}`,
      { x: x - BAR / 2, y: frame.y(active.extensionDeficit) },
      { x: x + BAR / 2, y: frame.y(active.flexion) },
      'pale',
      'fine',
      'grey',
    );
    if (!passive) return [bar];
    const [low, high] = [frame.y(passive.extensionDeficit), frame.y(passive.flexion)];
    const end = (y: number) =>
      chartLine(
        'passive-end',
        '',
        [
          { x: x - TICK, y },
          { x: x + TICK, y },
        ],
        'medium',
        'grey',
      );
    const whole = [
      { x, y: low },
      { x, y: high },
    ];
    // The bar lies on the broken line, which shows only where passive motion goes further.
    return [chartLine('passive-range', `passive range ${range(passive)}`, whole, 'medium', 'grey', PASSIVE_DASH), end(low), end(high), bar];
  });
}

function lines(visits: readonly Visit[], frame: Frame): readonly Item[] {
  return KEYS.flatMap((key): Item[] => {
    const active = visits.map((visit, k) => ({ x: frame.x(k), y: frame.y(visit.goniometry.pip.active[key]) }));
    const passive = visits.flatMap((visit, k) =>
      visit.goniometry.pip.passive ? [{ x: frame.x(k), y: frame.y(visit.goniometry.pip.passive[key]) }] : [],
    );
    const name = KEY_WORDS[key];
    return [
      ...(passive.length > 1 ? [chartLine(`passive-${name}`, `passive ${name}`, passive, 'medium', 'grey', PASSIVE_DASH)] : []),
      ...passive.map((at) => chartDot('passive-value', '', at, DOT * 0.8, 'paper', 'medium', 'grey')),
      ...(active.length > 1 ? [chartLine(`active-${name}`, `active ${name}`, active, 'heavy', 'ink')] : []),
      ...active.map((at) => chartDot('active-value', '', at, DOT, 'ink', 'fine', 'ink')),
    ];
  });
}

/** The words at the right ends, moved apart where they would touch. */
function lineEnds(visits: readonly Visit[], frame: Frame, words: PlotWords): readonly Item[] {
  const last = visits.length - 1;
  const pip = visits[last]?.goniometry.pip;
  if (pip === undefined) return [];
  const ends = (['passive', 'active'] as const).flatMap((kind) => {
    const motion = pip[kind];
    return motion === undefined ? [] : KEYS.map((key) => ({ kind, key, value: motion[key], y: frame.y(motion[key]) }));
  });
  const placed = spread(ends.toSorted((a, b) => a.y - b.y || a.kind.localeCompare(b.kind, 'en')));
  const from = frame.x(last) + LAST_BAND * frame.pitch;
  return placed.flatMap(({ kind, key, value, y, word }): Item[] => {
    const start = frame.width + 5;
    const lead = [
      { x: from, y },
      { x: frame.width + 1, y },
      { x: start - 1, y: word },
    ];
    return [
      chartLine('lead', '', lead, 'fine', 'pale'),
      chartText(
        'line-end',
        value < 0 ? `${words.end[kind].hyperextension} ${plain(-value, 1)}` : `${words.end[kind][key]} ${plain(value, 1)}`,
        { x: start, y: word - WORDS / 2 },
        { tone: kind === 'active' ? 'ink' : 'grey', strong: kind === 'active' },
      ),
    ];
  });
}

/** Words from below upward, none nearer to the one below than the pitch; those that would touch stand as a stack about their middle. */
function spread<T extends { readonly y: number }>(ends: readonly T[]): readonly (T & { readonly word: number })[] {
  const clusters: { items: T[]; middle: number }[] = [];
  for (const end of ends) {
    clusters.push({ items: [end], middle: end.y });
    for (let [below, top] = clusters.slice(-2); below !== undefined && top !== undefined; [below, top] = clusters.slice(-2)) {
      const room = ((below.items.length + top.items.length) * WORD_PITCH) / 2;
      if (top.middle - below.middle >= room) break;
      const items = [...below.items, ...top.items];
      clusters.splice(-2, 2, { items, middle: items.reduce((sum, { y }) => sum + y, 0) / items.length });
    }
  }
  return clusters.flatMap(({ items, middle }) =>
    items.map((item, k) => ({ ...item, word: middle + (k - (items.length - 1) / 2) * WORD_PITCH })),
  );
}
