import { type Corner, type RoundedOutline, roundCorners } from '../../geometry/round-corners.ts';
import { radians } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import type { Problem } from '../../units/result.ts';
import { distalSteps, levels, type Stretch } from './distal-steps.ts';
import type { FingerPart } from './finger-part.ts';
import { type Column, type FaceFrame, type HeldDigit, heldColumns, stepProblems } from './plate-frame.ts';
import { LEAST_CORNER_RADIUS, type PlateOptions } from './plate-options.ts';
import { slotAcross, slotBetween, slotCorners } from './slot.ts';

/** Shapes of the edge that are ours, common practice, no source. Lengths in mm. */
const HAND_FLARE = 4;
const FINGER_FLARE = 10;
/** From this MP angle on, the sides are drawn in at the bend to where hand and row end: there the walls would fold and press. */
const FULL_WAIST_ANGLE = 30;
/** Height of the radial wing, which passes the thumb web: share of the metacarpal cover, and of the radial border at most. */
const BAR_SHARE = 0.38;
const BAR_MOST = 0.5;
/** A side wall beside a free digit stands between web and distal edge: its height in shares of that length, and the least worth making. */
const INNER_WALL_SHARE = 0.3;
const LEAST_INNER_WALL = 3;
/** What the rounded corner at a free digit's edge needs of the side above it. */
const INNER_CORNER_ROOM = 14;
const WALL_SLOPE = radians(50);
/** Wings and walls run out toward the bend at least so gently: length over height. */
const WING_RUN = 0.6;
const WALL_RUN = 0.9;
/** A finger part shorter than this beyond the bend has no room for a waist: its side runs straight. */
const LEAST_WAISTED = 16;
/** Radii of the long hollows, of the waist and of the thumb cut-out; and of the corner under the radial wing, whose edge runs level from there. */
const HOLLOW = 18;
const UNDER_WING = 9;
/** Under a wing the edge runs level over at least so much. */
const LEAST_LEDGE = 17;
/**
 * What an edge needs to hold two round corners. A wing lower than this, between bend and thumb web or proximal edge, is left away: nothing then wraps
 * past that border.
 */
const TWO_CORNERS = 2 * LEAST_CORNER_RADIUS + 1.2;
/** Thumb cut-out of a dorsal plate: shares of the mid-lateral distance. */
const DORSAL_HOLLOW = 0.8;
const DORSAL_CORNER = 0.88;
/** Where the edge runs that has no radial wing, as the same share. */
const DORSAL_BARE = 0.86;
const PALMAR_BARE = 0.68;
/** Thumb cut-out of a palmar plate: it follows the thenar crease, from the radial border to the middle of the hand. */
const THENAR_NEAR = 0.6;
const THENAR_FAR = 0.16;
const THENAR_CORNER = 0.02;

/** The plate's outline, and where its hand part and finger part lie for the marks. */
export interface PlateOutline extends RoundedOutline {
  /** The tightest radius of any corner that may lie on skin, and of the hollows between digits, a slot's round end among them; null without one. mm */
  readonly smallestRadius: number;
  readonly webRadius: number | null;
  /** How far distal each held digit's edge reaches, along its part, from radial to ulnar. */
  readonly distal: readonly { readonly digit: Column['digit']; readonly along: number }[];
  /** The radial border of the hand part: its two ends in y, and how far out it lies. Wide enough it is a wing, which passes the thumb web. */
  readonly bar: { readonly low: number; readonly high: number; readonly out: number };
  /** How far out the proximal ulnar corner lies, and whether the hand part wraps past the ulnar mid-lateral line. */
  readonly ulnar: { readonly out: number; readonly winged: boolean };
  /** How far the finger part reaches past the mid-lateral lines; negative when the faces meet there. */
  readonly walls: { readonly radial: number; readonly ulnar: number };
}

/** One corner seen from the middle of the hand: `out` is away from it, to the radial or ulnar side. */
interface SideCorner {
  readonly out: number;
  readonly y: number;
  readonly radius: number;
}

/** One side of the outline while it is made. */
interface Side {
  readonly which: 'radial' | 'ulnar';
  readonly sign: 1 | -1;
  /** Columns from the other border to this one, and the held one that lies nearest to this border. */
  readonly outward: readonly Column[];
  readonly held: HeldDigit;
  /** Across: the mid-lateral line of the finger part on this side, and its edge. */
  readonly midLateral: number;
  readonly edge: number;
  readonly wall: number;
  /** Along: the level of the distal edge. */
  readonly distal: number;
}

