import { chordPoints, insidePolygon } from '../geometry/inside.ts';
import { boxOf, type Point } from '../geometry/path.ts';
import type { DigitName } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import { degrees, radians } from '../units/angle.ts';
import { type DrawnPlate, type FlatPlate, readFlatPlate } from './flat-plate.ts';
import { type FoldedSheet, foldSheet, type Side } from './fold-sheet.ts';
import { byFinger, fingerUnder, type HandModel, handModel, type ModelFinger, skinGap } from './hand-model.ts';
import { dot, minus, type Point3, size } from './space.ts';

/** What laying a flat sheet into space asks of it at a place. */
interface Strain {
  /** Greatest principal stretch or squeeze, as a share: 0 where lengths are kept. */
  readonly stretch: number;
  /** By how much a right angle drawn along and across is no longer one. degrees */
  readonly shear: number;
}

/** Side of the small square that is laid into space. mm */
const SIDE = 0.01;

/**
 * Strain of a sheet at p, from where a small square there comes to lie. `into` must treat the three corners alike: a fold that tells sides of
 * a slot apart takes p's side for all of them.
 */
export function strainAt(into: (p: Point) => Point3, p: Point): Strain {
  const origin = into(p);
  const across = minus(into({ x: p.x + SIDE, y: p.y }), origin);
  const along = minus(into({ x: p.x, y: p.y + SIDE }), origin);
  const [xx, yy, xy] = [dot(across, across), dot(along, along), dot(across, along)].map((value) => value / SIDE ** 2) as [
    number,
    number,
    number,
  ];
  const middle = (xx + yy) / 2;
  const radius = Math.hypot((xx - yy) / 2, xy);
  const [most, least] = [Math.sqrt(middle + radius), Math.sqrt(Math.max(0, middle - radius))];
  const cosine = dot(across, along) / (size(across) * size(along));
  return { stretch: Math.max(most - 1, 1 - least), shear: Math.abs(90 - degrees(Math.acos(Math.max(-1, Math.min(1, cosine))))) };
}

/** What folding a drawn plate and laying it on the modelled hand found. mm and degrees. */
export interface FoldFindings {
  /** Greatest principal stretch or squeeze of the sheet, as a share, and greatest shear. */
  readonly stretch: number;
  readonly shear: number;
  /** Skin to plate, over knuckles and fingers: the least anywhere over a finger's width, negative where the plate presses in; and the most over the midlines. */
  readonly leastGap: number;
  readonly leastAt: DigitName;
  readonly worstGap: number;
  readonly worstAt: DigitName;
  /** How far an MP joint lies from its bend line, at most, when the line lies half-way between those furthest off on both sides. */
  readonly mpMiss: number;
  /** How far a finger is pushed sideways beyond what fingers do of themselves when they bend. */
  readonly swing: number;
  /** From the plate past the radial mid-lateral line to the thumb web; null where nothing passes that line. */
  readonly thumbClearance: number | null;
  /** Least skin left free along a finger to its PIP joint (back) or PIP crease (palm side), at every point of the edge. */
  readonly pipClearance: number;
  readonly wristClearance: number;
  /** How far the marked mid-lateral lines of the hand are off; null where none are marked. */
  readonly sideMiss: number | null;
  /** Places of the sheet that were laid. */
  readonly points: number;
}

/** Distance of the places at which strain and gap are looked at. mm */
const GRID = 2;
/** Distance of the places along the edge. mm */
const EDGE_STEP = 1;
/** How near to a finger's middle the sheet should lie to it. mm */
const ON_MIDLINE = 2;
/** How far bent fingers come toward the long one of themselves, degrees: ring and little, in 30 volunteers (an alignment study, abstract seen). */
const CONVERGENCE: Readonly<Record<DigitName, number>> = { index: 0, long: 0, ring: 9, little: 19 };

/**
 * Folds a drawn plate along its own marks and lays it on a hand built from the measures. Shares nothing with the layout: marks in, findings out.
 * Null where the drawing lacks a line that folding needs, or the hand a measure.
 * @param webGap distance between neighbouring fingers at mid phalanx, mm
 */
export function judgePlate(drawn: DrawnPlate, hand: Hand, webGap: number): FoldFindings | null {
  const laid = layPlate(drawn, hand, webGap);
  if (!laid) return null;
  const { sheet, model, flat } = laid;
  const polygon = chordPoints(flat.outline);
  const box = boxOf([flat.outline]);
  let [stretch, shear, points] = [0, 0, 0];
  const gaps: { readonly digit: DigitName; readonly gap: number; readonly middle: boolean }[] = [];
  const half = drawn.thickness / 2;
  for (let x = box.minX + GRID / 2; x < box.maxX; x += GRID) {
    for (let y = box.minY + GRID / 2; y < box.maxY; y += GRID) {
      const p = { x, y };
      if (!insidePolygon(polygon, p)) continue;
      points++;
      const side = sheet.sideOf(p);
      if (y < side.beginAt(x)) continue;
      const strain = strainAt((q) => sheet.into(q, side), p);
      stretch = Math.max(stretch, strain.stretch);
      shear = Math.max(shear, strain.shear);
      const place = laid.place(p, side);
      const finger = fingerUnder(model, side.digits, place);
      const gap = skinGap(model, finger, place);
      const middle = Math.abs(byFinger(model, finger, place).beside) <= ON_MIDLINE;
      if (gap !== null) gaps.push({ digit: finger.digit, gap: gap - half, middle });
    }
  }
  const least = gaps.reduce((a, b) => (b.gap < a.gap ? b : a));
  const worst = gaps.filter((g) => g.middle).reduce((a, b) => (b.gap > a.gap ? b : a));
  const { pipClearance, wristClearance, thumbClearance } = edgeClearances(laid, polygon);
  return {
    stretch,
    shear,
    leastGap: least.gap,
    leastAt: least.digit,
    worstGap: worst.gap,
    worstAt: worst.digit,
    mpMiss: mpMiss(laid),
    swing: swing(laid),
    thumbClearance,
    pipClearance,
    wristClearance,
    sideMiss: sideMiss(laid),
    points,
  };
}

