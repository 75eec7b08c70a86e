import { type BrokenLine, clipped, heightAt, heightsBetween, leastDistance, lowestOf } from '../../geometry/broken-line.ts';
import { easeCorners } from '../../geometry/ease-corners.ts';
import { type Point, pointsAlong, type Segment, segmentBox, segmentLength, segmentsOf } from '../../geometry/path.ts';
import { rootBetween } from '../../geometry/root.ts';
import { type Corner, roundCorners } from '../../geometry/round-corners.ts';
import type { DigitName } from '../../hand/digits.ts';
import { LENGTH_SOLVED, MINIMUM_FEATURE } from '../../units/tolerance.ts';
import { bentOutline, flatFrame } from './flat-frame.ts';
import { narrowPlaces, type WidthAt } from './least-width.ts';
import { edgeToCrease, freeFlexion, palmarStop } from './palmar-limits.ts';
import { type PalmarZone, palmarZones } from './palmar-zones.ts';
import type { StripSettings } from './strip-options.ts';
import { endAllowances, type FlatFrame, type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingSection } from './strip-sections.ts';

/** Radius of the strip's four corners: no square corner may lie on skin. mm */
const END_RADIUS = 2;
/** Smallest radius of a corner of the edges: the sheet must not crack and the edge must not cut; and the one aimed at where it fits. mm */
const SMALLEST_RADIUS = 3.05;
const AIMED_RADIUS = 8;
/** Rounding takes no more than this off a corner. mm */
const MOST_OFF = 0.6;
/** A corner that is moved gets steeper, which is made up for so often. */
const RAISES = 4;
/** Steepest side of a relief: easy to follow with scissors. radians */
const STEEPEST = Math.PI / 3;
/** From the mid-lateral line to the corner whose arc ends on it, so that the whole relief is level: in radii of the arc. */
const BESIDE_RELIEF = Math.tan(STEEPEST / 2);
/** A relief that begins or ends nearer to an end of the strip than this leaves no room for its corner. mm */
const RELIEF_END_ROOM = 5;
/** Higher than any edge. mm */
const SKY = 300;
/** Arcs are looked at in pieces of this length, mm: at the smallest radius they rise over them by 0.002. */
const ARC_STEP = 0.2;
/** Places along a bent strip at which its bend is looked at, mm apart. */
const BEND_STEP = 1;

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

/** The width to keep over a stretch of the strip: the least one, or more where some was missing within a width of it. */
function toKeep(from: number, to: number, wider: readonly WidthAt[], { minimumWidth }: StripSettings): number {
  return Math.max(minimumWidth, ...wider.filter((w) => isNear(w, from, to, minimumWidth)).map((w) => w.width));
}

function isNear({ v }: WidthAt, from: number, to: number, reach: number): boolean {
  return v > from - reach && v < to + reach;
}

/** How much finer than the plane the unbent strip must be kept where it is bent: corners rounder, features longer. */
interface Fineness {
  /** What 1 mm along the strip is at least once it is bent. */
  readonly scale: number;
  readonly radius: number;
  readonly feature: number;
}

function finenessOf(frame: FlatFrame | null, proximal: BrokenLine, distal: BrokenLine): Fineness {
  let scale = 1;
  const [start, end] = [proximal[0]?.x ?? 0, proximal.at(-1)?.x ?? 0];
  if (frame)
    for (let v = start; v <= end; v += BEND_STEP)
      scale = Math.min(scale, frame.scale(v, heightAt(proximal, v)), frame.scale(v, heightAt(distal, v)));
  return { scale, radius: SMALLEST_RADIUS / scale ** 2, feature: MINIMUM_FEATURE / scale };
}

/** The edges as straight lines, before their corners are made round. */
export interface SharpEdges {
  readonly start: number;
  readonly end: number;
  readonly seamEnd: number;
  readonly wound: readonly number[];
  readonly frame: FlatFrame | null;
  readonly fine: Fineness;
  readonly proximal: BrokenLine;
  readonly onHand: BrokenLine;
  readonly moved: BrokenLine;
  readonly sharp: BrokenLine;
  readonly distal: BrokenLine;
  readonly zones: readonly PalmarZone[];
  readonly limits: readonly { readonly zone: PalmarZone; readonly wanted: number }[];
  readonly caps: readonly { readonly zone: PalmarZone; readonly line: BrokenLine; readonly held: boolean }[];
}

/**
 * @param wider where laying them before has left too little, and how wide it is to be there
 * @param lower by how much the relief of each palmar pass is to be lower than its edge
 */