/** The flat outline of one face: lines and arcs, counter-clockwise, every corner rounded. */
export function plateOutline(frame: FaceFrame, options: PlateOptions): PlateOutline {
  const walls = { radial: sideWall(frame, 'radial'), ulnar: sideWall(frame, 'ulnar') };
  const { parts } = frame;
  const slots = parts.slice(1).map((ulnar, k) => slotBetween(parts[k] as FingerPart, ulnar));
  const stretches = parts.map((part, p) => {
    const columns = heldColumns(frame).filter((c) => c.held.part === part);
    return columns.map(({ held }, k): Stretch => {
      const [first, last] = [k === 0, k === columns.length - 1];
      const before = slots[p - 1];
      const after = slots[p];
      const from =
        first && before ? slotAcross(before, part, held.edge, 'ulnar') : part.rowStart + held.row.from - (first ? walls.radial : 0);
      const to = last && after ? slotAcross(after, part, held.edge, 'radial') : part.rowStart + held.row.to + (last ? walls.ulnar : 0);
      return { from, to, edge: held.edge, notchLimit: Math.max(held.web, held.bendEnd + FINGER_FLARE) };
    });
  });
  const level = stretches.map(levels);
  const radial = side(frame, sideOf(frame, 'radial', walls.radial, level[0]?.[0] ?? 0), options);
  const ulnar = side(frame, sideOf(frame, 'ulnar', walls.ulnar, level.at(-1)?.at(-1) ?? 0), options);
  const edge = parts.map((part, p) =>
    distalSteps(stretches[p] ?? [], level[p] ?? [], options.webNotch).map(({ x, y, radius }): Corner => ({ ...part.toFlat(x, y), radius })),
  );
  const distal = edge.toReversed().flatMap((corners, k): readonly Corner[] => {
    const p = parts.length - 1 - k;
    const slot = slots[p - 1];
    const between = slot
      ? slotCorners(slot, parts[p - 1] as FingerPart, level[p - 1]?.at(-1) ?? 0, parts[p] as FingerPart, level[p]?.[0] ?? 0)
      : [];
    return [...corners, ...between];
  });
  const corners: Corner[] = [
    ...ulnar.corners.map(({ out, y, radius }) => ({ x: out, y, radius })),
    ...distal,
    ...radial.corners.toReversed().map(({ out, y, radius }) => ({ x: -out, y, radius })),
  ];
  const flat = level.flat();
  const rounded = roundCorners(corners);
  const web = rounded.corners.filter((c) => c.wanted < LEAST_CORNER_RADIUS).map((c) => c.radius);
  return {
    ...rounded,
    smallestRadius: Math.min(...rounded.corners.filter((c) => c.wanted >= LEAST_CORNER_RADIUS).map((c) => c.radius)),
    webRadius: web.length > 0 ? Math.min(...web) : null,
    distal: heldColumns(frame).map((c, k) => ({ digit: c.digit, along: flat[k] as number })),
    bar: radial.bar,
    ulnar: { out: ulnar.corners[0]?.out ?? frame.midLateralProximal, winged: ulnar.winged },
    walls,
  };
}

/** A corner that cannot be rounded to more than this is no corner that may lie on skin. Ours, no source. mm */
const SHARPEST_CORNER = 3;

/** Why an outline of this face must not be cut; an empty list when it may. */
export function outlineProblems(frame: FaceFrame, outline: PlateOutline, options: PlateOptions): readonly Problem[] {
  const steps = stepProblems(frame, outline.distal, options);
  if (steps.length > 0 || outline.smallestRadius > SHARPEST_CORNER + 0.001) return steps;
  const message = `digits: a corner of the ${frame.face} plate could only be rounded to ${plain(outline.smallestRadius, 1)} mm, not over ${SHARPEST_CORNER}: sides or steps are too short on so small a hand. Use a smaller MP angle, or leave a digit out.`;
  return [{ code: 'PLATE_NO_ROOM', where: 'digits', message, kind: 'refused' }];
}

function outwardColumns(frame: FaceFrame, which: 'radial' | 'ulnar'): readonly Column[] {
  return which === 'ulnar' ? frame.columns : frame.columns.toReversed();
}

function lastHeld(outward: readonly Column[]): HeldDigit {
  return outward.findLast((c): c is HeldDigit => c.held !== null) as HeldDigit;
}

