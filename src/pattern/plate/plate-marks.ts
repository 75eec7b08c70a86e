import { clipToPolygon, insidePolygon } from '../../geometry/inside.ts';
import { type Point, polyline } from '../../geometry/path.ts';
import { plain } from '../../units/number.ts';
import type { Speech } from '../../words/speech.ts';
import { type DashPattern, dashed } from '../dashes.ts';
import type { Mark } from '../pattern.ts';
import type { FingerPart } from './finger-part.ts';
import { type Column, type FaceFrame, type HeldDigit, heldColumns } from './plate-frame.ts';
import type { PlateOptions } from './plate-options.ts';
import type { PlateOutline } from './plate-outline.ts';
import { slotBetween } from './slot.ts';

/** How each kind of line on a plate is told apart. */
export const PLATE_LINES = {
  'mp-bend': [9, 1.5, 1.5, 1.5],
  'bend-limit': [3, 1.5],
  midline: [],
  fold: [1.5, 1.5],
  flare: [5, 1, 1, 1, 1, 1],
  strap: [1, 0.8],
  trim: [1.5, 1],
} as const satisfies Record<string, DashPattern>;
export type PlateLine = keyof typeof PLATE_LINES;

/** Lines end this far inside the outline. mm */
const INSET = 1;
/** How far midlines reach into the hand part. mm */
const MIDLINE_TAIL = 5;
const FLARE_WIDTH = 4;
/** The bend's two limits are drawn apart from its middle line only from this length on. mm */
const LEAST_DRAWN_BEND = 4;
const PAD = { hand: 18, finger: 11, edge: 2.5, midline: 3, least: 7, narrowest: 5, margin: 1, useful: 100 } as const;
/** The corner mark's place in from both edges, and its size. mm */
export const CORNER_MARK = { in: 6, side: 5 } as const;
const FAR = 300;

/** Where a strap's hook sits: a rectangle, mm in the plate's own coordinates. */
export interface StrapPad {
  readonly strap: 'A' | 'B';
  readonly from: Point;
  readonly to: Point;
}

/** A held digit as it is drawn: its midline from the hand part through its bend to the tip. */
export interface DrawnMidline {
  readonly digit: Column['digit'];
  readonly points: readonly Point[];
  /** On the line: where its bend begins and ends, and the end at the distal edge. */
  readonly begin: Point;
  readonly bendEnd: Point;
  readonly tip: Point;
  /** Of its straight end, from straight up the plate toward the ulnar side. radians */
  readonly heading: number;
}

export interface FaceMarks {
  readonly marks: readonly Mark[];
  readonly pads: readonly StrapPad[];
  readonly midlines: readonly DrawnMidline[];
  /** What found no room. */
  readonly left: readonly string[];
}

/** Every line on one face, in the frame's coordinates. Titles are English in every language: who folds a drawing tells its lines by them. `polygon` is the outline with its arcs as chords. */
export function faceMarks(
  frame: FaceFrame,
  outline: PlateOutline,
  polygon: readonly Point[],
  options: PlateOptions,
  speech: Speech,
): FaceMarks {
  const marks: Mark[] = [];
  const line = (kind: PlateLine, title: string, runs: readonly (readonly [Point, Point])[]) => {
    const paths = runs.flatMap(([from, to]) => dashed(from, to, PLATE_LINES[kind]));
    if (paths.length > 0) marks.push({ layer: 'MARK', role: kind, title, paths, circles: [] });
  };
  const clipped = (from: Point, to: Point) => clipToPolygon(polygon, from, to, INSET);
  const midlines = midlinesOf(frame, outline);
  for (const part of frame.parts) {
    const names = frame.parts.length > 1 ? `, ${part.digits.join(', ')}` : '';
    const across = (share: number) =>
      acrossDigits(frame, part, midlines, share).flatMap(([from, to]) => clipToPolygon(polygon, from, to, INSET).slice(0, 1));
    line('mp-bend', `MP bend line, ${plain(frame.angle, 1)} degrees${names}`, across(0.5));
    if (part.bend.length < LEAST_DRAWN_BEND) continue;
    line('bend-limit', `bend begins${names}`, across(0));
    line('bend-limit', `bend ends${names}`, across(1));
  }
  marks.push({
    layer: 'MARK',
    role: 'mp-joint',
    title: 'MP joints',
    paths: [],
    circles: heldColumns(frame).map(({ held }) => ({ center: held.mp, radius: 1.2 })),
  });
  for (const { digit, points } of midlines) {
    line(
      'midline',
      `${digit} midline`,
      points
        .slice(1)
        .map((to, k) => [points[k] as Point, to] as const)
        .filter(isLong),
    );
  }
  for (const [which, sign] of [
    ['radial', -1],
    ['ulnar', 1],
  ] as const) {
    if (frame.wing > 0 && (which === 'radial' || outline.ulnar.winged)) {
      const from = { x: sign * frame.midLateralProximal, y: frame.proximal };
      const to = { x: sign * frame.midLateral, y: outline.bar.high };
      line('fold', `${which} mid-lateral line of the hand`, clipped(from, to));
    }
    const border = borderColumn(frame, which);
    if (!border || outline.walls[which] <= 0) continue;
    const { part, row, bendEnd } = border.held;
    const across = part.rowStart + (which === 'radial' ? row.from : row.to);
    const title = `${which} mid-lateral line of the ${border.digit} finger`;
    line('fold', title, clipped(part.toFlat(across, bendEnd), part.toFlat(across, FAR)));
  }
  const edge = frame.proximal + options.trim;
  if (options.trim > 0) line('trim', 'trim to here when it fits', clipped({ x: -FAR, y: edge }, { x: FAR, y: edge }));
  line('flare', 'flare the proximal edge', clipped({ x: -FAR, y: edge + FLARE_WIDTH }, { x: FAR, y: edge + FLARE_WIDTH }));
  const { pads, left } = strapPads(frame, outline, polygon, midlines, options, speech);
  for (const pad of pads) line('strap', `hook for strap ${pad.strap}`, edgesOf(pad));
  return { marks, pads, midlines, left };
}