export function sharpEdges(
  path: StripPath,
  settings: StripSettings,
  wider: readonly WidthAt[] = [],
  lower: readonly number[] = [],
): SharpEdges {
  const seamEnd = flattened(path.pathLength, settings);
  const allowance = endAllowances(settings);
  const start = -allowance.start;
  const end = seamEnd + allowance.seam + allowance.trim;
  const wound = windings(path, settings);
  const isStraight = settings.outline === 'straight';
  const frame = isStraight ? null : flatFrame(path, settings, start, end);
  const levels = clipped(proximalLevels(path, settings, wound), start, end);
  const fine = finenessOf(frame, levels, fullWidth(levels, settings, wider, 1));
  const away = raised(levels, fine);
  const moved = levels.map(({ x, y }, k) => ({ x, y: isStraight ? 0 : (away[k]?.y ?? y) - y }));
  const onHand = easedUpward(away, fine);
  const proximal: BrokenLine = isStraight ? [start, end].map((x) => ({ x, y: 0 })) : onHand;
  const full = fullWidth(proximal, settings, wider, fine.scale);
  const zones = palmarZones(path);
  const limits = zones.map((zone) => ({ zone, wanted: wantedLevel(zone, zones, path, settings) }));
  const caps = limits.flatMap(({ zone, wanted }, k) =>
    wound.flatMap((shift) => {
      const from = flattened(zone.uFrom, settings) + shift;
      const to = flattened(zone.uTo, settings) + shift;
      const beside = BESIDE_RELIEF * fine.radius;
      if (to + beside <= start || from - beside >= end) return [];
      const below = isStraight ? heightsBetween(onHand, Math.max(start, from), Math.min(end, to)).greatest : 0;
      const span = { first: from - beside, last: to + beside, wanted: wanted - (lower[k] ?? 0) - below };
      const line = reliefCap(span, proximal, settings, wider, fine.scale);
      return [{ zone, line, held: (line[1]?.y ?? 0) > span.wanted + LENGTH_SOLVED }];
    }),
  );
  const sharp = lowestOf([full, ...caps.map(({ line }) => line)], start, end);
  const distal = easeCorners(sharp, fine.radius, END_RADIUS, fine.feature);
  return { start, end, seamEnd, wound, frame, fine, proximal, onHand, moved, sharp, distal, zones, limits, caps };
}