function sideOf(frame: FaceFrame, which: 'radial' | 'ulnar', wall: number, distal: number): Side {
  const outward = outwardColumns(frame, which);
  const held = lastHeld(outward);
  const { part, row } = held.held;
  const sign = which === 'ulnar' ? 1 : -1;
  const midLateral = part.rowStart + (which === 'ulnar' ? row.to : row.from);
  return { which, sign, outward, held, midLateral, edge: midLateral + sign * wall, wall, distal };
}

/** How far the finger part reaches past the mid-lateral line on a side; beside a free digit no further than the web lets it. */
function sideWall(frame: FaceFrame, which: 'radial' | 'ulnar'): number {
  const wall = frame.walls[which];
  const outward = outwardColumns(frame, which);
  const { held } = lastHeld(outward);
  if (outward.at(-1)?.held || wall <= 0) return wall;
  const room = held.edge - wallBase(outward);
  const inner = Math.min(wall, INNER_WALL_SHARE * room);
  // Its outer edge must hold two round corners.
  return inner < LEAST_INNER_WALL || room - inner * Math.tan(WALL_SLOPE) < TWO_CORNERS ? 0 : inner;
}

/** Along: where a side wall beside a free digit may begin, distal of the web and clear of the corner at the free digit's own edge. */
function wallBase(outward: readonly Column[]): number {
  const column = lastHeld(outward);
  const neighbour = outward[outward.indexOf(column) + 1] as Column;
  const { part, web, across } = column.held;
  return Math.max(web, part.alongAt(across, neighbour.edge + INNER_CORNER_ROOM));
}

/** One side from the proximal edge to the distal one. */
function side(frame: FaceFrame, of: Side, options: PlateOptions) {
  const border = of.outward.at(-1) as Column;
  const wide = frame.midLateral + frame.wing;
  const finish = (handOut: number, run: number) => {
    const finger = border.held ? borderFinger(frame, of, handOut, run, options) : null;
    const top = finger?.handTop ?? border.edge;
    return { handOut, top, finger, height: Math.min(BAR_SHARE * -frame.proximal, BAR_MOST * (top - frame.proximal)) };
  };
  // The radial wing passes the thumb web, which ends it. Where that leaves little its upper edge runs in more steeply; where that leaves too
  // little, the edge stays on this side of the border.
  const lowOf = ({ top, height }: { readonly top: number; readonly height: number }) => Math.max(top - height, frame.thumbLimit);
  const narrow = ({ top, height }: { readonly top: number; readonly height: number }) =>
    top - (of.which === 'radial' ? lowOf({ top, height }) : frame.proximal) < TWO_CORNERS;
  const winged = [finish(wide, WING_RUN), finish(wide, 0)].find((one) => !narrow(one));
  const besideHeld = border.held ? 0 : (of.which === 'ulnar' ? of.held.to : -of.held.from) + TWO_CORNERS + 1;
  const bareOut = Math.max(frame.midLateral * (frame.face === 'dorsal' ? DORSAL_BARE : PALMAR_BARE), besideHeld);
  const shape = winged ?? finish(bareOut, WING_RUN);
  const { handOut, top, finger, height } = shape;
  const bare = winged === undefined;
  const bar = { low: bare ? top - height : lowOf(shape), high: top, out: handOut };
  const hand = of.which === 'ulnar' ? ulnarHand(frame, bare, options) : radialHand(frame, bar, bare, options);
  const distalPart = finger?.corners ?? freeDigits(of, handOut, options);
  // Too little hand is left on the ulnar side for an edge of its own: from the proximal corner it runs straight to the bend.
  const straightOn = of.which === 'ulnar' && bare && finger !== null && top - frame.proximal < TWO_CORNERS;
  const handTop = straightOn ? [] : [{ out: handOut, y: top, radius: options.cornerRadius }];
  return { corners: [...hand, ...handTop, ...distalPart], bar, winged: !bare };
}

function ulnarHand(frame: FaceFrame, bare: boolean, options: PlateOptions): readonly SideCorner[] {
  return [
    {
      out: frame.midLateralProximal + (bare ? Math.min(0, frame.wing) : frame.wing),
      y: frame.proximal,
      radius: options.cornerRadius * 1.5,
    },
  ];
}

