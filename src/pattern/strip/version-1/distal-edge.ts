import type { BrokenLine } from '../../../geometry/broken-line.ts';
import { MINIMUM_FEATURE } from '../../../units/tolerance.ts';

/** A level stretch of the distal edge: from..to along the flat strip, cut back by `depth`. mm */
export interface Plateau {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

/** Smallest radius of a relief's fillets: the sheet must not crack and the edge must not cut. mm */
export const SMALLEST_FILLET = 3;

/** An S-shaped step of two tangent arcs of one radius, between two depths. mm, sweep in radians. */
export interface Step {
  readonly length: number;
  readonly radius: number;
  readonly sweep: number;
}

/**
 * The step for a change of depth h. The radius is at least 3 mm and at least h (60 degrees of slope at most, easy to follow with
 * scissors), and for a very shallow step so large that each arc's chord keeps the minimum feature.
 */
export function stepFor(h: number): Step {
  const shortArc = (4 * MINIMUM_FEATURE * MINIMUM_FEATURE) / h;
  const radius = Math.max(SMALLEST_FILLET, h, (shortArc + h) / 4);
  return { length: Math.sqrt(h * (4 * radius - h)), radius, sweep: Math.acos(1 - h / (2 * radius)) };
}

/**
 * The distal edge of the flat strip as level stretches, left to right, for zones that must be cut back by at least their depth.
 * The steps lie outside the deeper stretch, so that the full relief reaches from one mid-lateral line to the other; where a shallower
 * stretch is too short for its steps it is cut back as its neighbour is. `endRoom` is what the two end stretches need for their corners.
 */
export function distalPlateaus(zones: readonly Plateau[], start: number, end: number, endRoom: number): readonly Plateau[] {
  // A cut-back that only just reaches an end of the strip still needs room for the corner there.
  const reaching = zones.map((z) => ({
    depth: z.depth,
    from: z.from < end && z.to >= end ? Math.min(z.from, end - endRoom) : z.from,
    to: z.to > start && z.from <= start ? Math.max(z.to, start + endRoom) : z.to,
  }));
  const cuts = [start, end, ...reaching.flatMap((z) => [z.from, z.to])].filter((v) => v >= start && v <= end).sort((a, b) => a - b);
  let plateaus: Plateau[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const from = cuts[i] as number;
    const to = cuts[i + 1] as number;
    const middle = (from + to) / 2;
    const depth = Math.max(0, ...reaching.filter((z) => z.from <= middle && middle <= z.to).map((z) => z.depth));
    plateaus = appended(plateaus, { from, to, depth });
  }
  for (;;) {
    const short = plateaus.findIndex((_, i) => tooShort(plateaus, i, endRoom));
    if (short < 0) return plateaus;
    const deeper = [plateaus[short - 1], plateaus[short + 1]].flatMap((p) =>
      p && p.depth > (plateaus[short] as Plateau).depth ? [p.depth] : [],
    );
    const depth = Math.min(...deeper);
    plateaus = plateaus.map((p, i) => (i === short ? { ...p, depth } : p)).reduce<Plateau[]>(appended, []);
  }
}

function appended(plateaus: readonly Plateau[], next: Plateau): Plateau[] {
  const last = plateaus.at(-1);
  if (next.to <= next.from) return [...plateaus];
  return last && last.depth === next.depth ? [...plateaus.slice(0, -1), { ...last, to: next.to }] : [...plateaus, next];
}

/** Whether a stretch cannot hold the steps down to its deeper neighbours, a straight edge between them, and a corner at the strip's end. */
function tooShort(plateaus: readonly Plateau[], i: number, endRoom: number): boolean {
  const here = plateaus[i] as Plateau;
  const steps = [plateaus[i - 1], plateaus[i + 1]].flatMap((p) =>
    p && p.depth > here.depth ? [stepFor(p.depth - here.depth).length] : [],
  );
  const ends = (i === 0 ? endRoom : 0) + (i === plateaus.length - 1 ? endRoom : 0);
  if (steps.length === 0) return false;
  return here.to - here.from < steps.reduce((sum, s) => sum + s, ends + MINIMUM_FEATURE);
}

/** The distal edge as a broken line that counts each step as deep as its deeper side, so that words keep clear of the slope; v and height from the proximal edge. */
export function stepped(plateaus: readonly Plateau[], width: number): BrokenLine {
  return plateaus.flatMap((plateau, i) => {
    const before = plateaus[i - 1];
    const after = plateaus[i + 1];
    const low = before && before.depth > plateau.depth ? plateau.from + stepFor(before.depth - plateau.depth).length : plateau.from;
    const high = after && after.depth > plateau.depth ? plateau.to - stepFor(after.depth - plateau.depth).length : plateau.to;
    const deep = (other: Plateau | undefined) => width - Math.max(plateau.depth, other?.depth ?? 0);
    return [
      { x: plateau.from, y: deep(before) },
      { x: low, y: deep(before) },
      { x: low, y: width - plateau.depth },
      { x: high, y: width - plateau.depth },
      { x: high, y: deep(after) },
      { x: plateau.to, y: deep(after) },
    ];
  });
}
