import type { BrokenLine } from '../../../geometry/broken-line.ts';
import { type LineArcPath, type Vertex, vertex } from '../../../geometry/path.ts';
import { MINIMUM_FEATURE } from '../../../units/tolerance.ts';
import { type PalmarZone, palmarZones } from '../palmar-zones.ts';
import type { StripSettings } from '../strip-options.ts';
import { endAllowances, type FlatStrip, flattened } from '../strip-outline.ts';
import type { StripPath } from '../strip-path.ts';
import type { Relief } from './palmar-relief.ts';

/** A level stretch of the distal edge: from..to along the flat strip, cut back by `depth`. mm */
interface Plateau {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

/** Smallest radius of a relief's fillets: the sheet must not crack and the edge must not cut. mm */
const SMALLEST_FILLET = 3;

/** An S-shaped step of two tangent arcs of one radius, between two depths. mm, sweep in radians. */
interface Step {
  readonly length: number;
  readonly radius: number;
  readonly sweep: number;
}

/**
 * The step for a change of depth h. The radius is at least 3 mm and at least h (60 degrees of slope at most, easy to follow with
 * scissors), and for a very shallow step so large that each arc's chord keeps the minimum feature.
 */
function stepFor(h: number): Step {
  const shortArc = (4 * MINIMUM_FEATURE * MINIMUM_FEATURE) / h;
  const radius = Math.max(SMALLEST_FILLET, h, (shortArc + h) / 4);
  return { length: Math.sqrt(h * (4 * radius - h)), radius, sweep: Math.acos(1 - h / (2 * radius)) };
}

/**
 * The distal edge of the flat strip as level stretches, left to right, for zones that must be cut back by at least their depth.
 * The steps lie outside the deeper stretch, so that the full relief reaches from one mid-lateral line to the other; where a shallower
 * stretch is too short for its steps it is cut back as its neighbour is. `endRoom` is what the two end stretches need for their corners.
 */
function distalPlateaus(zones: readonly Plateau[], start: number, end: number, endRoom: number): readonly Plateau[] {
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
function stepped(plateaus: readonly Plateau[], width: number): BrokenLine {
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

/** Radius of the strip's four corners: no square corner may lie on skin. mm */
const CORNER_RADIUS = 3;
const QUARTER_BULGE = Math.tan(Math.PI / 8);

/** First version. The cut outline: straight proximal edge, rounded ends, distal edge with its palmar reliefs; counter-clockwise, lines and arcs. */
export function firstFlatStrip(path: StripPath, reliefs: readonly Relief[], options: StripSettings): FlatStrip {
  const seamEnd = flattened(path.pathLength, options);
  const allowance = endAllowances(options);
  const start = -allowance.start;
  const end = seamEnd + allowance.seam + allowance.trim;
  const depthOf = (zone: PalmarZone) => reliefs.find((r) => r.digit === zone.digit)?.depth ?? 0;
  // The ends lie over each other, so the relief of the band goes on beyond u = 0 and u = L as if it were wound on.
  const clamp = (v: number) => Math.min(end, Math.max(start, v));
  const wound = palmarZones(path)
    .filter((z) => depthOf(z) > 0)
    .flatMap((z) =>
      [-1, 0, 1].map((turn): Plateau => {
        const at = (u: number) => clamp(flattened(u + turn * path.pathLength, options));
        return { from: at(z.uFrom), to: at(z.uTo), depth: depthOf(z) };
      }),
    );
  const plateaus = distalPlateaus(wound, start, end, CORNER_RADIUS + MINIMUM_FEATURE);
  const proximal = [start, end].map((x) => ({ x, y: 0 }));
  return {
    frame: null,
    outline: outlineOf(plateaus, options.width),
    start,
    end,
    seamEnd,
    flatLength: end - start,
    proximal,
    distal: stepped(plateaus, options.width),
  };
}

function outlineOf(plateaus: readonly Plateau[], width: number): LineArcPath {
  const first = plateaus[0] as Plateau;
  const last = plateaus.at(-1) as Plateau;
  const leftRadius = cornerRadius(width - first.depth);
  const rightRadius = cornerRadius(width - last.depth);
  const vertices: Vertex[] = [
    vertex(first.from + leftRadius, 0),
    vertex(last.to - rightRadius, 0, QUARTER_BULGE),
    vertex(last.to, rightRadius),
    vertex(last.to, width - last.depth - rightRadius, QUARTER_BULGE),
    vertex(last.to - rightRadius, width - last.depth),
  ];
  for (let i = plateaus.length - 1; i > 0; i--) vertices.push(...stepBetween(plateaus[i - 1] as Plateau, plateaus[i] as Plateau, width));
  vertices.push(vertex(first.from + leftRadius, width - first.depth, QUARTER_BULGE), vertex(first.from, width - first.depth - leftRadius));
  vertices.push(vertex(first.from, leftRadius, QUARTER_BULGE));
  return { closed: true, vertices };
}

function cornerRadius(height: number): number {
  return Math.min(CORNER_RADIUS, (height - MINIMUM_FEATURE) / 2);
}

/** The step at the common end of two stretches, travelled from right to left; it lies in the shallower one. */
function stepBetween(left: Plateau, right: Plateau, width: number): readonly Vertex[] {
  const { length, sweep } = stepFor(Math.abs(left.depth - right.depth));
  const rising = left.depth < right.depth;
  const from = rising ? left.to : left.to + length;
  const startHeight = width - right.depth;
  const endHeight = width - left.depth;
  const bulge = Math.tan(sweep / 4);
  // Rising leftward the edge turns clockwise first (hollow), then counter-clockwise (round); falling, the other way.
  const sign = rising ? -1 : 1;
  return [
    vertex(from, startHeight, sign * bulge),
    vertex(from - length / 2, (startHeight + endHeight) / 2, -sign * bulge),
    vertex(from - length, endHeight),
  ];
}
