import { type LineArcPath, type Vertex, vertex } from '../../geometry/path.ts';
import { MINIMUM_FEATURE } from '../../units/tolerance.ts';
import { distalPlateaus, type Plateau, stepFor } from './distal-edge.ts';
import type { StripOptions } from './strip-options.ts';
import type { StripPath } from './strip-path.ts';
import type { PalmarZone } from './strip-relief.ts';

/** The flat strip: v runs along it from the seam mark (v = 0 is u = 0), w across it from the proximal (0) to the distal edge. mm */
export interface FlatStrip {
  readonly outline: LineArcPath;
  /** v of the two ends. */
  readonly start: number;
  readonly end: number;
  /** v where the band closes: the seam mark of the finishing end. */
  readonly seamEnd: number;
  readonly flatLength: number;
  readonly plateaus: readonly Plateau[];
}

/** Radius of the strip's four corners: no square corner may lie on skin. mm */
const CORNER_RADIUS = 3;
const QUARTER_BULGE = Math.tan(Math.PI / 8);

/** Lengths along the flat strip for lengths along the neutral line: the warm sheet gives the stretch back. */
export function flattened(u: number, options: StripOptions): number {
  return u / (1 + options.stretch);
}

/** How far the strip reaches beyond the two seam marks: half the overlap of a lap, or a whole tab of a pinch; trim at the finishing end only. */
export function endAllowances(options: StripOptions): { readonly start: number; readonly seam: number; readonly trim: number } {
  const seam = options.seam === 'lap' ? options.seamAllowance / 2 : options.seamAllowance;
  return { start: seam, seam, trim: options.trim };
}

/** The cut outline: straight proximal edge, rounded ends, distal edge with its palmar reliefs; counter-clockwise, lines and arcs. */
export function flatStrip(path: StripPath, zones: readonly PalmarZone[], options: StripOptions): FlatStrip {
  const seamEnd = flattened(path.pathLength, options);
  const allowance = endAllowances(options);
  const start = -allowance.start;
  const end = seamEnd + allowance.seam + allowance.trim;
  // The ends lie over each other, so the relief of the band goes on beyond u = 0 and u = L as if it were wound on.
  const wound = zones
    .filter((z) => z.depth > 0)
    .flatMap((z) => [-1, 0, 1].map((turn) => windZone(z, turn * path.pathLength, options, start, end)));
  const plateaus = distalPlateaus(wound, start, end, CORNER_RADIUS + MINIMUM_FEATURE);
  return { outline: outlineOf(plateaus, options.width), start, end, seamEnd, flatLength: end - start, plateaus };
}

function windZone(zone: PalmarZone, shift: number, options: StripOptions, start: number, end: number): Plateau {
  const clamp = (v: number) => Math.min(end, Math.max(start, v));
  return { from: clamp(flattened(zone.uFrom + shift, options)), to: clamp(flattened(zone.uTo + shift, options)), depth: zone.depth };
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