/** From the MP joint the fingers come together toward the row at mid phalanx; from there the line runs straight on. */
function midlinesOf(frame: FaceFrame, outline: PlateOutline): readonly DrawnMidline[] {
  return heldColumns(frame).map(({ digit, mpX, held }): DrawnMidline => {
    const { part, across, mpAcross } = held;
    const along = (outline.distal.find((d) => d.digit === digit)?.along ?? held.edge) - INSET;
    const begin = { x: mpX, y: part.beginAt(mpX) };
    const end = part.endAt(mpAcross);
    const bendEnd = part.toFlat(mpAcross, end);
    const tip = part.toFlat(across, along);
    const points = [{ x: mpX, y: begin.y - MIDLINE_TAIL }, begin, bendEnd, part.toFlat(across, (end + along) / 2), tip];
    return { digit, points, begin, bendEnd, tip, heading: part.heading };
  });
}

function borderColumn(frame: FaceFrame, which: 'radial' | 'ulnar'): HeldDigit | undefined {
  const held = heldColumns(frame);
  return which === 'radial' ? held[0] : held.at(-1);
}

/** A line through a part's digits at a share of their bend, running on to both sides: with the bend's slope, at a kinked line level; at a slot to its middle. */
function acrossDigits(
  frame: FaceFrame,
  part: FingerPart,
  midlines: readonly DrawnMidline[],
  share: number,
): readonly (readonly [Point, Point])[] {
  const own = midlines.filter((m) => part.digits.includes(m.digit));
  const points = own.map(({ begin, bendEnd }) => between(begin, bendEnd, share));
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return [];
  const slope = part.kinked ? 0 : part.bend.slope;
  const at = frame.parts.indexOf(part);
  const [before, after] = [frame.parts[at - 1], frame.parts[at + 1]];
  const to = (from: Point, x: number) => ({ x, y: from.y + slope * (x - from.x) });
  const radial = to(first, before ? slotBetween(before, part).middleAt(first.y) : -FAR);
  const ulnar = to(last, after ? slotBetween(part, after).middleAt(last.y) : FAR);
  const inner = points.slice(1).map((p, k) => [points[k] as Point, p] as const);
  return [[first, radial], ...inner, [last, ulnar]];
}

