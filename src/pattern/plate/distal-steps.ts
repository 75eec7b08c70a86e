import { rootBetween } from '../../geometry/root.ts';
import type { Corner } from '../../geometry/round-corners.ts';
import { radians } from '../../units/angle.ts';
import { ANGLE_SOLVED, MINIMUM_FEATURE } from '../../units/tolerance.ts';
import { LEAST_CORNER_RADIUS, LEAST_NOTCH } from './plate-options.ts';

/** One digit's stretch of the distal edge: from..to across, radial to ulnar, at most `edge` far distal. mm */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly edge: number;
  /** How far proximal a notch beside it may reach. */
  readonly notchLimit: number;
}

/** Steepest slope of a step between digits, from the level. */
const STEEPEST = radians(75);
/** A smaller difference of length is no step: its two corners would lie so near that they were made one, half-way up. mm */
const NO_STEP = 1.1;
/** A little more than the shortest straight that the rounding leaves between two arcs. mm */
const STRAIGHT = 1.1 * MINIMUM_FEATURE;
/** Flatter than any step needs (radians): only where the search for its slope begins. */
const FLATTEST = 0.05;
/** What the rounded corner at the free side of a border stretch takes. mm */
const BORDER_ROOM = LEAST_CORNER_RADIUS;
/** Radius of hollows between digits, where skin does not lie: at the foot of a step and in a web notch. mm */
export const HOLLOW_RADIUS = 3;
/** Half the width of a web notch: a little more than its radius, so that a straight remains between the two arcs. mm */
const NOTCH_HALF_WIDTH = 3.6;

/** How a step between two digits lies: its length along the edge, and what each of its two rounded corners takes beyond that. mm */
interface Step {
  readonly run: number;
  readonly foot: number;
  readonly top: number;
}

/** The steepest step of height h on whose slope both corners find room for their radius. */
export function stepFor(h: number): Step {
  if (h < NO_STEP) return { run: 0, foot: 0, top: 0 };
  const radii = LEAST_CORNER_RADIUS + HOLLOW_RADIUS;
  const spare = (slope: number) => h / Math.sin(slope) - radii * Math.tan(slope / 2) - STRAIGHT;
  const slope = spare(STEEPEST) >= 0 ? STEEPEST : (rootBetween(spare, FLATTEST, STEEPEST, ANGLE_SOLVED) ?? FLATTEST);
  const half = Math.tan(slope / 2);
  return { run: h / Math.tan(slope), foot: HOLLOW_RADIUS * half, top: LEAST_CORNER_RADIUS * half };
}

/**
 * How far distal each stretch really reaches: no more than its own limit, and so far back that its steps down to shorter neighbours, which lie
 * inside it, rounded foot and all, so that the shorter digit's PIP joint is free over its whole width, leave it a level edge.
 */
export function levels(stretches: readonly Stretch[]): readonly number[] {
  const level = stretches.map((s) => s.edge);
  // Lowering one stretch may make steps in its neighbours; each pass settles at least one, and none is ever raised.
  for (let pass = 0; pass <= stretches.length; pass++) {
    for (const [i, s] of stretches.entries()) {
      const lower = [level[i - 1], level[i + 1]].filter((y): y is number => y !== undefined && y < (level[i] as number));
      const border = i === 0 || i === stretches.length - 1;
      const room = s.to - s.from - STRAIGHT - (border ? BORDER_ROOM : 0);
      const needs = (y: number) =>
        lower.reduce((sum, other) => {
          const { run, foot, top } = stepFor(Math.max(0, y - other));
          return sum + run + foot + top;
        }, 0);
      let [low, high] = [Math.max(...lower), level[i] as number];
      if (lower.length === 0 || needs(high) <= room) continue;
      for (let step = 0; step < 40; step++) {
        const middle = (low + high) / 2;
        if (needs(middle) <= room) low = middle;
        else high = middle;
      }
      level[i] = low;
    }
  }
  // What is too small for a step is cut level.
  for (let i = 1; i < level.length; i++) {
    const [a, b] = [level[i - 1] as number, level[i] as number];
    if (Math.abs(a - b) < NO_STEP) level[i] = level[i - 1] = Math.min(a, b);
  }
  return level;
}

/** Corners of the distal edge between the two ends of the row, from ulnar to radial; `notch` is the wanted depth, 0 for none. */
export function distalSteps(stretches: readonly Stretch[], level: readonly number[], notch: number): readonly Corner[] {
  const corners: Corner[] = [];
  for (let i = stretches.length - 1; i > 0; i--) {
    const ulnar = level[i] as number;
    const radial = level[i - 1] as number;
    const web = (stretches[i] as Stretch).from;
    const radius = LEAST_CORNER_RADIUS;
    const bottom = Math.max(
      Math.min(ulnar, radial) - notch,
      (stretches[i] as Stretch).notchLimit,
      (stretches[i - 1] as Stretch).notchLimit,
    );
    if (notch > 0 && Math.min(ulnar, radial) - bottom >= LEAST_NOTCH) {
      corners.push(
        { x: web + NOTCH_HALF_WIDTH, y: ulnar, radius },
        { x: web + NOTCH_HALF_WIDTH, y: bottom, radius: HOLLOW_RADIUS },
        { x: web - NOTCH_HALF_WIDTH, y: bottom, radius: HOLLOW_RADIUS },
        { x: web - NOTCH_HALF_WIDTH, y: radial, radius },
      );
      continue;
    }
    const { run, foot } = stepFor(Math.abs(ulnar - radial));
    if (ulnar === radial) continue;
    const hollow = HOLLOW_RADIUS;
    if (radial > ulnar) corners.push({ x: web - foot, y: ulnar, radius: hollow }, { x: web - foot - run, y: radial, radius });
    else corners.push({ x: web + foot + run, y: ulnar, radius }, { x: web + foot, y: radial, radius: hollow });
  }
  return corners;
}
