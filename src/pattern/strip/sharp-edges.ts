import { type BrokenLine, clipped, heightAt, heightsBetween, leastDistance, lowestOf } from '../../geometry/broken-line.ts';
import { easeCorners } from '../../geometry/ease-corners.ts';
import type { Point } from '../../geometry/path.ts';
import { rootBetween } from '../../geometry/root.ts';
import type { DigitName } from '../../hand/digits.ts';
import { LENGTH_SOLVED, MINIMUM_FEATURE } from '../../units/tolerance.ts';
import { flatFrame } from './flat-frame.ts';
import type { WidthAt } from './least-width.ts';
import { edgeToCrease, palmarStop } from './palmar-limits.ts';
import { type PalmarZone, palmarZones } from './palmar-zones.ts';
import type { StripSettings } from './strip-options.ts';
import { endAllowances, type FlatFrame, type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingSection } from './strip-sections.ts';

/** Radius of the strip's four corners: no square corner may lie on skin. mm */
export const END_RADIUS = 2;
/** Smallest radius of a corner of the edges: the sheet must not crack and the edge must not cut. mm */
export const SMALLEST_RADIUS = 3.05;
/** Rounding takes no more than this off a corner. mm */
export const MOST_OFF = 0.6;
/** A corner that is moved gets steeper, which is made up for so often. */
const RAISES = 4;
/** Steepest side of a relief: easy to follow with scissors. radians */
export const STEEPEST = Math.PI / 3;
/** From the mid-lateral line to the corner whose arc ends on it, so that the whole relief is level: in radii of the arc. */
const BESIDE_RELIEF = Math.tan(STEEPEST / 2);
/** A relief that begins or ends nearer to an end of the strip than this leaves no room for its corner. mm */
const RELIEF_END_ROOM = 5;
/** Higher than any edge. mm */
const SKY = 300;
/** Places along a bent strip at which its bend is looked at, mm apart. */
const BEND_STEP = 1;

/** The width to keep over a stretch of the strip: the least one, or more where some was missing within a width of it. */
function toKeep(from: number, to: number, wider: readonly WidthAt[], { minimumWidth }: StripSettings): number {
  return Math.max(minimumWidth, ...wider.filter((w) => isNear(w, from, to, minimumWidth)).map((w) => w.width));
}

export function isNear({ v }: WidthAt, from: number, to: number, reach: number): boolean {
  return v > from - reach && v < to + reach;
}

/** How much finer than the plane the unbent strip must be kept where it is bent: corners rounder, features longer. */
export interface Fineness {
  /** What 1 mm along the strip is at least once it is bent, and v where. */
  readonly scale: number;
  readonly at: number;
  readonly radius: number;
  readonly feature: number;
}

function finenessOf(frame: FlatFrame | null, proximal: BrokenLine, distal: BrokenLine): Fineness {
  const [start, end] = [proximal[0]?.x ?? 0, proximal.at(-1)?.x ?? 0];
  let [scale, at] = [1, start];
  if (frame)
    for (let v = start; v <= end; v += BEND_STEP) {
      const here = Math.min(frame.scale(v, heightAt(proximal, v)), frame.scale(v, heightAt(distal, v)));
      if (here < scale) [scale, at] = [here, v];
    }
  return { scale, at, radius: SMALLEST_RADIUS / scale ** 2, feature: MINIMUM_FEATURE / scale };
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
  const levels = proximalLevels(path, settings, wound);
  const drawn = clipped(levels, start, end);
  const fine = finenessOf(frame, drawn, fullWidth(drawn, settings, wider, 1));
  // A corner is moved alike wherever it is drawn, however near an end of the strip is.
  const away = raised(levels, fine);
  const moved = clipped(
    levels.map(({ x, y }, k) => ({ x, y: isStraight ? 0 : (away[k]?.y ?? y) - y })),
    start,
    end,
  );
  const onHand = easedUpward(clipped(away, start, end), fine);
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

/** How far the distal edge is cut back at the midline of a palmar pass, mm. */
export function reliefDepth(
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

export function sectionOf(path: StripPath, digit: DigitName): StandingSection {
  const found = path.hand.sections.find((s) => s.digit === digit);
  if (!found) throw new Error(`no section of ${digit}`);
  return found;
}
