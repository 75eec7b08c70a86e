import type { Point } from '../../geometry/path.ts';

/**
 * The palm's section at the metacarpal heads: a stadium (two flat faces, half-round borders), mm. With the mean breadth and circumference of
 * ANSUR II an ellipse would be 10 mm too thick; the stadium gives 26.5 (women) and 31.3 (men).
 */
export interface PalmSection {
  readonly breadth: number;
  readonly circumference: number;
  readonly thickness: number;
}

/** The stadium with this breadth and circumference: 2 (breadth - thickness) + pi thickness = circumference. Null where there is none. */
export function palmSection(breadth: number, circumference: number): PalmSection | null {
  const thickness = (circumference - 2 * breadth) / (Math.PI - 2);
  return thickness > 0 && thickness < breadth ? { breadth, circumference, thickness } : null;
}

/** The same shape made smaller or larger. */
export function scaledPalm(section: PalmSection, factor: number): PalmSection {
  return { breadth: section.breadth * factor, circumference: section.circumference * factor, thickness: section.thickness * factor };
}

/** Half of the perimeter of the section grown by `offset` (Steiner: + 2 pi offset): one face, from mid-lateral line to mid-lateral line. */
export function faceLength(section: PalmSection, offset: number): number {
  return section.circumference / 2 + Math.PI * offset;
}

/** Half of the flat face. */
function halfFlat({ breadth, thickness }: PalmSection): number {
  return (breadth - thickness) / 2;
}

/** Where a sheet wrapped round the grown section lies: `s` along it from the middle of a face. y is 0 in the middle of the thickness, positive on that face's side. */
export function wrapped(section: PalmSection, offset: number, s: number): Point {
  const flat = halfFlat(section);
  const radius = section.thickness / 2 + offset;
  const over = Math.abs(s) - flat;
  if (over <= 0) return { x: s, y: radius };
  const angle = over / radius;
  return { x: Math.sign(s) * (flat + radius * Math.sin(angle)), y: radius * Math.cos(angle) };
}

/** How far along the grown face, from its middle, the line through `x` across the hand lies; beyond the border it is the mid-lateral line. */
export function alongFace(section: PalmSection, offset: number, x: number): number {
  const flat = halfFlat(section);
  const over = Math.abs(x) - flat;
  if (over <= 0) return x;
  const radius = section.thickness / 2 + offset;
  return Math.sign(x) * (flat + radius * Math.asin(Math.min(1, over / radius)));
}
