import type { DigitName } from '../../hand/digits.ts';
import { degrees, radians } from '../../units/angle.ts';

/** How a plate is folded over MP joints that do not lie in one line: one oblique line, a slot with a line on each side of it, or a line with a kink at each joint. */
export const BEND_FORMS = ['straight', 'split', 'kinked'] as const;
export type BendForm = (typeof BEND_FORMS)[number];

/** A digit's MP joint on the flat plate, mm: x across, y along the hand. */
export interface MpJoint {
  readonly digit: DigitName;
  readonly x: number;
  readonly y: number;
}

/** A straight line over some of the joints: y = level + slope x, half-way between those furthest off on both sides. */
export interface BendLine {
  readonly joints: readonly MpJoint[];
  readonly slope: number;
  readonly level: number;
  /** How far the joints lie from it along the hand, at most. mm */
  readonly miss: number;
}

/** What a way to fold asks of sheet and fit. */
export interface BendCost {
  /** Greatest stretch or squeeze of the sheet, as a share; over the limit of 0.05 it is not to be had by stroking. */
  readonly stretch: number;
  /** Greatest shear of the sheet, degrees: by how much a right angle drawn along and across is no longer one. */
  readonly shear: number;
  /** How far an MP joint lies from the bend, and at a slot how far the step between its two sides is off the digits' own. mm */
  readonly miss: number;
  /** How far a finger is pushed sideways beyond what fingers do of themselves. degrees */
  readonly swing: number;
  /** The largest of stretch / 0.05, miss / 2 mm, swing / 5 degrees: the least is chosen. */
  readonly cost: number;
}

/** What counts as one in a cost. Ours, no source. */
const LIMITS = { stretch: 0.05, miss: 2, swing: 5 } as const;

/** The line whose furthest joint is nearest (its slope is that of two of the joints); level through a single one. */
export function bendLine(joints: readonly MpJoint[]): BendLine {
  const offsets = (slope: number) => joints.map((j) => j.y - slope * j.x);
  const spread = (slope: number) => Math.max(...offsets(slope)) - Math.min(...offsets(slope));
  const slopes = joints.flatMap((a, i) => joints.slice(i + 1).map((b) => (b.y - a.y) / (b.x - a.x)));
  const slope = slopes.reduce((best, one) => (spread(one) < spread(best) ? one : best), slopes[0] ?? 0);
  const found = offsets(slope);
  return { joints, slope, level: (Math.max(...found) + Math.min(...found)) / 2, miss: spread(slope) / 2 };
}

/** The lines of each way to fold; `split` only where ring and little finger are both held. */
export function bendLines(form: Exclude<BendForm, 'kinked'>, joints: readonly MpJoint[]): readonly BendLine[] | null {
  if (form === 'straight') return [bendLine(joints)];
  const little = joints.filter((j) => j.digit === 'little');
  const others = joints.filter((j) => j.digit !== 'little');
  if (little.length === 0 || !others.some((j) => j.digit === 'ring')) return null;
  return [bendLine(others), bendLine(little)];
}

/**
 * What a way to fold costs. Its straight lines are exact, and the finger part is drawn turned by as much as the fold turns it back, so that no
 * finger is pushed sideways; what remains is the joints' distance from them. The kinked one misses no joint, but its sheet is sheared between
 * columns whose joints lie at different heights.
 */
export function costOf(form: BendForm, lines: readonly BendLine[] | null, joints: readonly MpJoint[], angle: number): BendCost | null {
  if (form === 'kinked') return weighed(kinkStrain(joints, angle), 0, 0);
  if (!lines) return null;
  const miss = Math.max(...lines.map((line) => line.miss));
  return weighed({ stretch: 0, shear: 0 }, Math.max(miss, stepError(lines, angle)), 0);
}

/**
 * The way that costs least; of equal ones the first in the order straight, split, kinked. A slot weakens the plate: it is cut only where no line
 * without one keeps within all limits.
 */
export function leastCost(costs: Readonly<Record<BendForm, BendCost | null>>): BendForm {
  const cost = (form: BendForm) => costs[form]?.cost ?? Number.POSITIVE_INFINITY;
  const least = (forms: readonly BendForm[]) => forms.reduce((best, form) => (cost(form) < cost(best) - TIE ? form : best));
  const whole = least(BEND_FORMS.filter((form) => form !== 'split'));
  return cost(whole) <= 1 ? whole : least(BEND_FORMS);
}

/** Costs nearer to each other than this are equal. */
const TIE = 1e-9;

function weighed({ stretch, shear }: Pick<BendCost, 'stretch' | 'shear'>, miss: number, swing: number): BendCost {
  return { stretch, shear, miss, swing, cost: Math.max(stretch / LIMITS.stretch, miss / LIMITS.miss, swing / LIMITS.swing) };
}

/** The step between the planes on both sides of a slot against that between the two digits beside it, each at its own height. mm */
function stepError(lines: readonly BendLine[], angle: number): number {
  const [first, second] = lines;
  const [ring, little] = [first?.joints.at(-1), second?.joints[0]];
  if (!first || !second || !ring || !little) return 0;
  const off = (line: BendLine, joint: MpJoint) => joint.y - line.level - line.slope * joint.x;
  return Math.abs(off(first, ring) - off(second, little)) * Math.sin(radians(angle));
}

/**
 * Greatest principal stretch or squeeze, and greatest shear, of a sheet bent at each joint by the same angle: between two columns whose bend lines rise
 * by g for each mm across, lengths across grow to sqrt(1 + 2 g^2 (1 - cos A)) and are sheared against the fingers by g (1 - cos A).
 */
function kinkStrain(joints: readonly MpJoint[], angle: number): Pick<BendCost, 'stretch' | 'shear'> {
  const fall = 1 - Math.cos(radians(angle));
  const strains = joints.slice(1).map((b, i) => {
    const a = joints[i] as MpJoint;
    const rise = (b.y - a.y) / (b.x - a.x);
    const across = 1 + 2 * rise * rise * fall;
    const shear = rise * fall;
    const middle = (across + 1) / 2;
    const radius = Math.hypot((across - 1) / 2, shear);
    return {
      stretch: Math.max(Math.sqrt(middle + radius) - 1, 1 - Math.sqrt(middle - radius)),
      shear: degrees(Math.asin(Math.min(1, Math.abs(shear) / Math.sqrt(across)))),
    };
  });
  return { stretch: Math.max(0, ...strains.map((s) => s.stretch)), shear: Math.max(0, ...strains.map((s) => s.shear)) };
}