function strapPads(
  frame: FaceFrame,
  outline: PlateOutline,
  polygon: readonly Point[],
  midlines: readonly DrawnMidline[],
  options: PlateOptions,
  { plate }: Speech,
): { readonly pads: readonly StrapPad[]; readonly left: readonly string[] } {
  const pads: StrapPad[] = [];
  const left: string[] = [];
  // The first wish that finds room.
  const place = (...wishes: readonly [Wanted, ...Wanted[]]) => {
    const [{ strap, where }] = wishes;
    const found = wishes.reduce<StrapPad | null>((pad, wish) => pad ?? largestPad(polygon, wish, options.strapWidth), null);
    if (found) pads.push(found);
    else left.push(plate.hookAt[where](strap));
  };
  const handOut = frame.midLateral + frame.wing;
  const { low, high, out } = outline.bar;
  const ulnarShift = (frame.columns.at(-1)?.mpY ?? 0) - (frame.columns[0]?.mpY ?? 0);
  const ulnarLow = Math.max(low + ulnarShift, frame.proximal + CORNER_MARK.in + CORNER_MARK.side + 1);
  place({ strap: 'A', where: 'radial', sign: -1, outs: [out, out - PAD.edge], inner: 0, wide: PAD.hand, low: low + 1, high: high - 1 });
  const ulnarHigh = Math.max(ulnarLow + PAD.least, high + ulnarShift - 2);
  place({
    strap: 'A',
    where: 'ulnar',
    sign: 1,
    outs: [handOut - PAD.edge, handOut - 2 * PAD.edge],
    inner: 0,
    wide: PAD.hand,
    low: ulnarLow,
    high: ulnarHigh,
  });
  for (const [which, sign] of [
    ['radial', -1],
    ['ulnar', 1],
  ] as const) {
    const end = which === 'radial' ? midlines[0] : midlines.at(-1);
    const column = borderColumn(frame, which);
    if (!end || !column) continue;
    const { part, row } = column.held;
    const wall = outline.walls[which];
    const edge = part.rowStart + (which === 'radial' ? row.from - wall : row.to + wall);
    // A single digit's name and arrow take the distal half.
    const high = midlines.length > 1 ? end.tip.y - 1 : (end.bendEnd.y + end.tip.y) / 2 - 1;
    const low = end.bendEnd.y + 1;
    const wanted = (from: number, to: number): Wanted => {
      // A turned finger part leans: what is free over the hook's whole height counts.
      const leaning = [from, to].map((y) => sign * part.toFlat(edge, part.alongAt(edge, y)).x);
      const middle = [from, to].map((y) => sign * part.toFlat(column.held.across, part.alongAt(column.held.across, y)).x);
      const border = Math.min(...leaning);
      const inner = Math.max(...middle) + PAD.midline;
      const wide = Math.min(PAD.finger, border - PAD.edge - inner);
      // Beside a free digit the side wall begins only beyond the web: nearer the hand the hook sits further in.
      const outs = [border, border - wall, border - wall - PAD.edge];
      return { strap: 'B', where: which, sign, outs, inner, wide, low: from, high: to };
    };
    place(wanted(low, high), wanted((low + high) / 2, high), wanted(low, (low + high) / 2));
  }
  return { pads, left };
}

/** A hook to be placed on one side: outward edges to try, its greatest width, and the stretch of y that it may take. */
interface Wanted {
  readonly strap: StrapPad['strap'];
  readonly where: 'radial' | 'ulnar';
  readonly sign: number;
  readonly outs: readonly number[];
  /** The hook stays outward of this: clear of the midline. */
  readonly inner: number;
  readonly wide: number;
  readonly low: number;
  readonly high: number;
}

/** The largest rectangle that lies inside the outline with a margin, or null. */
function largestPad(polygon: readonly Point[], { strap, sign, outs, inner, wide, low, high }: Wanted, tallest: number): StrapPad | null {
  let best: { readonly area: number; readonly pad: StrapPad } | null = null;
  for (const out of outs) {
    // Further in only where nothing useful fits further out.
    if (best && best.area >= PAD.useful) break;
    const outer = out - PAD.edge;
    for (const width of [wide, 0.75 * wide, 0.5 * wide].filter((w) => w >= PAD.narrowest && outer - w >= inner)) {
      for (let height = Math.min(tallest, high - low); height >= PAD.least; height -= 1) {
        if (best && best.area >= width * height) break;
        const middle = [(low + high) / 2, high - height / 2].find((y) => {
          const [near, far] = [sign * (outer - width - PAD.margin), sign * (outer + PAD.margin)];
          const reach = height / 2 + PAD.margin;
          return cornersOf({ x: near, y: y - reach }, { x: far, y: y + reach }).every((p) => insidePolygon(polygon, p));
        });
        if (middle === undefined) continue;
        const xs = [sign * (outer - width), sign * outer];
        const from = { x: Math.min(...xs), y: middle - height / 2 };
        best = { area: width * height, pad: { strap, from, to: { x: Math.max(...xs), y: middle + height / 2 } } };
        break;
      }
    }
  }
  return best?.pad ?? null;
}

function cornersOf(from: Point, to: Point): readonly Point[] {
  return [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
}

function edgesOf({ from, to }: StrapPad): readonly (readonly [Point, Point])[] {
  const corners = cornersOf(from, to);
  return corners.map((corner, k) => [corner, corners[(k + 1) % corners.length] as Point] as const);
}

function between(from: Point, to: Point, share: number): Point {
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

function isLong([from, to]: readonly [Point, Point]): boolean {
  return Math.hypot(to.x - from.x, to.y - from.y) > 0.1;
}

/** The corner mark: a triangle in the proximal ulnar corner, which looks different from every other side. */
export function cornerMark(frame: FaceFrame, { ulnar }: PlateOutline): Mark {
  const x = ulnar.out - CORNER_MARK.in;
  const y = frame.proximal + CORNER_MARK.in;
  const points = [
    { x, y },
    { x: x - CORNER_MARK.side, y },
    { x, y: y + CORNER_MARK.side },
  ];
  return { layer: 'MARK', role: 'corner', title: 'corner mark: proximal ulnar corner', paths: [polyline(points, true)], circles: [] };
}
