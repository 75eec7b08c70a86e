import { type Corner, type RoundedOutline, roundCorners } from '../../geometry/round-corners.ts';
import { radians } from '../../units/angle.ts';
import { distalSteps, levels, type Stretch } from './distal-steps.ts';
import type { Column, FaceFrame } from './plate-frame.ts';
import type { PlateOptions } from './plate-options.ts';

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
/** Radii of the long hollows: thumb cut-out and waist. */
const HOLLOW = 18;
/** Thumb cut-out of a dorsal plate: shares of the mid-lateral distance. */
const DORSAL_HOLLOW = 0.84;
const DORSAL_CORNER = 0.9;
/** Thumb cut-out of a palmar plate: it follows the thenar crease, from the radial border to the middle of the hand. */
const THENAR_NEAR = 0.6;
const THENAR_FAR = 0.16;
const THENAR_CORNER = 0.02;

/** The plate's outline, and where its hand part and finger part lie for the marks. */
export interface PlateOutline extends RoundedOutline {
  /** How far distal each held digit's edge reaches, from radial to ulnar. */
  readonly distal: readonly { readonly digit: Column['digit']; readonly y: number }[];
  /** The radial wing, which passes the thumb web: its two ends in y. */
  readonly bar: { readonly low: number; readonly high: number };
  /** How far the finger part reaches past the mid-lateral lines; negative when the faces meet there. */
  readonly walls: { readonly radial: number; readonly ulnar: number };
}

/** One corner seen from the middle of the hand: `out` is away from it, to the radial or ulnar side. */
interface SideCorner {
  readonly out: number;
  readonly y: number;
  readonly radius: number;
}

/** The flat outline of one face: lines and arcs, counter-clockwise, every corner rounded. */
export function plateOutline(frame: FaceFrame, options: PlateOptions): PlateOutline {
  const held = frame.columns.filter((c) => c.held);
  const walls = { radial: sideWall(frame, 'radial'), ulnar: sideWall(frame, 'ulnar') };
  const stretches = held.map((column, k): Stretch => {
    const row = column.held;
    const from = frame.rowStart + (row?.from ?? 0) - (k === 0 ? walls.radial : 0);
    const to = frame.rowStart + (row?.to ?? 0) + (k === held.length - 1 ? walls.ulnar : 0);
    const bendEnd = column.mpY - frame.bend.before + frame.bend.allowance;
    return { from, to, edge: column.edge, notchLimit: Math.max(column.web, bendEnd + FINGER_FLARE) };
  });
  const level = levels(stretches);
  const radial = side(frame, 'radial', walls.radial, level[0] ?? 0, options);
  const ulnar = side(frame, 'ulnar', walls.ulnar, level.at(-1) ?? 0, options);
  const corners: Corner[] = [
    ...ulnar.corners.map(({ out, y, radius }) => ({ x: out, y, radius })),
    ...distalSteps(stretches, level, options.webNotch),
    ...radial.corners.toReversed().map(({ out, y, radius }) => ({ x: -out, y, radius })),
  ];
  return {
    ...roundCorners(corners),
    distal: held.map((c, k) => ({ digit: c.digit, y: level[k] as number })),
    bar: radial.bar,
    walls,
  };
}

/** How far the finger part reaches past the mid-lateral line on a side; beside a free digit no further than the web lets it. */
function sideWall(frame: FaceFrame, which: 'radial' | 'ulnar'): number {
  const outward = which === 'ulnar' ? frame.columns : frame.columns.toReversed();
  const wall = frame.walls[which];
  const held = outward.findLast((c) => c.held) as Column;
  if (held === outward.at(-1) || wall <= 0) return wall;
  const room = held.edge - wallBase(frame, which, held);
  const inner = Math.min(wall, INNER_WALL_SHARE * room);
  return inner < LEAST_INNER_WALL ? 0 : inner;
}

/** Where a side wall beside a free digit may begin: distal of the web, and clear of the corner at the free digit's own edge. */
function wallBase(frame: FaceFrame, which: 'radial' | 'ulnar', held: Column): number {
  const at = frame.columns.indexOf(held);
  const neighbour = frame.columns[which === 'ulnar' ? at + 1 : at - 1] as Column;
  return Math.max(held.web, neighbour.edge + INNER_CORNER_ROOM);
}

/** One side from the proximal edge to the distal one. */
function side(frame: FaceFrame, which: 'radial' | 'ulnar', wall: number, distal: number, options: PlateOptions) {
  const outward = which === 'ulnar' ? frame.columns : frame.columns.toReversed();
  const border = outward.at(-1) as Column;
  const handOut = frame.midLateral + frame.wing;
  const finger = border.held ? borderFinger(frame, which, border, wall, distal, options) : null;
  const top = finger?.handTop ?? border.edge;
  const bar = Math.min(BAR_SHARE * -frame.proximal, BAR_MOST * (top - frame.proximal));
  const hand = which === 'ulnar' ? ulnarHand(frame, options) : radialHand(frame, top - bar, options);
  const distalPart = finger?.corners ?? freeDigits(frame, which, outward, wall, distal, options);
  return {
    corners: [...hand, { out: handOut, y: top, radius: options.cornerRadius }, ...distalPart],
    bar: { low: top - bar, high: top },
  };
}

