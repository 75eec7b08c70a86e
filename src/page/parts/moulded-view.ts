import { type BrokenLine, heightAt } from '../../geometry/broken-line.ts';
import { type Body, pointAtNormal } from '../../geometry/offset-ellipse.ts';
import type { Point } from '../../geometry/path.ts';
import type { Side } from '../../hand/digits.ts';
import type { DigitMeasures, Hand } from '../../hand/hand.ts';
import type { CoursePiece } from '../../pattern/strip/strip-courses.ts';
import { flattened } from '../../pattern/strip/strip-outline.ts';
import type { StripFigures } from '../../pattern/strip/strip-report.ts';
import type { StandingSection } from '../../pattern/strip/strip-sections.ts';
import { radians } from '../../units/angle.ts';

/** mm; x to the reader's right seen from the fingertips, y dorsal, z distal, 0 at the foremost web. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One shape of the picture, nearest last; `points` in mm on the screen, y down. */
export interface Facet {
  readonly kind: 'finger' | 'band' | 'edge';
  /** 0 (turned away from the light) to 8. */
  readonly shade: number;
  readonly points: readonly Point[];
}

export interface MouldedView {
  readonly facets: readonly Facet[];
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
}

/** Facets must be small against the band's distance from the skin, or the nearer one of two would be drawn first. */
const ROUND_STEPS = 30;
const LONG_STEP = 5;
const BAND_STEP = 2.5;
const BAND_SLICES = 3;
/** Rings of the rounded end past the PIP joint. */
const END_RINGS = 6;
const LIGHT = { x: -0.35, y: 0.75, z: 0.56 };
const SHADES = 9;
const MARGIN = 3;

/**
 * The strip round its digits in three dimensions, in parallel projection: digits are their own sections drawn out along their MP angles
 * from the MP to the PIP joint, the band is the strip's own path with its own width. Nothing here is computed anew.
 * @param turn degrees: about the upright axis, and up
 */
export function mouldedView(figures: StripFigures, hand: Hand, turn: { readonly across: number; readonly up: number }): MouldedView {
  const mirror = (spot: Spot): Spot => (hand.side === ('right' satisfies Side) ? { ...spot, x: -spot.x } : spot);
  const quads: { kind: Facet['kind']; corners: readonly Spot[] }[] = [];
  const { sections } = figures.path.hand;
  for (const s of sections) {
    const measures = hand.digits[s.digit];
    if (measures) for (const corners of fingerQuads(s, measures, figures)) quads.push({ kind: 'finger', corners: corners.map(mirror) });
  }
  quads.push(...bandQuads(figures).map((quad) => ({ ...quad, corners: quad.corners.map(mirror) })));
  const first = sections[0]?.x ?? 0;
  const centre = mirror({ x: (first + (sections.at(-1)?.x ?? 0)) / 2, y: 0, z: 0 });
  const view = turned(radians(turn.across), radians(turn.up), centre);
  const flip = hand.side === 'right' ? -1 : 1;
  const drawn = quads.flatMap(({ kind, corners }) => {
    const seen = corners.map(view);
    const normal = normalOf(seen);
    const facing = flip * normal.z;
    // The back of a facet is never seen: fingers and band are closed.
    if (facing <= 0) return [];
    const light = flip * (normal.x * LIGHT.x + normal.y * LIGHT.y + normal.z * LIGHT.z);
    const shade = Math.min(SHADES - 1, Math.max(0, Math.floor(((light + 1) / 2) * SHADES)));
    const depth = seen.reduce((sum, spot) => sum + spot.z, 0) / seen.length;
    return [{ depth, facet: { kind, shade, points: seen.map(({ x, y }) => ({ x, y: -y })) } satisfies Facet }];
  });
  const facets = drawn.toSorted((a, b) => a.depth - b.depth).map(({ facet }) => facet);
  const xs = facets.flatMap((f) => f.points.map((p) => p.x));
  const ys = facets.flatMap((f) => f.points.map((p) => p.y));
  const minX = Math.min(...xs) - MARGIN;
  const minY = Math.min(...ys) - MARGIN;
  return { facets, minX, minY, width: Math.max(...xs) + MARGIN - minX, height: Math.max(...ys) + MARGIN - minY };
}

/** A digit from its MP joint to its PIP joint and a rounded end: rings of its standing section along its tilted axis. */
function fingerQuads(s: StandingSection, { dorsalLength }: DigitMeasures, { options }: StripFigures): readonly (readonly Spot[])[] {
  // The MP joint lies a lever proximal of the middle of the strip at this digit.
  const start = s.rootLevel + options.proximalGap + options.width / 2 - s.lever;
  const pip = start + dorsalLength * Math.cos(s.theta);
  const count = Math.ceil((pip - start) / LONG_STEP);
  const straight = Array.from({ length: count + 1 }, (_, k) => ({ z: start + ((pip - start) * k) / count, size: 1 }));
  const end = Array.from({ length: END_RINGS }, (_, k) => {
    const angle = ((k + 1) / END_RINGS) * (Math.PI / 2) * 0.995;
    return { z: pip + s.halfDepth * 0.7 * Math.sin(angle), size: Math.cos(angle) };
  });
  const rings = [...straight, ...end].map(({ z, size }) => {
    const center = { x: s.x, y: -(z - start) * Math.tan(s.theta) };
    const body: Body = { center, a: s.halfWidth * size, b: s.standingHalfDepth * size, offset: 0 };
    return Array.from({ length: ROUND_STEPS }, (_, k): Spot => ({ ...pointAtNormal(body, (2 * Math.PI * k) / ROUND_STEPS), z }));
  });
  return rings.slice(1).flatMap((ring, i) =>
    ring.map((spot, k) => {
      const next = (k + 1) % ROUND_STEPS;
      const before = rings[i] ?? ring;
      return [before[k] ?? spot, before[next] ?? spot, ring[next] ?? spot, spot];
    }),
  );
}

