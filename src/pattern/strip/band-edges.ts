import { type BrokenLine, clipped, heightAt, heightsBetween, leastDistance, lowestOf } from '../../geometry/broken-line.ts';
import { easeCorners } from '../../geometry/ease-corners.ts';
import type { Point } from '../../geometry/path.ts';
import { rootBetween } from '../../geometry/root.ts';
import { type Corner, roundCorners } from '../../geometry/round-corners.ts';
import type { DigitName } from '../../hand/digits.ts';
import { LENGTH_SOLVED } from '../../units/tolerance.ts';
import { edgeToCrease, freeFlexion, palmarStop } from './palmar-limits.ts';
import { type PalmarZone, palmarZones } from './palmar-zones.ts';
import type { StripSettings } from './strip-options.ts';
import { endAllowances, type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingSection } from './strip-sections.ts';

/** Radius of the strip's four corners: no square corner may lie on skin. mm */
const END_RADIUS = 2;
/** Smallest radius of a corner of the edges: the sheet must not crack and the edge must not cut; and the one aimed at where it fits. mm */
const SMALLEST_RADIUS = 3.05;
const AIMED_RADIUS = 8;
/** Rounding takes no more than this off a corner. mm */
const MOST_OFF = 0.6;
/** Steepest side of a relief: easy to follow with scissors. radians */
const STEEPEST = Math.PI / 3;
/** From the mid-lateral line to the corner whose arc ends on it, so that the whole relief is level. mm */
const BESIDE_RELIEF = SMALLEST_RADIUS * Math.tan(STEEPEST / 2);
/** Corners nearer to an end of the strip than this leave no room for its own corner. mm */
const END_ROOM = 4.5;
const RELIEF_END_ROOM = 5;
/** Higher than any edge. mm */
const SKY = 80;

/** What the palmar edge leaves free at one pass of a digit. Levels along the digits, mm, 0 at the foremost web; degrees. */
export interface PalmarEdge {
  readonly digit: DigitName;
  readonly zone: PalmarZone;
  /** Where the edge would have to be for the wanted flexion. */
  readonly wanted: number;
  /** The most distal that it is between the digit's mid-lateral lines. */
  readonly reached: number;
  /** How far it is cut back at the midline. */
  readonly depth: number;
  readonly freeFlexion: number;
}

export interface BandEdges {
  readonly flat: FlatStrip;
  /** The distal edge before what is too narrow for round corners was taken away. */
  readonly sharp: BrokenLine;
  /** Level of the proximal edge on the hand, by v; of a straight strip after it was pulled to follow the webs. */
  readonly onHand: BrokenLine;
  readonly palmar: readonly PalmarEdge[];
}

