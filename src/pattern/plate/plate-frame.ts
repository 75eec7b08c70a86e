import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { averageDigit } from '../../hand/estimate.ts';
import { type CompletePalm, completePalm } from '../../hand/estimate-palm.ts';
import { digitsIn } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { radians } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { CREASE_TO_JOINT } from '../free-flexion.ts';
import { bendAlong } from './bend.ts';
import { type BendCost, type BendForm, type BendLine, bendLines, costOf, leastCost, type MpJoint } from './bend-forms.ts';
import { type DigitRow, digitRow, type RowDigit } from './digit-row.ts';
import { type FingerPart, kinkedPart, type PartDigit, straightPart } from './finger-part.ts';
import { alongFace, faceLength, type PalmSection, palmSection, scaledPalm } from './palm-section.ts';
import { type Face, facesOf, type PlateDesign } from './plate-design.ts';
import type { BendChoice, PlateOptions } from './plate-options.ts';
import { slotFits } from './slot.ts';

/**
 * What one face of a plate is built on. Flat coordinates, mm: x along the hand's section from its middle, radial negative; y along the hand,
 * 0 at the long finger's MP joint line, distal positive (beyond the bend as the flat plate lies).
 */
export interface FaceFrame {
  readonly face: Face;
  readonly angle: number;
  readonly bend: PlateBend;
  /** The finger part, or the two beside a slot, from radial to ulnar. */
  readonly parts: readonly FingerPart[];
  /** x of the mid-lateral lines at the metacarpal heads and at the proximal edge, to either side. */
  readonly midLateral: number;
  readonly midLateralProximal: number;
  readonly proximal: number;
  /** How far hand part and finger part reach past the mid-lateral lines; negative when the faces meet there. */
  readonly wing: number;
  readonly walls: { readonly radial: number; readonly ulnar: number };
  /** No edge that wraps past the radial mid-lateral line may lie nearer to the wrist: the thumb web is below. */
  readonly thumbLimit: number;
  readonly columns: readonly Column[];
}

/** Which way a face is folded, and what each way would cost. */
export interface PlateBend {
  readonly asked: BendChoice;
  readonly form: BendForm;
  /** Null where a way is not to be had: no ring and little finger to split between, or no room for the slot. */
  readonly costs: Readonly<Record<BendForm, BendCost | null>>;
}

/** One digit in the flat plate. */
export interface Column {
  readonly digit: DigitName;
  /** What is held of it, or null where its MP joint is left free. */
  readonly held: HeldColumn | null;
  /** Its stretch of x at the metacarpal heads, and where its MP joint lies. */
  readonly from: number;
  readonly to: number;
  readonly mpX: number;
  readonly mpY: number;
  /** Free digits: how far distal the plate may reach here, y. */
  readonly edge: number;
}

/** A held digit in its finger part, in the part's own coordinates. */
export interface HeldColumn extends PartDigit {
  readonly part: FingerPart;
  /** Along: how far distal the plate may reach here, and where a side wall beside the web may begin. */
  readonly edge: number;
  readonly web: number;
  /** Along: where its bend ends. */
  readonly bendEnd: number;
}

/** A column whose MP joint is held. */
export type HeldDigit = Column & { readonly held: HeldColumn };

export function heldColumns(frame: Pick<FaceFrame, 'columns'>): readonly HeldDigit[] {
  return frame.columns.filter((c): c is HeldDigit => c.held !== null);
}

export interface PlateFrame {
  /** As asked for, or with what a palmar face was closed in by; and those of a dorsal face. */
  readonly options: PlateOptions;
  readonly back: PlateOptions;
  readonly palm: CompletePalm;
  readonly section: PalmSection;
  readonly proximalSection: PalmSection;
  /** The held digits side by side, their skin in one plane: for straps, which go round them square. */
  readonly row: DigitRow;
  readonly digits: readonly DigitName[];
  /** Skin length that is covered proximal of the long finger's MP joint line. */
  readonly cover: number;
  readonly faces: readonly FaceFrame[];
  readonly estimated: readonly string[];
}

/** Wrist circumference over hand circumference, from which the hand tapers: from memory, to be replaced by a measured value. */
export const WRIST_SHARE = 0.83;
/** The least that a plate may cover of a finger beyond its bend, and of the hand before it: less does not hold. Ours, no source. mm */
export const LEAST_FINGER = 8;
const LEAST_HAND = 12;
/** A finger part that would be shorter than this beyond its bend is left away. mm */
export const SHORTEST_FINGER = 3;
/** How far a held digit's edge must stand beyond that of a free neighbour: room for two rounded corners. mm */
const LEAST_BESIDE = 14;
/** Free space between the radial wing and the thumb web. Ours, no source. mm */
export const THUMB_CLEARANCE = 5;