/** Both faces of the band and its two edges, slice by slice across its width. */
function bandQuads({ path, flat, onHand, options }: StripFigures): readonly { kind: 'band' | 'edge'; corners: readonly Spot[] }[] {
  const line = path.pieces.flatMap(samples);
  const half = options.thickness / 2;
  const quads: { kind: 'band' | 'edge'; corners: readonly Spot[] }[] = [];
  const edge = (line: BrokenLine, u: number) => heightAt(line, flattened(u - path.pathLength * Math.floor(u / path.pathLength), options));
  for (const [i, here] of line.entries()) {
    const next = line[(i + 1) % line.length];
    if (!next) continue;
    const face = (side: number, from: number, to: number): readonly Spot[] => {
      const at = (p: Sample, share: number): Spot => {
        const proximal = edge(onHand, p.u);
        return {
          x: p.x + side * half * p.nx,
          y: p.y + side * half * p.ny,
          z: proximal + (edge(flat.distal, p.u) - edge(flat.proximal, p.u)) * share,
        };
      };
      return [at(here, from), at(next, from), at(next, to), at(here, to)];
    };
    for (let k = 0; k < BAND_SLICES; k++) {
      const [from, to] = [k / BAND_SLICES, (k + 1) / BAND_SLICES];
      const left = face(1, from, to);
      quads.push({ kind: 'band', corners: left.toReversed() }, { kind: 'band', corners: face(-1, from, to) });
    }
    for (const share of [0, 1]) {
      const [a, b] = face(1, share, share);
      const [c, d] = face(-1, share, share);
      if (a && b && c && d) quads.push({ kind: 'edge', corners: share === 0 ? [a, b, d, c] : [c, d, b, a] });
    }
  }
  return quads;
}

/** A place on the neutral line with the unit normal to the left of travel. */
interface Sample extends Point {
  readonly u: number;
  readonly nx: number;
  readonly ny: number;
}

function samples({ element, u }: CoursePiece): readonly Sample[] {
  const count = Math.max(1, Math.ceil(element.length / BAND_STEP));
  const at = (k: number) => u + (element.length * k) / count;
  if (element.kind === 'line') {
    const { from, to, length } = element;
    if (length === 0) return [];
    const [nx, ny] = [-(to.y - from.y) / length, (to.x - from.x) / length];
    return Array.from({ length: count }, (_, k) => {
      const t = k / count;
      return { u: at(k), x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), nx, ny };
    });
  }
  const { contact, fromNormal, toNormal } = element;
  if (contact.hold === 'pin') return [];
  return Array.from({ length: count }, (_, k) => {
    const normal = fromNormal + ((toNormal - fromNormal) * k) / count;
    // The body lies on its side of the travel; the normal to the left points to it or away from it.
    const sign = -contact.side;
    return { u: at(k), ...pointAtNormal(contact.body, normal), nx: sign * Math.cos(normal), ny: sign * Math.sin(normal) };
  });
}

/** Turns about the upright axis through the centre, then tips up; what comes toward the reader has the larger z. */
function turned(across: number, up: number, centre: Spot): (spot: Spot) => Spot {
  const [ca, sa, cu, su] = [Math.cos(across), Math.sin(across), Math.cos(up), Math.sin(up)];
  return (spot) => {
    const [x, y, z] = [spot.x - centre.x, spot.y - centre.y, spot.z - centre.z];
    const turnedX = x * ca + z * sa;
    const turnedZ = -x * sa + z * ca;
    return { x: turnedX, y: y * cu - turnedZ * su, z: y * su + turnedZ * cu };
  };
}

function normalOf(corners: readonly Spot[]): Spot {
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d) return { x: 0, y: 0, z: 0 };
  // From the diagonals: right also where two corners of a quad fall together.
  const [p, q] = [
    { x: c.x - a.x, y: c.y - a.y, z: c.z - a.z },
    { x: d.x - b.x, y: d.y - b.y, z: d.z - b.z },
  ];
  const n = { x: p.y * q.z - p.z * q.y, y: p.z * q.x - p.x * q.z, z: p.x * q.y - p.y * q.x };
  const size = Math.hypot(n.x, n.y, n.z) || 1;
  return { x: n.x / size, y: n.y / size, z: n.z / size };
}
