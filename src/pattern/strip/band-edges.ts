import { type BrokenLine, heightAt } from '../../geometry/broken-line.ts';
import { type Point, pointsAlong, type Segment, segmentBox, segmentLength, segmentsOf } from '../../geometry/path.ts';
import { type Corner, roundCorners } from '../../geometry/round-corners.ts';
import type { DigitName } from '../../hand/digits.ts';
import { bentOutline } from './flat-frame.ts';
import { narrowPlaces, type WidthAt } from './least-width.ts';
import { freeFlexion, palmarStop } from './palmar-limits.ts';
import type { PalmarZone } from './palmar-zones.ts';
import {
  END_RADIUS,
  type Fineness,
  isNear,
  MOST_OFF,
  reliefDepth,
  type SharpEdges,
  SMALLEST_RADIUS,
  STEEPEST,
  sectionOf,
  sharpEdges,
} from './sharp-edges.ts';
import type { StripSettings } from './strip-options.ts';
import { type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';

/** The radius aimed at for a corner of the edges, where it fits. mm */
const AIMED_RADIUS = 8;
/** Arcs are looked at in pieces of this length, mm: at the smallest radius they rise over them by 0.002. */
const ARC_STEP = 0.2;

/** What the palmar edge leaves free at one pass of a digit. Levels along the digits, mm, 0 at the foremost web; degrees. */
export interface PalmarEdge {
  readonly digit: DigitName;
  readonly zone: PalmarZone;
  /** Where the edge would have to be for the wanted flexion. */
  readonly wanted: number;
  /** The most distal that the finished edge is between the digit's mid-lateral lines. */
  readonly reached: number;
  /** The least width stands in the way of the wanted flexion. */
  readonly held: boolean;
  /** How far it is cut back at the midline; and how far it was to be before narrow places were made wider. */
  readonly depth: number;
  readonly intended: number;
  readonly freeFlexion: number;
}

export interface BandEdges {
  readonly flat: FlatStrip;
  /** The distal edge before what is too narrow for round corners was taken away. */
  readonly sharp: BrokenLine;
  /** Level of the proximal edge on the hand, by v; of a straight strip after it was pulled to follow the webs. */
  readonly onHand: BrokenLine;
  /** By how much steep corners of the proximal edge were moved away from the web, by v, so that their arcs come no nearer to it than others do. */
  readonly moved: BrokenLine;
  readonly palmar: readonly PalmarEdge[];
  /** Where the finished strip is narrowest, if it is under its least width there by more than counts. */
  readonly tooNarrow: WidthAt | null;
}

/** Rounds of laying the edges anew where rounding has left less than the least width or a relief too high; each adds or takes away what was missing. */
const ROUNDS = 12;
/** A finished edge counts as far enough from the crease within this, mm. */
const LEVEL_KEPT = 0.02;
/** What the round corner at the foot of a relief adds to the width there, mm. */
const HOLLOW = SMALLEST_RADIUS * (1 / Math.cos(STEEPEST / 2) - 1);
/** The least width counts as kept within this, mm. */
const WIDTH_KEPT = 0.005;
/** A finished strip that misses its least width by more is said to. mm */
const WIDTH_MISSED = 0.05;

/**
 * The edges of the strip and its outline (model rules 11 to 13, 18): counter-clockwise, lines and arcs. Corners are made round by taking away, and on a ramp the
 * proximal edge comes nearest beside a relief; where that leaves less than the least width the edges are laid again, rounder by less and then with as much more as was missing.
 * An arc in a hollow of the distal edge adds; where that brings it nearer to a crease than is wanted, the relief there is laid lower by as much, as far as the least width allows.
 */
export function bandEdges(path: StripPath, settings: StripSettings, sharp = sharpEdges(path, settings)): BandEdges {
  const least = settings.minimumWidth;
  const first = layEdges(path, settings, sharp, []);
  let laid = first;
  const wider: WidthAt[] = [];
  const lower = first.palmar.map(() => 0);
  for (let round = 0; round < ROUNDS; round++) {
    const high = laid.palmar.map(({ reached, wanted, held }) => (held ? 0 : reached - wanted));
    if (laid.narrow.length === 0 && high.every((excess) => excess <= LEVEL_KEPT)) break;
    for (const { v, width } of laid.narrow) {
      const k = wider.findIndex((w) => Math.abs(w.v - v) < least / 2);
      const known = wider[k];
      if (known) wider[k] = { v, width: known.width + least - width + WIDTH_KEPT / 2 };
      else wider.push({ v, width: least - HOLLOW });
    }
    for (const [k, excess] of high.entries()) if (excess > LEVEL_KEPT) lower[k] = (lower[k] ?? 0) + excess;
    laid = layEdges(path, settings, sharpEdges(path, settings, wider, lower), wider);
  }
  const missed = laid.narrow.filter(({ width }) => width < least - WIDTH_MISSED).toSorted((a, b) => a.width - b.width);
  const tooNarrow = missed[0] ?? null;
  return { ...laid, tooNarrow, palmar: laid.palmar.map((p, k) => ({ ...p, intended: first.palmar[k]?.depth ?? p.depth })) };
}

function layEdges(
  path: StripPath,
  settings: StripSettings,
  edges: SharpEdges,
  wider: readonly WidthAt[],
): Omit<BandEdges, 'tooNarrow'> & { readonly narrow: readonly WidthAt[] } {
  const { start, end, seamEnd, wound, frame, fine, proximal, onHand, moved, sharp, distal, zones, limits, caps } = edges;
  const isStraight = settings.outline === 'straight';
  const unbent = rounded(proximal, distal, new Set(caps.flatMap(({ line }) => line.map(key))), fine, (x) =>
    wider.some((w) => isNear(w, x, x, settings.minimumWidth)),
  );
  const outline = frame ? bentOutline(unbent, frame) : unbent;
  const flat = { outline, frame, start, end, seamEnd, flatLength: end - start, proximal, distal };
  const narrow = narrowPlaces(unbent, settings.minimumWidth - WIDTH_KEPT, frame ? (p) => frame.place(p.x, p.y) : undefined);
  // How it lies on the hand, where a straight strip is pulled to it.
  const raise = (p: Point) => ({ x: p.x, y: p.y + heightAt(onHand, p.x) - heightAt(proximal, p.x) });
  const finished = {
    edges: segmentsOf(unbent),
    pointsOf: (edge: Segment) => (isStraight ? finishedPoints(edge, onHand).map(raise) : finishedPoints(edge)),
  };
  const palmar = limits.map((limit) => {
    const held = caps.some((cap) => cap.zone === limit.zone && cap.held);
    return { ...palmarEdge(limit, zones, path, settings, { flat, finished, wound }), held };
  });
  return { flat, narrow, sharp, onHand, moved, palmar };
}

/** A finished outline, edge by edge. */
interface FinishedEdges {
  readonly edges: readonly Segment[];
  /** Points of an edge as it lies on the hand, both ends with them. */
  readonly pointsOf: (edge: Segment) => readonly Point[];
}

/** Points of an edge so near together that no arc rises over the chords between them by more than counts; of a line also those at the corners of a line that it is pulled to. */
function finishedPoints(edge: Segment, pulledTo: BrokenLine = []): readonly Point[] {
  const { from, to, bulge } = edge;
  if (bulge !== 0) return [...pointsAlong(edge, Math.max(1, Math.ceil(segmentLength(edge) / ARC_STEP))), to];
  const between = pulledTo.flatMap(({ x }) => ((x - from.x) * (to.x - x) > 0 ? [(x - from.x) / (to.x - from.x)] : []));
  const along = (share: number) => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
  return [from, ...between.toSorted((a, b) => a - b).map(along), to];
}

/** The highest that a closed outline gets between two x; -Infinity where it does not reach. */
function highestBetween({ edges, pointsOf }: FinishedEdges, from: number, to: number): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (const edge of edges) {
    const { minX, maxX } = segmentBox(edge);
    if (maxX < from || minX > to) continue;
    const points = pointsOf(edge);
    for (let k = 1; k < points.length; k++) {
      const [p, q] = [points[k - 1] as Point, points[k] as Point];
      const [low, high] = p.x < q.x ? [p, q] : [q, p];
      if (high.x < from || low.x > to) continue;
      const at = (x: number) => (high.x === low.x ? Math.max(p.y, q.y) : low.y + ((high.y - low.y) * (x - low.x)) / (high.x - low.x));
      highest = Math.max(highest, at(Math.max(from, low.x)), at(Math.min(to, high.x)));
    }
  }
  return highest;
}

