import { radians } from '../../units/angle.ts';

/**
 * Flat length of a bend: (pi/180) A (R + K T), with the angle A in degrees, the inside radius R, the thickness T and K, the place of the neutral
 * line in the thickness. Sheet-metal handbooks: 90 degrees, R 1, T 1, K 0.5 is 2.356194.
 */
export function bendAllowance(angle: number, insideRadius: number, thickness: number, neutral: number): number {
  return radians(angle) * (insideRadius + neutral * thickness);
}

/** How a plate bends at the MP joints, lengths in mm along the flat plate. */
export interface Bend {
  /** MP angle, degrees. */
  readonly angle: number;
  /** Radius at the face that lies inside the bend: skin side of a dorsal plate, outer side of a palmar one. */
  readonly insideRadius: number;
  /** Where the bend begins, so far proximal of the MP joint line. */
  readonly before: number;
  readonly allowance: number;
}

/** What a bend needs to know of hand and sheet, mm and degrees. */
export interface BendInputs {
  readonly angle: number;
  /** Dorsal to palmar skin at the MP joint; the axis is taken in the middle. */
  readonly mpDepth: number;
  readonly clearance: number;
  readonly thickness: number;
  readonly neutral: number;
  /** Inside radius that a palmar plate is bent to. */
  readonly palmarRadius: number;
}

/** Outside of the bend: the plate runs round the MP axis, from the joint line on. */
export function dorsalBend(inputs: BendInputs): Bend {
  const { angle, mpDepth, clearance, thickness, neutral } = inputs;
  const insideRadius = mpDepth / 2 + clearance;
  return { angle, insideRadius, before: 0, allowance: bendAllowance(angle, insideRadius, thickness, neutral) };
}

/**
 * Inside of the bend: the skin of palm and finger meet in a corner, (depth/2 + clearance) tan(A/2) from the joint line on both legs, and the
 * plate's own bend begins its outside setback, (R + T) tan(A/2), before that (sheet-metal handbooks).
 */
export function palmarBend(inputs: BendInputs): Bend {
  const { angle, mpDepth, clearance, thickness, neutral, palmarRadius } = inputs;
  const reach = mpDepth / 2 + clearance + palmarRadius + thickness;
  return {
    angle,
    insideRadius: palmarRadius,
    before: reach * Math.tan(radians(angle) / 2),
    allowance: bendAllowance(angle, palmarRadius, thickness, neutral),
  };
}

/** How much further along the flat plate a point beyond the bend lies than along hand and finger: negative inside the bend. */
export function bendShift({ allowance, before }: Bend): number {
  return allowance - 2 * before;
}