/** The radial side proximal of the radial wing: the thumb web's cut-out. Under a wing the edge runs level, so that all of it is clear of the web. */
function radialHand(frame: FaceFrame, bar: PlateOutline['bar'], bare: boolean, options: PlateOptions): readonly SideCorner[] {
  const room = bar.low - frame.proximal;
  const wing = { out: bar.out, y: bar.low, radius: options.cornerRadius };
  if (frame.face === 'dorsal') {
    const corner = { out: frame.midLateralProximal * DORSAL_CORNER, y: frame.proximal, radius: options.cornerRadius * 1.5 };
    return bare
      ? [corner]
      : [corner, { out: Math.min(frame.midLateral * DORSAL_HOLLOW, bar.out - LEAST_LEDGE), y: bar.low, radius: UNDER_WING }, wing];
  }
  const thenar = [
    { out: frame.midLateral * THENAR_CORNER, y: frame.proximal, radius: options.cornerRadius * 1.25 },
    { out: frame.midLateral * THENAR_FAR, y: bar.low - 0.6 * room, radius: HOLLOW * 1.5 },
  ];
  return bare
    ? [...thenar, { ...wing, radius: HOLLOW }]
    : [...thenar, { out: frame.midLateral * THENAR_NEAR, y: bar.low, radius: HOLLOW }, wing];
}

/** From the hand's wing, drawn in at the bend, to the end of a border digit's side wall; and where the wing must end. */
function borderFinger(
  frame: FaceFrame,
  of: Side,
  handOut: number,
  run: number,
  options: PlateOptions,
): { readonly handTop: number; readonly corners: readonly SideCorner[] } {
  const { part } = of.held.held;
  const corner = (across: number, along: number, radius: number): SideCorner => {
    const p = part.toFlat(across, along);
    return { out: of.sign * p.x, y: p.y, radius };
  };
  const bendEnd = part.endAt(of.midLateral);
  const midLateral = corner(of.midLateral, bendEnd, 0);
  const edge = corner(of.edge, part.endAt(of.edge), 0).out;
  const straight = (handOut + edge) / 2;
  const drawnIn = Math.min(straight, (Math.min(frame.midLateral, handOut) + midLateral.out) / 2);
  const waist = straight + (drawnIn - straight) * Math.min(1, frame.angle / FULL_WAIST_ANGLE);
  const begin = part.beginAt(of.sign * waist);
  const handTop = begin - Math.max(HAND_FLARE, run * (handOut - waist));
  const end = corner(of.edge, of.distal, options.cornerRadius);
  if (of.distal - bendEnd < LEAST_WAISTED) return { handTop, corners: [end] };
  const wallStart = bendEnd + Math.max(FINGER_FLARE, WALL_RUN * (edge - waist));
  const walled = of.distal - wallStart > 2 * options.cornerRadius;
  return {
    handTop,
    corners: [
      { out: waist, y: begin + part.bend.length / 2, radius: HOLLOW },
      ...(walled ? [corner(of.edge, wallStart, options.cornerRadius)] : []),
      end,
    ],
  };
}

/** From the wing along the free digits' MP joints to the held digits, and up beside them. */
function freeDigits(of: Side, handOut: number, options: PlateOptions): readonly SideCorner[] {
  const { outward, sign, wall } = of;
  const { held } = of.held;
  const free = outward.slice(outward.indexOf(of.held) + 1);
  const boundary = of.which === 'ulnar' ? of.held.to : -of.held.from;
  const near = free[0] as Column;
  const far = free.at(-1) as Column;
  const start = { out: handOut, y: far.edge };
  const end = { out: boundary, y: near.edge };
  const between = free
    .slice(1, -1)
    .toReversed()
    .flatMap((column): SideCorner[] => {
      const out = sign * column.mpX;
      const line = end.y + ((out - end.out) / (start.out - end.out)) * (start.y - end.y);
      return line > column.edge ? [{ out, y: column.edge, radius: HOLLOW }] : [];
    });
  const corner = (across: number, along: number): SideCorner => {
    const p = held.part.toFlat(across, along);
    return { out: sign * p.x, y: p.y, radius: options.cornerRadius };
  };
  const base = wall > 0 ? wallBase(outward) : 0;
  const up: readonly SideCorner[] =
    wall > 0
      ? [corner(of.midLateral, base), corner(of.edge, base + wall * Math.tan(WALL_SLOPE)), corner(of.edge, of.distal)]
      : [corner(of.edge, of.distal)];
  return [...between, { ...end, radius: options.cornerRadius }, ...up];
}
