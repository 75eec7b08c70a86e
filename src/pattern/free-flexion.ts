import { degrees } from '../units/angle.ts';

/** The PIP crease lies 2 to 3 mm proximal of the PIP joint, 2.5 taken. Bugbee & Botte, Clin Orthop 1993. mm */
export const CREASE_TO_JOINT = 2.5;
/**
 * Half depth of the middle phalanx in half depths of the proximal one: DIP to PIP circumference is 48.0 : 57.0, half-way between
 * (Nag, Nag, Desai, Indian J Med Res 2003;117:260-269, second-hand).
 */
const MIDDLE_PHALANX = 0.9;
/** How far its flesh gives way against the edge, in half depths of the proximal phalanx: an assumption, no source; 0.2 to 0.6 makes 8 degrees either way. */
const FLESH_GIVES = 0.4;

/**
 * PIP flexion, degrees, at which the middle phalanx meets a distal edge (model rule 12): the edge seen from the joint, and the phalanx that lies on it
 * with its flesh pressed in.
 * @param halfDepth of the proximal phalanx, mm
 * @param above the skin of its palm side: free space and sheet, to the outer face, mm
 * @param toCrease how far proximal of the PIP crease the edge lies, mm
 */
export function freeFlexionOver(halfDepth: number, above: number, toCrease: number): number {
  const height = halfDepth + above;
  const distance = toCrease + CREASE_TO_JOINT;
  const phalanx = (MIDDLE_PHALANX - FLESH_GIVES) * halfDepth;
  return 180 - degrees(Math.atan2(height, distance) + Math.asin(phalanx / Math.hypot(distance, height)));
}
