import type { BrokenLine } from '../../geometry/broken-line.ts';
import type { LineArcPath, Point } from '../../geometry/path.ts';
import type { StripSettings } from './strip-options.ts';

/**
 * How the flat strip of tapering fingers is bent: the place in the plane of every (v, level) of the unbent one. Along a contact with a finger that narrows by
 * gamma to each side the strip turns by sin(gamma) for each radian of the contact, as the development of a cone does, about a centre on the distal side; spans between the fingers stay
 * straight (model rule 18). Lines across the strip stay straight and as long as they were.
 */
export interface FlatFrame {
  readonly place: (v: number, level: number) => Point;
  /** Heading of the strip at v, radians; 0 in the middle of it. */
  readonly heading: (v: number) => number;
  /** What 1 mm along the strip is at (v, level), mm: less than 1 on the inside of the bend. */
  readonly scale: (v: number, level: number) => number;
  /** From end to end, radians. */
  readonly turn: number;
}

/** The flat strip: v runs along it from the seam mark (v = 0 is u = 0), its edges lie at levels along the digits, distal positive. mm */
export interface FlatStrip {
  readonly outline: LineArcPath;
  /** How it is bent where fingers taper; null where it is not. The outline is bent already, the levels below are not. */
  readonly frame: FlatFrame | null;
  /** v of the two ends. */
  readonly start: number;
  readonly end: number;
  /** v where the band closes: the seam mark of the finishing end. */
  readonly seamEnd: number;
  readonly flatLength: number;
  /** The two edges before their corners are rounded, from end to end: v and level. */
  readonly proximal: BrokenLine;
  readonly distal: BrokenLine;
}

/** Lengths along the flat strip for lengths along the neutral line: the warm sheet gives the stretch back. */
export function flattened(u: number, options: StripSettings): number {
  return u / (1 + options.stretch);
}

/** Half the scale of a paper strip, and what is left beyond it; mm. */
export const PAPER_SCALE = 15;
const BEYOND_SCALE = 7;

/** How far the strip reaches beyond the two seam marks: half the overlap of a lap, or a whole tab of a pinch; trim at the finishing end only. */
export function endAllowances(options: StripSettings): { readonly start: number; readonly seam: number; readonly trim: number } {
  if (options.paper) return { start: 0, seam: 0, trim: PAPER_SCALE + BEYOND_SCALE };
  const seam = options.seam !== 'pinch' ? options.seamAllowance / 2 : options.seamAllowance;
  return { start: seam, seam, trim: options.trim };
}
