import type { Point } from '../../geometry/path.ts';
import type { DigitName } from '../../hand/digits.ts';
import { radians } from '../../units/angle.ts';
import { type Bend, bendShift } from './bend.ts';
import type { BendLine, MpJoint } from './bend-forms.ts';
import type { DigitRow, RowDigit } from './digit-row.ts';

/**
 * The part of a plate that lies over fingers behind one bend. Its own flat coordinates: `across` square to the fingers, radial to ulnar, and
 * `along` them; on the flat plate it lies turned by `heading`, by as much as an oblique bend turns it back. mm, radians.
 */
export interface FingerPart {
  readonly digits: readonly DigitName[];
  readonly row: DigitRow;
  /** The bend at its steepest; of a kinked line that of each digit. */
  readonly bend: Bend;
  readonly kinked: boolean;
  /** From the row's own coordinate to `across`. */
  readonly rowStart: number;
  /** From straight up the plate toward the ulnar side. */
  readonly heading: number;
  /** Where the bend begins on the flat plate at x, and where it ends at a place across. */
  readonly beginAt: (x: number) => number;
  readonly endAt: (across: number) => number;
  readonly toFlat: (across: number, along: number) => Point;
  /** The `along` of the point of a line along the fingers that lies at height y of the flat plate. */
  readonly alongAt: (across: number, y: number) => number;
  readonly held: readonly PartDigit[];
}

/** One held digit in its part. */
export interface PartDigit {
  readonly digit: DigitName;
  readonly row: RowDigit;
  /** Its midline at mid phalanx, and at the MP joint. */
  readonly across: number;
  readonly mpAcross: number;
  /** Along: its MP joint as if the finger were straight, so that a length measured along the finger counts from here. */
  readonly joint: number;
  /** Its MP joint on the flat plate, half-way through its own bend. */
  readonly mp: Point;
}

/**
 * A part behind a straight bend line. Where the line is oblique the fingers' planes do not all lie at one height: the finger part lies in the
 * plane that the line and the fingers span, in which the fingers stand `spread` times as far apart as across the hand.
 * @param row the part's digits, each at the height that the line gives it
 * @param line the MP joint line that the bend is laid along
 * @param ahead where each digit lies across the hand at mid phalanx, beside its neighbours
 */
export function straightPart(row: DigitRow, line: BendLine, bend: Bend, angle: number, ahead: ReadonlyMap<DigitName, number>): FingerPart {
  const { slope } = bend;
  const [a, turn, tilt] = [radians(angle), radians(bend.turn), Math.atan(slope)];
  const [sine, cosine] = [Math.sin(tilt), Math.cos(tilt)];
  const spread = Math.hypot(1, slope * Math.sin(a));
  const neutralRadius = turn === 0 ? 0 : bend.allowance / turn;
  const lag = bend.allowance - neutralRadius * Math.sin(turn);
  // The finger through x 0 leaves the bend here; along it the flat plate runs on at `heading`.
  const level = line.level - bend.before;
  const origin = { x: -sine * lag, y: level + sine * Math.tan(tilt) * neutralRadius * Math.sin(turn) + bend.allowance * cosine };
  const heading = Math.atan2(-sine * (1 - Math.cos(turn)), cosine + (sine * sine * Math.cos(turn)) / cosine);
  const [hs, hc] = [Math.sin(heading), Math.cos(heading)];
  const toFlat = (across: number, along: number): Point => ({
    x: origin.x + across * hc + along * hs,
    y: origin.y - across * hs + along * hc,
  });
  // The bend's end runs with the line's slope; in the part's own coordinates it is turned by the heading.
  const endSlope = (hs + slope * hc) / (hc - slope * hs);
  const endAt = (across: number) => across * endSlope;
  const beginAt = (x: number) => level + slope * x;
  const joints = new Map(line.joints.map((j) => [j.digit, j]));
  const places = row.digits.map((d) => spread * (ahead.get(d.digit) as number) - d.along);
  const rowStart = places.reduce((sum, place) => sum + place, 0) / places.length;
  const held = row.digits.map((d): PartDigit => {
    const { x, y } = joints.get(d.digit) as MpJoint;
    const off = y - line.level - slope * x;
    const end = toFlat(spread * x, endAt(spread * x));
    return {
      digit: d.digit,
      row: d,
      across: rowStart + d.along,
      mpAcross: spread * x,
      joint: endAt(spread * x) - bend.before + off * Math.cos(a),
      mp: { x: (x + end.x) / 2, y: (beginAt(x) + end.y) / 2 + fromMiddle(off, neutralRadius, a) },
    };
  });
  const alongAt = (across: number, y: number) => (y - toFlat(across, 0).y) / hc;
  return { digits: row.digits.map((d) => d.digit), row, bend, kinked: false, rowStart, heading, beginAt, endAt, toFlat, alongAt, held };
}

/**
 * How far from the middle of the bend, along the sheet, the place lies that halves the angle between hand and finger of a joint `off` the line:
 * round the bend, and beyond it on the straight leg. `angle` in radians.
 */
function fromMiddle(off: number, radius: number, angle: number): number {
  const aside = Math.abs(off) * Math.cos(angle / 2);
  const round = radius * Math.sin(angle / 2);
  const along =
    aside <= round && radius > 0 ? radius * Math.asin(aside / radius) : (radius * angle) / 2 + (aside - round) / Math.cos(angle / 2);
  return Math.sign(off) * along;
}

/** A part behind a line with a kink at each joint: each digit's own column bends about its own joint. */
export function kinkedPart(row: DigitRow, joints: readonly MpJoint[], bend: Bend): FingerPart {
  const of = (digit: DigitName) => joints.find((j) => j.digit === digit) as MpJoint;
  const rowStart = row.digits.reduce((sum, d) => sum + of(d.digit).x - d.along, 0) / row.digits.length;
  const held = row.digits.map((d): PartDigit => {
    const { x, y } = of(d.digit);
    return {
      digit: d.digit,
      row: d,
      across: rowStart + d.along,
      mpAcross: x,
      joint: y + bendShift(bend),
      mp: { x, y: y - bend.before + bend.length / 2 },
    };
  });
  const begins = joints.map(({ x, y }) => ({ x, y: y - bend.before }));
  return {
    digits: row.digits.map((d) => d.digit),
    row,
    bend,
    kinked: true,
    rowStart,
    heading: 0,
    beginAt: (x) => levelAt(begins, x),
    endAt: (across) => levelAt(begins, across) + bend.length,
    toFlat: (x, y) => ({ x, y }),
    alongAt: (_, y) => y,
    held,
  };
}

/** y of a line through the points at x, level beyond the outer two. */
function levelAt(points: readonly Point[], x: number): number {
  const first = points[0] as Point;
  const last = points.at(-1) as Point;
  if (x <= first.x) return first.y;
  if (x >= last.x) return last.y;
  const k = points.findIndex((p) => p.x > x);
  const [a, b] = [points[k - 1] as Point, points[k] as Point];
  return a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
}
