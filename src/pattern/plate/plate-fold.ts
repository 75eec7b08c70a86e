import { chordPoints, insidePolygon } from '../../geometry/inside.ts';
import { type Body, support } from '../../geometry/offset-ellipse.ts';
import type { LineArcPath, Point } from '../../geometry/path.ts';
import { boxOf } from '../../geometry/path-measures.ts';
import { radians } from '../../units/angle.ts';
import { distanceToPalm, scaledPalm, wrapped } from './palm-section.ts';
import { type FaceFrame, type PlateFrame, WRIST_SHARE } from './plate-frame.ts';
import type { PlateOptions } from './plate-options.ts';

/** What folding the flat outline round the modelled hand found. mm */
export interface FoldCheck {
  /** Points of the grid that were measured. */
  readonly points: number;
  /** Skin to skin side: the nearest and the furthest. */
  readonly leastGap: number;
  readonly worstGap: number;
  readonly worstAt: 'hand' | 'bend' | 'fingers';
  /** The worst gap over the digits' midlines, where the sheet should touch. */
  readonly worstOnMidlines: number;
  /** Skin left free between the plate's edge and the PIP joint line, at least. */
  readonly leastToPip: number;
  /** Skin left free between the plate's edge and the wrist crease, at least. */
  readonly leastToWrist: number;
}

const GRID = 3;
/** How near to a midline a point counts as on it. mm */
const ON_MIDLINE = 2;
/** How far a rounded corner beside a free digit's edge rises over it; what is held begins further distal. mm */
const EDGE_CORNER = 7;
/** Normals tried for the distance to an ellipse, then halvings of the best one's surroundings. */
const NORMALS = 36;
const REFINEMENTS = 12;

/**
 * Lays the flat outline back on the hand: wrapped round the palm's section, bent at the bend lines about the neutral line of the sheet (its
 * middle), and laid over the row of digits, which stand at the MP angle. The hand that it is measured against narrows toward the wrist while
 * the sheet is rolled to one section, so the gap at the proximal edge is what moulding must take up; between digits the sheet spans the valleys.
 */
export function foldCheck(frame: PlateFrame, face: FaceFrame, outline: LineArcPath, options: PlateOptions): FoldCheck {
  const polygon = chordPoints(outline);
  const box = boxOf([outline]);
  const found: { readonly gap: number; readonly at: FoldCheck['worstAt']; readonly onMidline: boolean }[] = [];
  let leastToPip = Number.POSITIVE_INFINITY;
  let leastToWrist = Number.POSITIVE_INFINITY;
  const measure = (p: Point) => {
    const laid = layDown(frame, face, p, options);
    found.push(laid);
    leastToPip = Math.min(leastToPip, laid.toPip);
    leastToWrist = Math.min(leastToWrist, frame.palm.metacarpalLength + p.y + (laid.at === 'hand' ? 0 : Number.POSITIVE_INFINITY));
  };
  for (let x = box.minX + GRID / 2; x < box.maxX; x += GRID) {
    for (let y = box.minY + GRID / 2; y < box.maxY; y += GRID) if (insidePolygon(polygon, { x, y })) measure({ x, y });
  }
  for (const p of polygon) measure(p);
  const worst = found.reduce((a, b) => (b.gap > a.gap ? b : a));
  return {
    points: found.length,
    leastGap: Math.min(...found.map((f) => f.gap)),
    worstGap: worst.gap,
    worstAt: worst.at,
    worstOnMidlines: Math.max(...found.filter((f) => f.onMidline).map((f) => f.gap)),
    leastToPip,
    leastToWrist,
  };
}

interface LaidPoint {
  readonly gap: number;
  readonly at: FoldCheck['worstAt'];
  readonly onMidline: boolean;
  /** Along the finger to its PIP joint line; infinite in the hand part. */
  readonly toPip: number;
}

function layDown(frame: PlateFrame, face: FaceFrame, p: Point, options: PlateOptions): LaidPoint {
  const half = options.thickness / 2;
  const skin = frame.palm.mpDepth / 2;
  const mpY = mpLineAt(face, p.x);
  const begin = mpY - face.bend.before;
  const end = begin + face.bend.allowance;
  const hand = { toPip: Number.POSITIVE_INFINITY, onMidline: false };
  if (p.y <= begin || besideFreeDigit(face, p)) {
    const narrowed = scaledPalm(frame.section, 1 - (1 - WRIST_SHARE) * (Math.max(0, -p.y) / frame.palm.metacarpalLength));
    const laid = wrapped(frame.section, options.skinClearance + half, p.x);
    return { ...hand, gap: distanceToPalm(narrowed, laid) - half, at: 'hand' };
  }
  const bent = bentTo(face, frame, p.y - begin, options);
  if (p.y < end) return { ...hand, gap: bendGap(face, bent.sagittal, skin) - half, at: 'bend' };
  // Over the digits: the row's path gives the place across and the height over the digits' plane; the bend may have tilted or lifted it.
  const along = p.x - face.rowStart;
  const over = frame.row.pointAt(along);
  const level = options.skinClearance + half;
  const finger = inFingerFrame(face, bent.sagittal, bent.normal, over.y - level);
  const place = { x: over.x, y: finger.height - skin };
  const distances = frame.row.digits.map((d) => {
    const body: Body = { center: { x: d.x, y: -d.halfDepth }, a: d.halfWidth, b: d.halfDepth, offset: 0 };
    return { digit: d, distance: distanceToBody(body, place) };
  });
  const nearest = distances.reduce((a, b) => (b.distance < a.distance ? b : a));
  const under = frame.row.digits.find((d) => along <= d.to) ?? frame.row.digits.at(-1);
  const column = face.columns.find((c) => c.digit === under?.digit);
  return {
    gap: nearest.distance - half,
    at: 'fingers',
    onMidline: Math.abs(along - nearest.digit.along) <= ON_MIDLINE,
    // The sheet is bent about the line between the joints, the finger's length counts from its own.
    toPip: column ? column.reach + options.pipClearance - (finger.along + mpY - column.mpY) : Number.POSITIVE_INFINITY,
  };
}

