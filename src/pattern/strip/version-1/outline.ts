import { type LineArcPath, type Vertex, vertex } from '../../../geometry/path.ts';
import { MINIMUM_FEATURE } from '../../../units/tolerance.ts';
import { type PalmarZone, palmarZones } from '../palmar-zones.ts';
import type { StripSettings } from '../strip-options.ts';
import { endAllowances, type FlatStrip, flattened } from '../strip-outline.ts';
import type { StripPath } from '../strip-path.ts';
import { distalPlateaus, type Plateau, stepFor, stepped } from './distal-edge.ts';
import type { Relief } from './palmar-relief.ts';

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