/**
 * Everything that outlines and marks are built on; whether it leaves the plate enough to hold is for `roomProblems` to say. Fails where a measure is
 * missing or contradicts another.
 * @param back options of the dorsal face, where a palmar one is closed in by itself
 */
export function plateFrame(hand: Hand, design: PlateDesign, options: PlateOptions, back: PlateOptions = options): Result<PlateFrame> {
  const completed = completePalm(hand, (breadth, circumference) => palmSection(breadth, circumference)?.thickness ?? null);
  const row = digitRow(hand, design.digits, options);
  if (completed.problems.length > 0 || !row.ok) return failure(...completed.problems, ...(row.ok ? [] : row.problems));
  const { palm } = completed;
  const section = palmSection(palm.handBreadth, palm.handCircumference);
  if (!section) {
    const message = `handCircumference: breadth ${plain(palm.handBreadth, 1)} mm and circumference ${plain(palm.handCircumference, 1)} mm belong to no palm. Measure both again, without the thumb.`;
    return failure({ code: 'PALM_IMPOSSIBLE', where: 'handCircumference', message, kind: 'refused' });
  }
  const cover = Math.min(options.coverShare * palm.metacarpalLength, palm.metacarpalLength - options.wristClearance);
  const proximalSection = scaledPalm(section, 1 - (1 - WRIST_SHARE) * (cover / palm.metacarpalLength));
  const faces: FaceFrame[] = [];
  for (const face of facesOf(design.faces)) {
    const own = face === 'dorsal' ? back : options;
    const made = faceFrame(face, { hand, palm, section, proximalSection, cover, design, options: own, row: row.value });
    if (!made.ok) return made;
    faces.push(made.value);
  }
  const estimated = [
    ...completed.estimated.map((e) => e.where),
    ...hand.estimated.map((e) => e.where).filter((where) => design.digits.some((digit) => where.startsWith(`digits.${digit}.`))),
  ];
  const frame = { options, back, palm, section, proximalSection, row: row.value, digits: design.digits, cover, faces, estimated };
  return success(frame, completed.warnings);
}

interface FaceInputs {
  readonly hand: Hand;
  readonly palm: CompletePalm;
  readonly section: PalmSection;
  readonly proximalSection: PalmSection;
  readonly cover: number;
  readonly design: PlateDesign;
  readonly options: PlateOptions;
  /** All held digits side by side. */
  readonly row: DigitRow;
}

function faceFrame(face: Face, inputs: FaceInputs): Result<FaceFrame> {
  const { hand, palm, section, proximalSection, cover, design, options } = inputs;
  const offset = options.skinClearance + options.thickness / 2;
  const stretches = mpStretches(hand, section, offset);
  const joints = design.digits.map((digit): MpJoint => ({ digit, x: stretches[digit].middle, y: -palm.setbacks[digit] }));
  const folded = foldedParts(face, joints, inputs);
  if (!folded.ok) return folded;
  const { bend, parts } = folded.value;
  const both = design.faces === 'both';
  const row = parts.flatMap((part) => part.row.digits);
  const wall = (d: RowDigit | undefined) => (both ? -options.faceGap / 2 : options.sideWall * 2 * (d?.halfDepth ?? 0));
  // A palmar edge beside a free digit must leave it room to bend to 90 degrees round its MP axis.
  const freeMp = face === 'dorsal' ? options.mpClearance : Math.max(options.mpClearance, palm.mpDepth / 2 + options.skinClearance);
  const all = DIGITS.map((digit): Column => {
    const mpY = -palm.setbacks[digit];
    const { from, to, middle } = stretches[digit];
    const place = { digit, from, to, mpX: middle, mpY, edge: mpY - freeMp };
    const part = parts.find((p) => p.digits.includes(digit));
    const found = part?.held.find((d) => d.digit === digit);
    const measures = hand.digits[digit];
    if (!part || !found || !measures) return { ...place, held: null };
    const crease = measures.dorsalLength - CREASE_TO_JOINT;
    const reach = (face === 'dorsal' ? measures.dorsalLength : crease) - options.pipClearance;
    const web = found.joint + crease - measures.palmarRoom + options.webClearance;
    return { ...place, held: { ...found, part, edge: found.joint + reach, web, bendEnd: part.endAt(found.across) } };
  });
  // Beside a held digit the edge lies so far back that the corners between the two edges can be round.
  const columns = all.map((column, k): Column => {
    const beside = [all[k - 1], all[k + 1]].flatMap((c) =>
      c?.held ? [c.held.part.toFlat(c.held.across, c.held.edge).y - LEAST_BESIDE] : [],
    );
    return column.held ? column : { ...column, edge: Math.min(column.edge, ...beside) };
  });
  const quarter = (s: PalmSection) => faceLength(s, offset) / 2;
  return success({
    face,
    angle: design.angle,
    bend,
    parts,
    midLateral: quarter(section),
    midLateralProximal: quarter(proximalSection),
    proximal: -cover - options.trim,
    // A wing ends where the border's round ends.
    wing: both ? -options.faceGap / 2 : Math.min(options.wing, (Math.PI / 2) * (proximalSection.thickness / 2 + offset)),
    walls: { radial: wall(row[0]), ulnar: wall(row.at(-1)) },
    thumbLimit: -palm.thumbWebSetback + THUMB_CLEARANCE,
    columns,
  });
}