/** Whether a point belongs to the hand part in front of free digits, whatever the held digits' bend does: up to the rounded corner at their edge. */
function besideFreeDigit(face: FaceFrame, { x, y }: Point): boolean {
  const at = face.columns.find((c) => x < c.to) ?? face.columns.at(-1);
  if (!at || at.held) return false;
  const held = face.columns.findIndex((c) => c.held);
  const radial = face.columns.indexOf(at) < held;
  const edges = face.columns.filter((c, k) => !c.held && k < held === radial).map((c) => c.edge);
  return y <= Math.max(...edges) + EDGE_CORNER;
}

/** y of the MP joint line at x: through the held digits' joints, level beyond the outer two. */
function mpLineAt(face: FaceFrame, x: number): number {
  const held = face.columns.filter((c) => c.held).map((c) => ({ x: c.mpX, y: c.mpY }));
  const first = held[0] as Point;
  const last = held.at(-1) as Point;
  if (x <= first.x) return first.y;
  if (x >= last.x) return last.y;
  const k = held.findIndex((p) => p.x > x);
  const [a, b] = [held[k - 1] as Point, held[k] as Point];
  return a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
}

/** The neutral line's point at a distance into the bend, in the hand's sagittal plane: x along the metacarpal from the MP axis, y toward the face. */
function bentTo(face: FaceFrame, frame: PlateFrame, distance: number, options: PlateOptions): { sagittal: Point; normal: number } {
  const { bend } = face;
  const radius = bend.insideRadius + options.thickness / 2;
  const inBend = Math.min(distance, bend.allowance);
  const turned = inBend / radius;
  const beyond = distance - inBend;
  const skinSide = frame.palm.mpDepth / 2 + options.skinClearance;
  if (face.face === 'dorsal') {
    const sagittal = {
      x: radius * Math.sin(turned) + beyond * Math.cos(turned),
      y: radius * Math.cos(turned) - beyond * Math.sin(turned),
    };
    return { sagittal, normal: -turned };
  }
  const centre = { x: -bend.before, y: skinSide + options.thickness + bend.insideRadius };
  const sagittal = {
    x: centre.x + radius * Math.sin(turned) + beyond * Math.cos(turned),
    y: centre.y - radius * Math.cos(turned) + beyond * Math.sin(turned),
  };
  return { sagittal, normal: turned };
}

/** From the hand's sagittal plane into the finger's, which stands at the MP angle; `raised` along the sheet's own normal, turned by `normal`. */
function inFingerFrame(face: FaceFrame, at: Point, normal: number, raised: number): { readonly along: number; readonly height: number } {
  const x = at.x - raised * Math.sin(normal);
  const y = at.y + raised * Math.cos(normal);
  const a = radians(face.bend.angle) * (face.face === 'dorsal' ? 1 : -1);
  return { along: x * Math.cos(a) - y * Math.sin(a), height: x * Math.sin(a) + y * Math.cos(a) };
}

/** Skin to neutral line inside the bend: outside it the skin is round about the axis, inside it palm and finger meet in a corner. */
function bendGap(face: FaceFrame, at: Point, skin: number): number {
  if (face.face === 'dorsal') return Math.hypot(at.x, at.y) - skin;
  return Math.min(at.y, inFingerFrame(face, at, 0, 0).height) - skin;
}

/** Distance from a point to a convex body: the largest by which it lies beyond a tangent. Negative inside. */
function distanceToBody(body: Body, p: Point): number {
  const beyond = (angle: number) => {
    const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
    return nx * (p.x - body.center.x) + ny * (p.y - body.center.y) - support(body, nx, ny);
  };
  let step = (2 * Math.PI) / NORMALS;
  let best = 0;
  for (let k = 1; k < NORMALS; k++) if (beyond(k * step) > beyond(best)) best = k * step;
  for (let k = 0; k < REFINEMENTS; k++) {
    step /= 2;
    for (const angle of [best - step, best + step]) if (beyond(angle) > beyond(best)) best = angle;
  }
  return beyond(best);
}

/**
 * The bound that the worst gap must keep: between two round digits a taut sheet stands (sqrt(2) - 1) half widths off, a little more where one is
 * deeper than wide or the gap between them is large; and where the hand narrows toward the wrist it stands off by a border's share of that.
 */
export function foldBound(frame: PlateFrame, options: PlateOptions): number {
  const widest = Math.max(...frame.row.digits.map((d) => Math.max(d.halfWidth, d.halfDepth)));
  const valley = (Math.SQRT2 - 1) * (widest + options.webGap) + options.webGap;
  const narrowing =
    (frame.section.breadth - frame.proximalSection.breadth) / 2 +
    (options.trim * frame.section.breadth) / (2 * frame.palm.metacarpalLength);
  return options.skinClearance + Math.max(valley, narrowing) + 0.5;
}
