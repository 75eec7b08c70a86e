import { DIGITS, type DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import type { Face, PlateDesign } from './plate-design.ts';
import { type FaceFrame, heldColumns, LEAST_FINGER, type PlateFrame, plateFrame, roomProblems, SHORTEST_FINGER } from './plate-frame.ts';
import type { PlateOptions } from './plate-options.ts';
import { outlineProblems, type PlateOutline, plateOutline } from './plate-outline.ts';

/** A frame with the outline of each face. */
export interface FittedPlate {
  readonly frame: PlateFrame;
  readonly outlines: readonly PlateOutline[];
}

/**
 * The plate as the hand lets it be. A palmar face that would hold too little is first closed in: nearer to the PIP creases, then bent more sharply;
 * then a border digit is left free. Refused with the reasons that stood against what was asked for when there is no room even so.
 */
export function fittedPlate(hand: Hand, design: PlateDesign, options: PlateOptions): Result<FittedPlate> {
  const asked = tryPlate(hand, design, options);
  if (!asked.ok) return asked;
  if (asked.value.problems.length === 0) return success(asked.value, asked.warnings);
  let last = asked.value;
  for (const closer of design.faces === 'dorsal' ? [] : closedIn(options)) {
    const tried = tryPlate(hand, design, closer, options);
    if (!tried.ok) break;
    if (tried.value.problems.length === 0) return success(tried.value, [...closedInWarnings(options, closer), ...tried.warnings]);
    last = tried.value;
  }
  const left = leftOut(last, design.digits);
  const without = left && fittedPlate(hand, { ...design, digits: design.digits.filter((digit) => digit !== left.digit) }, options);
  if (left && without?.ok) return success(without.value, [leftOutWarning(left), ...without.warnings]);
  return failure(...asked.value.problems);
}

interface TriedPlate extends FittedPlate {
  /** Why it must not be cut. */
  readonly problems: readonly Problem[];
}

/** A plate with just these options, and what stands against it. */
export function tryPlate(hand: Hand, design: PlateDesign, options: PlateOptions, back: PlateOptions = options): Result<TriedPlate> {
  const framed = plateFrame(hand, design, options, back);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const own = ({ face }: FaceFrame) => (face === 'dorsal' ? back : options);
  const outlines = frame.faces.map((face) => plateOutline(face, own(face)));
  const room = frame.faces.flatMap((face) => roomProblems(face, own(face)));
  const problems = room.length > 0 ? room : frame.faces.flatMap((face, k) => outlineProblems(face, outlines[k] as PlateOutline, own(face)));
  return success({ frame, outlines, problems }, framed.warnings);
}

/** How near a plate's edge may come to a PIP joint, and how sharply it may be bent, when it is that or no plate. Ours, no source. mm */
export const NEAREST_TO_PIP = 3;
const SHARPEST_BEND = 1;

/** Ever closer to the palm and to the PIP creases: a millimetre at a time, the creases first. */
function* closedIn(options: PlateOptions): Generator<PlateOptions> {
  let { pipClearance, palmarBendRadius } = options;
  while (pipClearance > NEAREST_TO_PIP) {
    pipClearance = Math.max(NEAREST_TO_PIP, pipClearance - 1);
    yield { ...options, pipClearance };
  }
  while (palmarBendRadius > SHARPEST_BEND) {
    palmarBendRadius = Math.max(SHARPEST_BEND, palmarBendRadius - 1);
    yield { ...options, pipClearance, palmarBendRadius };
  }
}

function closedInWarnings(asked: PlateOptions, closer: PlateOptions): readonly Warning[] {
  const warnings: Warning[] = [];
  if (closer.pipClearance < asked.pipClearance)
    warnings.push({
      code: 'PIP_CLEARANCE_LESS',
      where: 'pipClearance',
      message: `the plate ends ${plain(closer.pipClearance, 1)} mm from the PIP creases, not ${plain(asked.pipClearance, 1)}: at this MP angle it would else hold too little of the fingers`,
      value: closer.pipClearance,
      limit: asked.pipClearance,
      next: 'see that each PIP joint bends freely over the edge, flare it, or use a smaller MP angle or a dorsal plate',
    });
  if (closer.palmarBendRadius < asked.palmarBendRadius)
    warnings.push({
      code: 'BEND_SHARPER',
      where: 'palmarBendRadius',
      message: `the palmar plate is bent to an inside radius of ${plain(closer.palmarBendRadius, 1)} mm, not ${plain(asked.palmarBendRadius, 1)}: else it would hold too little of the fingers`,
      value: closer.palmarBendRadius,
      limit: asked.palmarBendRadius,
      next: 'heat the bend well so that it does not thin out, or use a smaller MP angle, a thinner sheet or a dorsal plate',
    });
  return warnings;
}

/** A digit at the border of the row of which a plate would cover too little, while it holds others well. */
interface LeftOut {
  readonly digit: DigitName;
  readonly face: Face;
  readonly finger: number;
}

function leftOut({ frame, problems }: TriedPlate, digits: readonly DigitName[]): LeftOut | null {
  if (digits.length < 2) return null;
  // Too short an end that only cannot be rounded is let go from a larger length on.
  const least = problems.some((p) => DIGITS.some((digit) => p.where === `digits.${digit}`)) ? SHORTEST_FINGER : LEAST_FINGER;
  for (const face of frame.faces) {
    const lengths = heldColumns(face).map(({ digit, held }) => ({ digit, face: face.face, finger: held.edge - held.bendEnd }));
    if (Math.max(...lengths.map((l) => l.finger)) < LEAST_FINGER) continue;
    const border = [lengths[0], lengths.at(-1)].flatMap((l) => (l && l.finger < least ? [l] : []));
    if (border.length > 0) return border.reduce((a, b) => (b.finger < a.finger ? b : a));
  }
  return null;
}

function leftOutWarning({ digit, face, finger }: LeftOut): Warning {
  return {
    code: 'DIGIT_LEFT_OUT',
    where: `digits.${digit}`,
    message: `the ${digit} finger is left free: at this MP angle the ${face} plate would cover only ${plain(Math.max(0, finger), 1)} mm of it beyond the bend`,
    value: finger,
    limit: LEAST_FINGER,
    next: 'use a smaller MP angle or a dorsal plate if its MP joint must be held',
  };
}
