import type { LineArcPath, Point } from '../geometry/path.ts';
import { DIGITS, type DigitName, type Side } from '../hand/digits.ts';

/** A mark as a file draws it; dashes are strokes of their own. */
export interface DrawnMark {
  readonly role: string;
  readonly title: string;
  readonly paths: readonly LineArcPath[];
  readonly circles: readonly { readonly center: Point; readonly radius: number }[];
}

/** One face of a plate as it was drawn, and what it is said to be for. mm and degrees. */
export interface DrawnPlate {
  readonly outline: LineArcPath;
  readonly marks: readonly DrawnMark[];
  readonly face: 'dorsal' | 'palmar';
  readonly side: Side;
  readonly digits: readonly DigitName[];
  /** MP flexion that it is to hold, as a goniometer at the side of the joint shows it. */
  readonly angle: number;
  readonly thickness: number;
  /** Free space between skin and plate that it was drawn for. */
  readonly clearance: number;
}

/** A bend as it is marked: points of the lines where it begins and ends, from radial to ulnar, and the digits that it is for. */
export interface MarkedBend {
  readonly digits: readonly DigitName[];
  readonly middle: readonly Point[];
  /** Null where the bend is too short for lines of its own. */
  readonly begin: readonly Point[] | null;
  readonly end: readonly Point[] | null;
}

/** The drawing's lines put together again, seen with the radial side at the left: x radial to ulnar. */
export interface FlatPlate {
  readonly outline: LineArcPath;
  readonly bends: readonly MarkedBend[];
  readonly midlines: ReadonlyMap<DigitName, readonly Point[]>;
  /** Where MP joints are marked, from radial to ulnar. */
  readonly joints: readonly Point[];
  /** The marked mid-lateral lines of the hand part, distal end first. */
  readonly midLaterals: { readonly radial: Point | null; readonly ulnar: Point | null };
}

/**
 * Reads the marks. A plate lies skin side down, so that the radial side is at the left for the back of a right hand and the palm of a left one.
 * Null where a line that folding needs is missing: a midline for each digit, the MP joints, a bend line that names or covers each digit.
 */
export function readFlatPlate(drawn: DrawnPlate): FlatPlate | null {
  const turned = (drawn.face === 'dorsal') === (drawn.side === 'left') ? -1 : 1;
  const seen = (p: Point): Point => ({ x: turned * p.x, y: p.y });
  const ends = (mark: DrawnMark) => mark.paths.flatMap((path) => path.vertices.map(seen));
  const of = (role: string) => drawn.marks.filter((mark) => mark.role === role);
  const across = (mark: DrawnMark | undefined) => (mark ? ends(mark).sort((a, b) => a.x - b.x) : null);
  const bends = of('mp-bend').map((mark): MarkedBend => {
    const named = DIGITS.filter((digit) => new RegExp(`\\b${digit}\\b`).test(mark.title));
    const digits = named.length > 0 ? named : drawn.digits;
    const limits = of('bend-limit').filter((limit) => named.length === 0 || named.every((digit) => limit.title.includes(digit)));
    const limit = (word: string) => across(limits.find((l) => l.title.includes(word) && (named.length > 0 || limits.length <= 2)));
    return { digits, middle: across(mark) ?? [], begin: limit('begins'), end: limit('ends') };
  });
  const midlines = new Map<DigitName, readonly Point[]>();
  for (const mark of of('midline')) {
    const digit = DIGITS.find((d) => mark.title.startsWith(d));
    if (digit) midlines.set(digit, ends(mark));
  }
  const joints = of('mp-joint')
    .flatMap((mark) => mark.circles.map((circle) => seen(circle.center)))
    .sort((a, b) => a.x - b.x);
  const held = bends.flatMap((bend) => (bend.middle.length > 1 ? bend.digits : []));
  if (joints.length !== drawn.digits.length || drawn.digits.some((d) => !midlines.has(d) || !held.includes(d))) return null;
  const lateral = (which: string) => {
    const mark = of('fold').find((m) => m.title.startsWith(which) && m.title.endsWith('of the hand'));
    return mark ? ends(mark).reduce((a, b) => (b.y > a.y ? b : a)) : null;
  };
  const outline = {
    closed: true,
    vertices: drawn.outline.vertices.map((v) => ({ x: turned * v.x, y: v.y, bulge: v.bulge === 0 ? 0 : turned * v.bulge })),
  };
  return { outline, bends, midlines, joints, midLaterals: { radial: lateral('radial'), ulnar: lateral('ulnar') } };
}
