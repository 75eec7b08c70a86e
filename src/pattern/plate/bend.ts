import { degrees, radians } from '../../units/angle.ts';
import type { Face } from './plate-design.ts';

/**
 * Flat length of a bend: (pi/180) A (R + K T), with the angle A in degrees, the inside radius R, the thickness T and K, the place of the neutral
 * line in the thickness. Sheet-metal handbooks: 90 degrees, R 1, T 1, K 0.5 is 2.356194.
 */
export function bendAllowance(angle: number, insideRadius: number, thickness: number, neutral: number): number {
  return radians(angle) * (insideRadius + neutral * thickness);
}

/** How a plate bends along one straight line over MP joints. Lengths in mm. */
export interface Bend {
  /** Rise of the line across the plate, as a slope: 0 runs square to the fingers, negative falls toward the ulnar side. */
  readonly slope: number;
  /** How far the sheet turns about the line, degrees: more than the MP angle where the line is oblique. */
  readonly turn: number;
  /** Radius at the face that lies inside the bend: skin side of a dorsal plate, outer side of a palmar one. */
  readonly insideRadius: number;
  /** Flat length square to the line. */
  readonly allowance: number;
  /** The same along the hand. */
  readonly length: number;
  /** Along the hand: where the bend begins, so far proximal of the MP joint line; and ends as far distal of it along the finger. */
  readonly before: number;
}

/** What a bend needs to know of hand and sheet, mm and degrees. */
export interface BendInputs {
  /** MP flexion, as a goniometer at the side of the joint shows it. */
  readonly angle: number;
  /** MP axis to the skin on the back, and half of the hand's depth, where palm and finger meet in a corner. */
  readonly dorsalRadius: number;
  readonly palmarDepth: number;
  readonly clearance: number;
  readonly thickness: number;
  readonly neutral: number;
  /** Inside radius that a palmar plate is bent to. */
  readonly palmarRadius: number;
}

/**
 * The bend of one face along a line of that slope. A dorsal plate runs round the MP axis from the joint line on, in an oblique line round a
 * cylinder that touches hand and finger at the same places. A palmar one lies inside: the skin of palm and finger meets in a corner,
 * (depth + clearance) tan(A/2) from the joint line on both legs, and the plate's own bend begins its outside setback, (R + T) tan(turn/2), before that
 * (sheet-metal handbooks).
 */
export function bendAlong(face: Face, slope: number, inputs: BendInputs): Bend {
  const { angle, clearance, thickness, neutral } = inputs;
  const cosine = 1 / Math.hypot(1, slope);
  const turn = obliqueTurn(angle, slope);
  // Tangents of half angles: along the hand, and square to the line.
  const [sagittal, square] = [Math.tan(radians(angle) / 2), Math.tan(radians(turn) / 2)];
  const made = (insideRadius: number, before: number): Bend => {
    const allowance = bendAllowance(turn, insideRadius, thickness, neutral);
    return { slope, turn, insideRadius, allowance, length: allowance / cosine, before };
  };
  if (face === 'dorsal') {
    const round = inputs.dorsalRadius + clearance;
    return made(square > 0 ? (round * cosine * sagittal) / square : round, 0);
  }
  const corner = (inputs.palmarDepth + clearance) * sagittal;
  return made(inputs.palmarRadius, corner + ((inputs.palmarRadius + thickness) * square) / cosine);
}

/** How far a sheet must turn about a line of that slope for a finger, seen from its side, to stand at the angle. degrees */
export function obliqueTurn(angle: number, slope: number): number {
  const a = radians(angle);
  return degrees(Math.atan2(Math.sin(a), Math.cos(a) / Math.hypot(1, slope)));
}

/** How much further along the flat plate than along hand and finger a point beyond the bend lies: negative inside the bend. */
export function bendShift({ length, before }: Bend): number {
  return length - 2 * before;
}