/** A folded plate on its hand. */
interface LaidPlate {
  readonly flat: FlatPlate;
  readonly sheet: FoldedSheet;
  readonly model: HandModel;
  /** From the flat plate to the hand, before folding. */
  readonly moved: Point;
  /** Where a place of the flat sheet comes to lie by the hand. */
  readonly place: (p: Point, side?: Side) => Point3;
}

/** Folds a drawn plate and slides it over the hand until its marked MP joints lie, on average, over the hand's. Null as `judgePlate`. */
function layPlate(drawn: DrawnPlate, hand: Hand, webGap: number): LaidPlate | null {
  const flat = readFlatPlate(drawn);
  const middle = drawn.clearance + drawn.thickness / 2;
  const model = handModel(hand, drawn.face, drawn.digits, drawn.angle, webGap, middle);
  if (!flat || !model) return null;
  const sense = drawn.face === 'dorsal' ? -1 : 1;
  const sheet = foldSheet(flat, drawn.angle, sense, radians(drawn.angle) * (drawn.face === 'dorsal' ? model.skin + middle : middle));
  // Seen from the joint, the middle of its bend lies on the line that halves the angle between hand and finger.
  const half = radians(drawn.angle) / 2;
  const [forward, aside] = [Math.cos(half), sense * Math.sin(half)];
  const off = flat.joints.map((p, k) => {
    const at = sheet.into(p, sheet.sideOf(p));
    const { joint } = model.fingers[k] as ModelFinger;
    return { x: joint.x - at.x, y: -((at.y - joint.y) * forward + (at.z - joint.z) * aside) / forward };
  });
  const moved = { x: mean(off.map((o) => o.x)), y: mean(off.map((o) => o.y)) };
  const place = (p: Point, side: Side = sheet.sideOf(p)) => {
    const at = sheet.into(p, side);
    return { x: at.x + moved.x, y: at.y + moved.y, z: at.z };
  };
  return { flat, sheet, model, moved, place };
}

/** What stays free along the whole edge: toward PIP joints, wrist and thumb web. */
function edgeClearances({ model, sheet, place, moved }: LaidPlate, polygon: readonly Point[]) {
  let [pipClearance, wristClearance, thumb] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [k, from] of polygon.entries()) {
    const to = polygon[(k + 1) % polygon.length] as Point;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / EDGE_STEP));
    for (let step = 0; step < steps; step++) {
      const p = { x: from.x + ((to.x - from.x) * step) / steps, y: from.y + ((to.y - from.y) * step) / steps };
      const side = sheet.sideOf(p);
      if (p.y > side.beginAt(p.x) + side.lengthAt(p.x)) {
        const at = place(p, side);
        const finger = fingerUnder(model, side.digits, at);
        pipClearance = Math.min(pipClearance, finger.length - byFinger(model, finger, at).along);
      } else {
        const y = p.y + moved.y;
        wristClearance = Math.min(wristClearance, y + model.metacarpalLength);
        if (p.x + moved.x <= -model.quarter) thumb = Math.min(thumb, y - model.thumbWeb);
      }
    }
  }
  return { pipClearance, wristClearance, thumbClearance: Number.isFinite(thumb) ? thumb : null };
}

/** Half of the spread of the joints about the bend of each side, where the bend passes under each joint. */
function mpMiss({ sheet, model, flat, moved }: LaidPlate): number {
  const byDigits = new Map<string, number[]>();
  for (const [k, finger] of model.fingers.entries()) {
    const mark = flat.joints[k] as Point;
    const side = sheet.sideOf(mark);
    const key = side.digits.join();
    byDigits.set(key, [...(byDigits.get(key) ?? []), side.beginAt(mark.x) + moved.y - finger.joint.y]);
  }
  return Math.max(...[...byDigits.values()].map((off) => (Math.max(...off) - Math.min(...off)) / 2));
}

/** The straight ends of the midlines against the fingers, seen from the back. */
function swing({ flat, sheet, model }: LaidPlate): number {
  const excess = model.fingers.map(({ digit }) => {
    const line = flat.midlines.get(digit) ?? [];
    const [from, to] = [line.at(-2) as Point, line.at(-1) as Point];
    const side = sheet.sideOf(to);
    const [a, b] = [sheet.into(from, side), sheet.into(to, side)];
    const way = { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z };
    const aside = degrees(Math.asin(way.x / size(way)));
    // Toward the long finger is to the radial side for ring and little.
    return aside < 0 ? Math.max(0, -aside - CONVERGENCE[digit]) : aside;
  });
  return Math.max(...excess);
}

function sideMiss({ flat, model, moved }: LaidPlate): number | null {
  const { radial, ulnar } = flat.midLaterals;
  const off = [
    ...(radial ? [Math.abs(-radial.x - moved.x - model.quarter)] : []),
    ...(ulnar ? [Math.abs(ulnar.x + moved.x - model.quarter)] : []),
  ];
  return off.length > 0 ? Math.max(...off) : null;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