function palmarEdge(
  { zone, wanted }: { readonly zone: PalmarZone; readonly wanted: number },
  zones: readonly PalmarZone[],
  path: StripPath,
  settings: StripSettings,
  { flat, finished, wound }: { readonly flat: FlatStrip; readonly finished: FinishedEdges; readonly wound: readonly number[] },
): Omit<PalmarEdge, 'held'> {
  const section = sectionOf(path, zone.digit);
  const at = (u: number) => flattened(u, settings);
  // Under the lap a stretch is drawn at both ends of the strip.
  const stretches = wound
    .map((shift) => [at(zone.uFrom) + shift, at(zone.uTo) + shift] as const)
    .filter(([from, to]) => to >= flat.start && from <= flat.end);
  const reached = Math.max(...stretches.map(([from, to]) => highestBetween(finished, from, to)));
  const stop = palmarStop(section, path, zones, settings);
  const depth = reliefDepth(zone, path, settings, flat);
  return {
    digit: zone.digit,
    zone,
    wanted,
    reached,
    depth,
    intended: depth,
    freeFlexion: freeFlexion(stop, section.rootLevel + section.palmarRoom - reached, settings.thickness),
  };
}

const key = (p: Point) => `${p.x.toFixed(6)} ${p.y.toFixed(6)}`;

/**
 * @param hollows corners of reliefs, whose arcs end where the relief begins
 * @param isTight whether the strip is so narrow at v that its corners are to take away as little as they can
 */
function rounded(
  proximal: BrokenLine,
  distal: BrokenLine,
  hollows: ReadonlySet<string>,
  { radius, feature }: Fineness,
  isTight: (v: number) => boolean,
) {
  const corners = (line: BrokenLine): Corner[] =>
    line.map((p, i) => {
      const before = line[i - 1];
      const after = line[i + 1];
      if (!before || !after) return { ...p, radius: END_RADIUS };
      const turn = Math.atan2(after.y - p.y, after.x - p.x) - Math.atan2(p.y - before.y, p.x - before.x);
      const off = 1 / Math.cos(turn / 2) - 1;
      const fits = off > 0 ? MOST_OFF / off : AIMED_RADIUS;
      return { ...p, radius: hollows.has(key(p)) || isTight(p.x) ? radius : Math.max(radius, Math.min(AIMED_RADIUS, fits)) };
    });
  return roundCorners([...corners(proximal), ...corners(distal).reverse()], feature).outline;
}
