import { REAL } from '../block/figures.ts';
import { type Point, polyline } from '../geometry/path.ts';
import { dashed } from '../pattern/dashes.ts';
import type { DrawnShape, DrawnText, Pen, Tone } from '../pattern/drawing.ts';
import type { Case, Made, Motion, Visit } from './case.ts';
import { madeInOrder } from './case-text.ts';

/** Sizes on the chart, mm. */
export const MARGIN = 9;
const HEADINGS = 47;
const LINE_ENDS = 48;
/** Wide enough for the words of a change under each visit. */
const NARROWEST_PITCH = 20;
/** Room for the visits of a short case; with more visits than fit at the narrowest pitch the chart grows wider. */
const PLOT_WIDTH = 150;
export const MM_PER_DEGREE = 0.85;

/** Full flexion that the scale always shows, degrees, and its steps. */
const TOP = 110;
export const SCALE_STEP = 10;

/** Where the plot lies: x of each visit, y of each angle, both in mm from the plot's lower left corner at (0, 0). */
export interface Frame {
  readonly pitch: number;
  readonly width: number;
  readonly height: number;
  /** Lowest and highest degree of the scale; every band lies inside. */
  readonly low: number;
  readonly high: number;
  readonly x: (visit: number) => number;
  readonly y: (degrees: number) => number;
  /** Left and right end of the drawing, margins included. */
  readonly left: number;
  readonly right: number;
}

/** The scale is that of the whole case, so that its pictures can be laid side by side. `shown`: how many visits one picture has. */
export function chartFrame({ visits }: Pick<Case, 'visits'>, shown: number): Frame {
  const motions = visits.flatMap(({ goniometry: { pip } }): Motion[] => [pip.active, ...(pip.passive ? [pip.passive] : [])]);
  const low = Math.min(0, SCALE_STEP * Math.floor((Math.min(...motions.map((m) => m.extensionDeficit)) - REAL.mixed) / SCALE_STEP));
  const high = Math.max(TOP, SCALE_STEP * Math.ceil((Math.max(...motions.map((m) => m.flexion)) + REAL.mixed) / SCALE_STEP));
  const pitch = Math.max(NARROWEST_PITCH, PLOT_WIDTH / shown);
  return {
    pitch,
    width: pitch * shown,
    height: (high - low) * MM_PER_DEGREE,
    low,
    high,
    x: (visit) => (visit + 0.5) * pitch,
    y: (degrees) => (degrees - low) * MM_PER_DEGREE,
    left: -HEADINGS - MARGIN,
    right: pitch * shown + LINE_ENDS + MARGIN,
  };
}

/** First and last visit of a picture, counted from 0. */
export interface ShownVisits {
  readonly first: number;
  readonly last: number;
}

/** The visits of one picture of a case, with what was made at them or is still worn from before. */
export interface ChartPart {
  readonly visits: readonly Visit[];
  /** `visit` counts within the part; null: made before its first visit and not replaced until then. */
  readonly made: readonly PartMade[];
}

interface PartMade {
  readonly letter: string;
  readonly made: Made;
  readonly visit: number | null;
  /** ISO date on which it was made. */
  readonly date: string;
}

/** Letters are those of the whole case, so that one thing has one name in every picture. */
export function chartPart({ visits }: Pick<Case, 'visits'>, { first, last }: ShownVisits): ChartPart {
  const all = madeInOrder(visits);
  const carried = all.findLast(({ visit }) => visit < first);
  const shown = all.filter(({ visit }) => visit >= first && visit <= last);
  // What is made at the first visit shown takes the place of what was worn until then.
  const before = carried !== undefined && shown[0]?.visit !== first ? [carried] : [];
  const made = [...before, ...shown].map(
    ({ letter, visit, made: one }): PartMade => ({
      letter,
      made: one,
      visit: visit < first ? null : visit - first,
      date: visits[visit]?.date ?? '',
    }),
  );
  return { visits: visits.slice(first, last + 1), made };
}

/** Most visits in one picture on paper: at the narrowest distance they still give letters of 1.4 mm across A4. */
const MOST_SHOWN = 8;

/** A long case in pictures of about equal length; each begins with the last visit of the one before, so that no change is lost. */
export function chartParts(count: number, most: number = MOST_SHOWN): readonly ShownVisits[] {
  const pictures = Math.max(1, Math.ceil((count - 1) / (most - 1)));
  const at = (k: number) => Math.round(((count - 1) * k) / pictures);
  return Array.from({ length: pictures }, (_, k) => ({ first: at(k), last: at(k + 1) }));
}

/** Strokes and gaps of the passive lines and of the band's edges, mm. */
export const PASSIVE_DASH = [2.2, 1.4] as const;
export const BAND_DASH = [0.7, 0.9] as const;

/** A line through the points, unbroken or in dashes that start anew at each point. */
export function chartLine(
  role: string,
  title: string,
  points: readonly Point[],
  pen: Pen,
  tone: Tone,
  dash: readonly number[] = [],
): DrawnShape {
  const pieces = points.slice(1).flatMap((to, k) => dashed(points[k] ?? to, to, dash));
  return { kind: 'shape', role, title, paths: dash.length === 0 ? [polyline(points)] : pieces, circles: [], pen, tone, fill: null };
}

/** An area between two corners. */
export function chartBox(
  role: string,
  title: string,
  from: Point,
  to: Point,
  fill: Tone | null,
  pen: Pen | null = null,
  tone: Tone = 'ink',
): DrawnShape {
  const corners = [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
  return { kind: 'shape', role, title, paths: [polyline(corners, true)], circles: [], pen, tone, fill };
}

export function chartDot(role: string, title: string, center: Point, radius: number, fill: Tone, pen: Pen, tone: Tone): DrawnShape {
  return { kind: 'shape', role, title, paths: [], circles: [{ center, radius }], pen, tone, fill };
}

interface TextStyle {
  readonly height?: number;
  readonly align?: DrawnText['align'];
  readonly tone?: Tone;
  readonly strong?: boolean;
}

/** Capital height of most words on the chart, mm. */
export const WORDS = 2.5;

export function chartText(
  role: string,
  text: string,
  at: Point,
  { height = WORDS, align = 'left', tone = 'ink', strong = false }: TextStyle = {},
): DrawnText {
  return { kind: 'text', role, text, at, height, align, tone, strong };
}