/** What the reliefs leave of the width at the midline of the palmar pass where it is least, before narrow places are made wider. mm */
export function leastKept(path: StripPath, settings: StripSettings, sharp: SharpEdges): number {
  return Math.min(...sharp.zones.map((zone) => settings.width - reliefDepth(zone, path, settings, sharp)));
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

/** Shifts along v by whole turns of the band: its ends lie over each other, so the edges go on beyond both seam marks as if it were wound on. */
function windings(path: StripPath, settings: StripSettings): readonly number[] {
  return [-1, 0, 1, 2].map((turn) => turn * flattened(path.pathLength, settings));
}

/** The proximal edge on the hand: a gap beyond the level of each web and each digit's root where the band passes them, straight between. */
function proximalLevels(path: StripPath, settings: StripSettings, wound: readonly number[]): BrokenLine {
  const { sections, webs } = path.hand;
  const ofWeb = path.webCrossings.map(({ u, between }) => ({
    u,
    level: webs.find((w) => w.between[0] === between[0])?.level ?? Number.NaN,
  }));
  const ofDigit = path.passes.map(({ u, digit }) => ({ u, level: sections.find((s) => s.digit === digit)?.borderLevel ?? Number.NaN }));
  const turn = [...ofWeb, ...ofDigit].sort((a, b) => a.u - b.u);
  return wound.flatMap((shift) => turn.map(({ u, level }) => ({ x: flattened(u, settings) + shift, y: level + settings.proximalGap })));
}

/** The strip lies above its proximal edge, so what must be taken away for the corners' arcs is taken there. */
function easedUpward(line: BrokenLine, { radius, feature }: Fineness): BrokenLine {
  const upsideDown = (points: BrokenLine) => points.map((p) => ({ x: p.x, y: -p.y }));
  return upsideDown(easeCorners(upsideDown(line), radius, END_RADIUS, feature));
}

/** Corners over the webs that are so steep that the smallest arc would bring the edge nearer to the web by more than rounding may are moved away from it by what is over. */
function raised(line: BrokenLine, { radius }: Fineness): BrokenLine {
  let points = line;
  for (let round = 0; round < RAISES; round++)
    points = line.map((p, i) => {
      const [before, here, after] = [points[i - 1], points[i], points[i + 1]];
      if (!before || !here || !after) return p;
      const [rise, fall] = [Math.atan2(here.y - before.y, here.x - before.x), Math.atan2(after.y - here.y, after.x - here.x)];
      const off = fall < rise ? radius * (1 / Math.cos((rise - fall) / 2) - 1) : 0;
      return { x: p.x, y: p.y + Math.max(0, off / Math.cos((rise + fall) / 2) - MOST_OFF) };
    });
  return points;
}

/** The distal edge where nothing is cut back: the width along the digits, and more where a steep ramp would leave less than the least width square to it. */
function fullWidth(proximal: BrokenLine, settings: StripSettings, wider: readonly WidthAt[], scale: number): BrokenLine {
  const { width } = settings;
  const needed = proximal.slice(1).map((to, k) => {
    const from = proximal[k] as Point;
    return Math.max(width, toKeep(from.x, to.x, wider, settings) * Math.hypot(1, (to.y - from.y) / (scale * (to.x - from.x))));
  });
  return proximal.map((p, k) => ({ x: p.x, y: p.y + Math.max(needed[k - 1] ?? width, needed[k] ?? width) }));
}

function wantedLevel(zone: PalmarZone, zones: readonly PalmarZone[], path: StripPath, settings: StripSettings): number {
  const section = sectionOf(path, zone.digit);
  const stop = palmarStop(section, path, zones, settings);
  return section.rootLevel + section.palmarRoom - edgeToCrease(stop, settings.freeFlexion, settings.thickness);
}

/**
 * A relief as the line that the distal edge stays under: level from one mid-lateral line to the other, rising beside it. Never so low that less than
 * the least width is left, square to the proximal edge, nor so that a side of it cuts into a ramp that is steeper. Where it would end near an end of the strip it goes on to it.
 */
function reliefCap(
  { first, last, wanted }: { readonly first: number; readonly last: number; readonly wanted: number },
  proximal: BrokenLine,
  settings: StripSettings,
  wider: readonly WidthAt[],
  scale: number,
): BrokenLine {
  const [start, end] = [proximal[0]?.x ?? 0, proximal.at(-1)?.x ?? 0];
  let low = first;
  let high = last;
  if (low < start + RELIEF_END_ROOM) low = Math.min(low, start - RELIEF_END_ROOM);
  if (high > end - RELIEF_END_ROOM) high = Math.max(high, end + RELIEF_END_ROOM);
  if (low > end - RELIEF_END_ROOM) low = end - RELIEF_END_ROOM;
  if (high < start + RELIEF_END_ROOM) high = start + RELIEF_END_ROOM;
  const [from, to] = [Math.max(start, low), Math.min(end, high)];
  const top = heightsBetween(proximal, from, to).greatest;
  const near = wider.filter((w) => isNear(w, from, to, settings.minimumWidth)).map((w) => w.width);
  const [least, asked] = [settings.minimumWidth, Math.max(0, ...near)];
  const foot = [from, to].map((x) => ({ x: scale * x, y: 0 }));
  const room = (reach: number, level: number) => {
    const below = clipped(proximal, Math.max(start, from - reach), Math.min(end, to + reach)).map((p) => ({ x: scale * p.x, y: p.y }));
    return leastDistance(
      below,
      foot.map(({ x }) => ({ x, y: level })),
    );
  };
  // On a ramp the proximal edge may come nearest beside the relief, which is looked at only where it was too near.
  const missing = (level: number) =>
    level <= top ? -1 - least : Math.min(room(0, level) - least, near.length > 0 ? room(least, level) - asked : Number.POSITIVE_INFINITY);
  const run = SKY / Math.tan(STEEPEST);
  const cap = (level: number): BrokenLine => [
    { x: low - run, y: level + SKY },
    { x: low, y: level },
    { x: high, y: level },
    { x: high + run, y: level + SKY },
  ];
  const beside = wider.filter((w) => isNear(w, from, to, run) && !isNear(w, from, to, settings.minimumWidth));
  const missingBeside = (level: number) =>
    Math.min(
      ...beside.map(
        ({ v, width }) => roomBetween(proximal, cap(level), Math.max(start, v - width), Math.min(end, v + width), scale) - width,
      ),
    );
  const missingAll = (level: number) => Math.min(missing(level), missingBeside(level));
  const level =
    missingAll(wanted) >= 0 ? wanted : (rootBetween(missingAll, Math.max(wanted, top + 1e-6), top + SKY, LENGTH_SOLVED) ?? wanted);
  return cap(level);
}

/** How far apart two lines are over a stretch; where the lower one rises over the other, by how much less than nothing. mm */
function roomBetween(lower: BrokenLine, upper: BrokenLine, from: number, to: number, scale: number): number {
  const [below, above] = [clipped(lower, from, to), clipped(upper, from, to)];
  const least = Math.min(...[...below, ...above].map(({ x }) => heightAt(above, x) - heightAt(below, x)));
  const along = (line: BrokenLine) => line.map((p) => ({ x: scale * p.x, y: p.y }));
  return least <= 0 ? least : leastDistance(along(below), along(above));
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

/** How far the distal edge is cut back at the midline of a palmar pass, mm. */
function reliefDepth(
  zone: PalmarZone,
  path: StripPath,
  settings: StripSettings,
  { distal, proximal, start, end }: Pick<FlatStrip, 'distal' | 'proximal' | 'start' | 'end'>,
): number {
  const at = (u: number) => flattened(u, settings);
  // The pass nearest to the drawn strip; one that begins before the seam's starting end is drawn again at the other one.
  const length = at(path.pathLength);
  const shift = at(zone.uFrom) < start && at(zone.uTo) + length <= end ? length : 0;
  const middle = at(zone.pass.u) + shift;
  return Math.max(0, settings.width - (heightAt(distal, middle) - heightAt(proximal, middle)));
}

function sectionOf(path: StripPath, digit: DigitName): StandingSection {
  const found = path.hand.sections.find((s) => s.digit === digit);
  if (!found) throw new Error(`no section of ${digit}`);
  return found;
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