/** The edges of the strip and its outline (model rules 11 to 13): counter-clockwise, lines and arcs. */
export function bandEdges(path: StripPath, settings: StripSettings): BandEdges {
  const seamEnd = flattened(path.pathLength, settings);
  const allowance = endAllowances(settings);
  const start = -allowance.start;
  const end = seamEnd + allowance.seam + allowance.trim;
  const wound = windings(path, settings);
  const onHand = easedUpward(awayFromEnds(clipped(proximalLevels(path, settings, wound), start, end)));
  const isStraight = settings.outline === 'straight';
  const proximal: BrokenLine = isStraight ? [start, end].map((x) => ({ x, y: 0 })) : onHand;
  const full = fullWidth(proximal, settings);
  const zones = palmarZones(path);
  const limits = zones.map((zone) => ({ zone, wanted: wantedLevel(zone, zones, path, settings) }));
  const caps = limits.flatMap(({ zone, wanted }) =>
    wound.flatMap((shift) => {
      const from = flattened(zone.uFrom, settings) + shift;
      const to = flattened(zone.uTo, settings) + shift;
      if (to + BESIDE_RELIEF <= start || from - BESIDE_RELIEF >= end) return [];
      const below = isStraight ? heightsBetween(onHand, Math.max(start, from), Math.min(end, to)).greatest : 0;
      return [reliefCap(from, to, wanted - below, proximal, settings.minimumWidth, start, end)];
    }),
  );
  const sharp = lowestOf([full, ...caps], start, end);
  const distal = easeCorners(sharp, SMALLEST_RADIUS, END_RADIUS);
  const outline = rounded(proximal, distal, new Set(caps.flatMap((cap) => cap.map(key))));
  const flat = { outline, start, end, seamEnd, flatLength: end - start, proximal, distal };
  return { flat, sharp, onHand, palmar: limits.map((limit) => palmarEdge(limit, zones, path, settings, { flat, onHand })) };
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
function easedUpward(line: BrokenLine): BrokenLine {
  const upsideDown = (points: BrokenLine) => points.map((p) => ({ x: p.x, y: -p.y }));
  return upsideDown(easeCorners(upsideDown(line), SMALLEST_RADIUS, END_RADIUS));
}

/** Corners that lie too near to an end are slid inward along the edge that leads away from it. */
function awayFromEnds(line: BrokenLine): BrokenLine {
  const slid = (points: BrokenLine): BrokenLine => {
    const [end, near, next] = points;
    if (!end || !near || !next || Math.abs(near.x - end.x) >= END_ROOM) return points;
    const inner = points.slice(1).findIndex((p) => Math.abs(p.x - end.x) >= END_ROOM + 1);
    if (inner < 0) return [end, points.at(-1) as Point];
    const x = end.x + Math.sign(next.x - end.x) * END_ROOM;
    const sorted = end.x < next.x ? points : points.toReversed();
    return [end, { x, y: heightAt(sorted, x) }, ...points.slice(1 + inner)];
  };
  return slid(slid(line).toReversed()).toReversed();
}

/** The distal edge where nothing is cut back: the width along the digits, and more where a steep ramp would leave less than the least width square to it. */
function fullWidth(proximal: BrokenLine, { width, minimumWidth }: StripSettings): BrokenLine {
  const needed = proximal.slice(1).map((to, k) => {
    const from = proximal[k] as Point;
    return Math.max(width, minimumWidth * Math.hypot(1, (to.y - from.y) / (to.x - from.x)));
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
 * the least width is left, square to the proximal edge. Where it would end near an end of the strip it goes on to it.
 */
function reliefCap(from: number, to: number, wanted: number, proximal: BrokenLine, least: number, start: number, end: number): BrokenLine {
  let low = from - BESIDE_RELIEF;
  let high = to + BESIDE_RELIEF;
  if (low < start + RELIEF_END_ROOM) low = Math.min(low, start - RELIEF_END_ROOM);
  if (high > end - RELIEF_END_ROOM) high = Math.max(high, end + RELIEF_END_ROOM);
  if (low > end - RELIEF_END_ROOM) low = end - RELIEF_END_ROOM;
  if (high < start + RELIEF_END_ROOM) high = start + RELIEF_END_ROOM;
  const under = clipped(proximal, Math.max(start, low), Math.min(end, high));
  const top = Math.max(...under.map((p) => p.y));
  const narrowest = (level: number) =>
    level <= top
      ? -1
      : leastDistance(
          under,
          [0, under.length - 1].map((k) => ({ x: (under.at(k === 0 ? 0 : -1) as Point).x, y: level })),
        );
  const missing = (level: number) => narrowest(level) - least;
  const level = missing(wanted) >= 0 ? wanted : (rootBetween(missing, Math.max(wanted, top + 1e-6), top + SKY, LENGTH_SOLVED) ?? wanted);
  const run = SKY / Math.tan(STEEPEST);
  return [
    { x: low - run, y: level + SKY },
    { x: low, y: level },
    { x: high, y: level },
    { x: high + run, y: level + SKY },
  ];
}

function palmarEdge(
  { zone, wanted }: { readonly zone: PalmarZone; readonly wanted: number },
  zones: readonly PalmarZone[],
  path: StripPath,
  settings: StripSettings,
  { flat, onHand }: Pick<BandEdges, 'flat' | 'onHand'>,
): PalmarEdge {
  const section = sectionOf(path, zone.digit);
  const at = (u: number) => flattened(u, settings);
  // The pass nearest to the drawn strip; one that begins before the seam's starting end is drawn again at the other one.
  const length = flattened(path.pathLength, settings);
  const shift = at(zone.uFrom) < flat.start && at(zone.uTo) + length <= flat.end ? length : 0;
  const from = Math.max(flat.start, at(zone.uFrom) + shift);
  const to = Math.min(flat.end, at(zone.uTo) + shift);
  const spots = [from, to, at(zone.pass.u) + shift, ...[...flat.distal, ...onHand].map((p) => p.x).filter((x) => x > from && x < to)];
  const level = (x: number) => heightAt(flat.distal, x) - heightAt(flat.proximal, x) + heightAt(onHand, x);
  const reached = Math.max(...spots.map(level));
  const middle = at(zone.pass.u) + shift;
  const stop = palmarStop(section, path, zones, settings);
  return {
    digit: zone.digit,
    zone,
    wanted,
    reached,
    depth: Math.max(0, settings.width - (heightAt(flat.distal, middle) - heightAt(flat.proximal, middle))),
    freeFlexion: freeFlexion(stop, section.rootLevel + section.palmarRoom - reached, settings.thickness),
  };
}

function sectionOf(path: StripPath, digit: DigitName): StandingSection {
  const found = path.hand.sections.find((s) => s.digit === digit);
  if (!found) throw new Error(`no section of ${digit}`);
  return found;
}

const key = (p: Point) => `${p.x.toFixed(6)} ${p.y.toFixed(6)}`;

/** @param hollows corners of reliefs, whose arcs end where the relief begins */
function rounded(proximal: BrokenLine, distal: BrokenLine, hollows: ReadonlySet<string>) {
  const corners = (line: BrokenLine): Corner[] =>
    line.map((p, i) => {
      const before = line[i - 1];
      const after = line[i + 1];
      if (!before || !after) return { ...p, radius: END_RADIUS };
      const turn = Math.atan2(after.y - p.y, after.x - p.x) - Math.atan2(p.y - before.y, p.x - before.x);
      const off = 1 / Math.cos(turn / 2) - 1;
      const fits = off > 0 ? MOST_OFF / off : AIMED_RADIUS;
      return { ...p, radius: hollows.has(key(p)) ? SMALLEST_RADIUS : Math.max(SMALLEST_RADIUS, Math.min(AIMED_RADIUS, fits)) };
    });
  return roundCorners([...corners(proximal), ...corners(distal).reverse()]).outline;
}
