import { REAL } from '../block/figures.ts';
import type { Case, Motion } from './case.ts';

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