/** The finger parts behind the bend that was asked for, or behind the one that costs least. */
function foldedParts(
  face: Face,
  joints: readonly MpJoint[],
  inputs: FaceInputs,
): Result<{ readonly bend: PlateBend; readonly parts: readonly FingerPart[] }> {
  const { design, options } = inputs;
  const asked = options.bend;
  const lines = { straight: bendLines('straight', joints), split: bendLines('split', joints), kinked: null };
  const made = {
    straight: partsOf(face, 'straight', lines.straight, joints, inputs),
    split: partsOf(face, 'split', lines.split, joints, inputs),
  };
  const fits = made.split?.every((r) => r.ok) && slotFits(made.split.flatMap((r) => (r.ok ? [r.value] : [])));
  const costs = {
    straight: costOf('straight', lines.straight, joints, design.angle),
    split: fits ? costOf('split', lines.split, joints, design.angle) : null,
    kinked: costOf('kinked', null, joints, design.angle),
  };
  const form = asked === 'auto' ? leastCost(costs) : asked;
  if (!costs[form]) {
    const why = lines.split
      ? 'their finger parts would lie over each other on the flat plate'
      : 'it needs a ring and a little finger that are held';
    const message = `bend: the plate cannot be split between ring and little finger: ${why}. Use bend straight, kinked or auto.`;
    return failure({ code: 'PLATE_BEND', where: 'bend', message, kind: 'refused' });
  }
  const results = form === 'kinked' ? partsOf(face, 'kinked', null, joints, inputs) : made[form];
  const problems = (results ?? []).flatMap((r) => (r.ok ? [] : r.problems));
  if (problems.length > 0) return failure(...problems);
  return success({ bend: { asked, form, costs }, parts: (results ?? []).flatMap((r) => (r.ok ? [r.value] : [])) });
}

/** Where each digit of the whole row lies across at mid phalanx: the row lies so that its midlines are, on average, straight ahead of their MP joints. */
function besideNeighbours(row: DigitRow, joints: readonly MpJoint[]): ReadonlyMap<DigitName, number> {
  const start = row.digits.reduce((sum, d, k) => sum + (joints[k] as MpJoint).x - d.along, 0) / row.digits.length;
  return new Map(row.digits.map((d) => [d.digit, start + d.along]));
}

/** The parts of one way to fold; null where it has no lines. */
function partsOf(
  face: Face,
  form: BendForm,
  lines: readonly BendLine[] | null,
  joints: readonly MpJoint[],
  { hand, palm, design, options, row: flatRow }: FaceInputs,
): readonly Result<FingerPart>[] | null {
  const { angle } = design;
  const { thickness, skinClearance: clearance, neutralShare: neutral, palmarBendRadius: palmarRadius } = options;
  const bends = { angle, dorsalRadius: palm.mpDorsalRadius, palmarDepth: palm.mpDepth / 2, clearance, thickness, neutral, palmarRadius };
  // A joint that lies further distal holds its finger's back further out, and its palm side further in.
  const rise = Math.sin(radians(angle)) * (face === 'dorsal' ? 1 : -1);
  if (form === 'kinked') {
    const heights = (digit: DigitName) => rise * (joints.find((j) => j.digit === digit)?.y ?? 0);
    const row = digitRow(hand, design.digits, options, heights);
    return [row.ok ? success(kinkedPart(row.value, joints, bendAlong(face, 0, bends))) : row];
  }
  if (!lines) return null;
  const ahead = besideNeighbours(flatRow, joints);
  return lines.map((line) => {
    const digits = line.joints.map((j) => j.digit);
    const row = digitRow(hand, digits, options, (_, x) => rise * line.slope * x);
    if (!row.ok) return row;
    // Laid so far to the free side that nothing is pressed, neither at the knuckles nor at mid phalanx, where the fingers lie closer together: over
    // the foremost joint behind, over the hindmost in front.
    const levels = line.joints.flatMap(({ digit, x, y }) => [x, ahead.get(digit) as number].map((at) => y - line.slope * at));
    const laid = { ...line, level: face === 'dorsal' ? Math.max(...levels) : Math.min(...levels) };
    return success(straightPart(row.value, laid, bendAlong(face, line.slope, bends), angle, ahead));
  });
}