function ulnarHand(frame: FaceFrame, options: PlateOptions): readonly SideCorner[] {
  return [{ out: frame.midLateralProximal + frame.wing, y: frame.proximal, radius: options.cornerRadius * 1.5 }];
}

/** The radial side proximal of the radial wing: the thumb web's cut-out. */
function radialHand(frame: FaceFrame, barLow: number, options: PlateOptions): readonly SideCorner[] {
  const room = barLow - frame.proximal;
  const wing = { out: frame.midLateral + frame.wing, y: barLow, radius: options.cornerRadius };
  if (frame.face === 'dorsal') {
    return [
      { out: frame.midLateralProximal * DORSAL_CORNER, y: frame.proximal, radius: options.cornerRadius * 1.5 },
      { out: frame.midLateral * DORSAL_HOLLOW, y: barLow - 0.35 * room, radius: HOLLOW },
      wing,
    ];
  }
  return [
    { out: frame.midLateral * THENAR_CORNER, y: frame.proximal, radius: options.cornerRadius * 1.25 },
    { out: frame.midLateral * THENAR_FAR, y: barLow - 0.6 * room, radius: HOLLOW * 1.5 },
    { out: frame.midLateral * THENAR_NEAR, y: barLow - 0.12 * room, radius: HOLLOW },
    wing,
  ];
}

/** Where the row's mid-lateral line lies, outward from the middle of the hand. */
function rowEnd(frame: FaceFrame, which: 'radial' | 'ulnar'): number {
  const held = frame.columns.flatMap((c) => (c.held ? [c.held] : []));
  return which === 'ulnar' ? frame.rowStart + (held.at(-1)?.to ?? 0) : -(frame.rowStart + (held[0]?.from ?? 0));
}

/** From the hand's wing, drawn in at the bend, to the end of a border digit's side wall; and where the wing must end. */
function borderFinger(
  frame: FaceFrame,
  which: 'radial' | 'ulnar',
  border: Column,
  wall: number,
  distal: number,
  options: PlateOptions,
): { readonly handTop: number; readonly corners: readonly SideCorner[] } {
  const midLateral = rowEnd(frame, which);
  const edge = midLateral + wall;
  const { bend } = frame;
  const begin = border.mpY - bend.before;
  const end = { out: edge, y: distal, radius: options.cornerRadius };
  const handOut = frame.midLateral + frame.wing;
  const straight = (handOut + edge) / 2;
  const drawnIn = Math.min(straight, (frame.midLateral + midLateral) / 2);
  const waist = straight + (drawnIn - straight) * Math.min(1, bend.angle / FULL_WAIST_ANGLE);
  const handTop = begin - Math.max(HAND_FLARE, WING_RUN * (handOut - waist));
  const bendEnd = begin + bend.allowance;
  if (distal - bendEnd < LEAST_WAISTED) return { handTop, corners: [end] };
  const wallStart = bendEnd + Math.max(FINGER_FLARE, WALL_RUN * (edge - waist));
  const walled = distal - wallStart > 2 * options.cornerRadius;
  return {
    handTop,
    corners: [
      { out: waist, y: begin + bend.allowance / 2, radius: HOLLOW },
      ...(walled ? [{ out: edge, y: wallStart, radius: options.cornerRadius }] : []),
      end,
    ],
  };
}

/** From the wing along the free digits' MP joints to the held digits, and up beside them. */
function freeDigits(
  frame: FaceFrame,
  which: 'radial' | 'ulnar',
  outward: readonly Column[],
  wall: number,
  distal: number,
  options: PlateOptions,
): readonly SideCorner[] {
  const sign = which === 'ulnar' ? 1 : -1;
  const free = outward.slice(outward.findLastIndex((c) => c.held) + 1);
  const held = outward[outward.length - free.length - 1] as Column;
  const boundary = which === 'ulnar' ? held.to : -held.from;
  const near = free[0] as Column;
  const far = free.at(-1) as Column;
  const start = { out: frame.midLateral + frame.wing, y: far.edge };
  const end = { out: boundary, y: near.edge };
  const between = free
    .slice(1, -1)
    .toReversed()
    .flatMap((column): SideCorner[] => {
      const out = sign * column.mpX;
      const line = end.y + ((out - end.out) / (start.out - end.out)) * (start.y - end.y);
      return line > column.edge ? [{ out, y: column.edge, radius: HOLLOW }] : [];
    });
  const midLateral = rowEnd(frame, which);
  const edge = midLateral + wall;
  const base = wallBase(frame, which, held);
  const up: readonly SideCorner[] =
    wall > 0
      ? [
          { out: midLateral, y: base, radius: options.cornerRadius },
          { out: edge, y: base + wall * Math.tan(WALL_SLOPE), radius: options.cornerRadius },
          { out: edge, y: distal, radius: options.cornerRadius },
        ]
      : [{ out: edge, y: distal, radius: options.cornerRadius }];
  return [...between, { ...end, radius: options.cornerRadius }, ...up];
}
