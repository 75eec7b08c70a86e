import type { Corner } from '../../geometry/round-corners.ts';
import type { FingerPart, PartDigit } from './finger-part.ts';
import { LEAST_CORNER_RADIUS } from './plate-options.ts';

/** Half of the slot's width at the distal edge and at its round end, and the radius of that end. mm */
const HALF_WIDTH = 1.5;
const HALF_END = 4.2;
export const SLOT_END_RADIUS = 3.2;
/** What each side must keep beside its digit's midline at the distal edge, so that it lies over the digit. Ours, no source. mm */
const LEAST_BESIDE_MIDLINE = 4;

/** The slot between two finger parts on the flat plate: straight, half-way between the digits beside it by their widths. mm */
export interface Slot {
  /** x of its middle at height y. */
  readonly middleAt: (y: number) => number;
  /** y of its closed end: where the more proximal of the two bends begins. */
  readonly end: number;
}

export function slotBetween(radial: FingerPart, ulnar: FingerPart): Slot {
  const [a, b] = besideSlot(radial, ulnar);
  const share = a.row.halfWidth / (a.row.halfWidth + b.row.halfWidth);
  const lineX = (part: FingerPart, digit: PartDigit, y: number) => part.toFlat(digit.across, part.alongAt(digit.across, y)).x;
  const middleAt = (y: number) => lineX(radial, a, y) + share * (lineX(ulnar, b, y) - lineX(radial, a, y));
  // Both bends begin within a few mm of each other, over which the slot's middle hardly moves.
  const middle = middleAt(Math.min(a.mp.y, b.mp.y));
  return { middleAt, end: Math.min(radial.beginAt(middle), ulnar.beginAt(middle)) };
}

/** Whether both sides keep enough beside their midlines as far as the shorter digit reaches. */
export function slotFits(parts: readonly FingerPart[]): boolean {
  const [radial, ulnar] = parts;
  if (!radial || !ulnar) return false;
  const [a, b] = besideSlot(radial, ulnar);
  const slot = slotBetween(radial, ulnar);
  // Over the length of a proximal phalanx: a little more than any plate covers.
  const far = b.mp.y + LONGEST_PHALANX * b.row.halfWidth;
  const room = [radial.toFlat(a.across, radial.alongAt(a.across, far)).x, ulnar.toFlat(b.across, ulnar.alongAt(b.across, far)).x];
  return Math.min(slot.middleAt(far) - (room[0] as number), (room[1] as number) - slot.middleAt(far)) - HALF_WIDTH >= LEAST_BESIDE_MIDLINE;
}

/** Length of a proximal phalanx over half its width, of the demonstration hands rounded up. */
const LONGEST_PHALANX = 5;

/** Where a part's distal edge, at `along`, meets the slot: the place across. */
export function slotAcross(slot: Slot, part: FingerPart, along: number, side: 'radial' | 'ulnar'): number {
  const sign = side === 'radial' ? -1 : 1;
  const off = (across: number) => {
    const p = part.toFlat(across, along);
    return p.x - slot.middleAt(p.y) - sign * HALF_WIDTH;
  };
  // Both are straight lines, so one step of the secant is exact.
  const [at0, at1] = [off(0), off(1)];
  return -at0 / (at1 - at0);
}

/** Corners of the slot from its ulnar side to its radial one, between the two distal edges. */
export function slotCorners(slot: Slot, radial: FingerPart, radialAlong: number, ulnar: FingerPart, ulnarAlong: number): readonly Corner[] {
  const top = (part: FingerPart, along: number, side: 'radial' | 'ulnar'): Corner => ({
    ...part.toFlat(slotAcross(slot, part, along, side), along),
    radius: LEAST_CORNER_RADIUS,
  });
  const x = slot.middleAt(slot.end);
  return [
    top(ulnar, ulnarAlong, 'ulnar'),
    { x: x + HALF_END, y: slot.end, radius: SLOT_END_RADIUS },
    { x: x - HALF_END, y: slot.end, radius: SLOT_END_RADIUS },
    top(radial, radialAlong, 'radial'),
  ];
}

function besideSlot(radial: FingerPart, ulnar: FingerPart): readonly [PartDigit, PartDigit] {
  return [radial.held.at(-1) as PartDigit, ulnar.held[0] as PartDigit];
}