/** The stretch of x over each metacarpal head: the breadth shared out by the digits' widths, where not measured by average ones. */
function mpStretches(hand: Hand, section: PalmSection, offset: number) {
  const measured = digitsIn(hand.digits);
  const scale =
    measured.reduce((sum, digit) => sum + (hand.digits[digit]?.width ?? 0) / averageDigit(digit).circumference, 0) /
    Math.max(1, measured.length);
  const widths = DIGITS.map((digit) => hand.digits[digit]?.width ?? averageDigit(digit).circumference * scale);
  const total = widths.reduce((sum, width) => sum + width, 0);
  let before = 0;
  const stretch = (width: number) => {
    const at = (share: number) => alongFace(section, offset, ((before + share * width) / total - 0.5) * section.breadth);
    const found = { from: at(0), middle: at(0.5), to: at(1) };
    before += width;
    return found;
  };
  return Object.fromEntries(DIGITS.map((digit, k) => [digit, stretch(widths[k] as number)])) as Record<
    DigitName,
    { readonly from: number; readonly middle: number; readonly to: number }
  >;
}

/**
 * What the steps in the distal edge leave too little of: where a digit reaches far less distal than its neighbour, or its MP joint lies far
 * back, the neighbour's edge is cut back so that the step between them can be rounded. The list is empty when all are held.
 */
export function stepProblems(
  frame: FaceFrame,
  distal: readonly { readonly digit: DigitName; readonly along: number }[],
  options: PlateOptions,
): readonly Problem[] {
  const { face, columns } = frame;
  return heldColumns(frame).flatMap(({ digit, held }): readonly Problem[] => {
    const at = columns.findIndex((c) => c.digit === digit);
    const along = distal.find((d) => d.digit === digit)?.along ?? held.edge;
    const free = [columns[at - 1], columns[at + 1]].filter((c) => c !== undefined && !c.held) as readonly Column[];
    const finger = along - held.bendEnd;
    const beside = Math.min(Number.POSITIVE_INFINITY, ...free.map((c) => held.part.toFlat(held.across, along).y - c.edge));
    if (along === held.edge || (finger >= SHORTEST_FINGER && beside >= LEAST_BESIDE)) return [];
    const left =
      finger < SHORTEST_FINGER
        ? `${plain(Math.max(0, finger), 1)} mm of it beyond the bend, under ${SHORTEST_FINGER}`
        : `${plain(Math.max(0, beside), 1)} mm beyond the edge at the free finger beside it, under ${LEAST_BESIDE}`;
    const message = `digits.${digit}: the step to the shorter edge beside it would leave the ${face} plate only ${left}. Measure dorsalLength and mpSetback of these digits again, use a pipClearance under ${plain(options.pipClearance)} mm, or leave a digit out.`;
    return [{ code: 'PLATE_NO_ROOM', where: `digits.${digit}`, message, kind: 'refused' }];
  });
}

/** Why a face would hold too little; an empty list when it holds enough. */
export function roomProblems(frame: FaceFrame, options: PlateOptions): readonly Problem[] {
  const problems: Problem[] = [];
  const { face, angle } = frame;
  const refuse = (digit: DigitName, message: string) =>
    problems.push({ code: 'PLATE_NO_ROOM', where: `digits.${digit}`, message: `digits.${digit}: ${message}`, kind: 'refused' });
  const smaller = angle > 0 && face === 'palmar' ? 'a smaller MP angle, ' : '';
  const longest = Math.max(...heldColumns(frame).map(({ held }) => held.edge - held.bendEnd));
  for (const column of frame.columns) {
    const { held, digit } = column;
    if (held) {
      const finger = held.edge - held.bendEnd;
      if (finger < SHORTEST_FINGER || longest < LEAST_FINGER)
        refuse(
          digit,
          `at ${plain(angle)} degrees the ${face} plate would cover only ${plain(Math.max(0, finger), 1)} mm of the ${digit} finger beyond its bend, under ${finger < SHORTEST_FINGER ? SHORTEST_FINGER : LEAST_FINGER}. Use ${smaller}a pipClearance under ${plain(options.pipClearance)} mm, or leave the digit out.`,
        );
    }
    const hand = (held ? held.part.beginAt(column.mpX) : column.edge) - frame.proximal - options.trim;
    if (hand < LEAST_HAND)
      refuse(
        digit,
        `the ${face} plate would cover only ${plain(Math.max(0, hand), 1)} mm of the hand before the ${digit} finger, under ${LEAST_HAND}. Use ${smaller}a larger coverShare, or measure metacarpalLength and mpSetback again.`,
      );
  }
  return problems;
}
