import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { averageDigit } from '../../hand/estimate.ts';
import { type CompletePalm, completePalm } from '../../hand/estimate-palm.ts';
import { digitsIn } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { type Bend, bendShift, dorsalBend, palmarBend } from './bend.ts';
import { type DigitRow, digitRow, type RowDigit } from './digit-row.ts';
import { alongFace, faceLength, type PalmSection, palmSection, scaledPalm } from './palm-section.ts';
import { type Face, facesOf, type PlateDesign } from './plate-design.ts';
import type { PlateOptions } from './plate-options.ts';

/**
 * What one face of a plate is built on. Flat coordinates, mm: x along the hand's section from its middle, radial negative; y along the hand,
 * 0 at the long finger's MP joint line, distal positive (beyond the bend as the flat plate lies).
 */
export interface FaceFrame {
  readonly face: Face;
  readonly bend: Bend;
  /** How much further distal than on the hand a point beyond the bend lies. */
  readonly shift: number;
  /** x of the mid-lateral lines at the metacarpal heads and at the proximal edge, to either side. */
  readonly midLateral: number;
  readonly midLateralProximal: number;
  readonly proximal: number;
  /** How far hand part and finger part reach past the mid-lateral lines; negative when the faces meet there. */
  readonly wing: number;
  readonly walls: { readonly radial: number; readonly ulnar: number };
  /** From the row's own coordinate to x. */
  readonly rowStart: number;
  readonly columns: readonly Column[];
}

/** One digit in the flat plate. */
export interface Column {
  readonly digit: DigitName;
  /** The digit's part of the row, or null where its MP joint is left free. */
  readonly held: RowDigit | null;
  /** Its stretch of x at the metacarpal heads, and where its MP joint lies. */
  readonly from: number;
  readonly to: number;
  readonly mpX: number;
  readonly mpY: number;
  /** How far distal the plate may reach here. */
  readonly edge: number;
  /** Held digits: where a side wall beside the web may begin. */
  readonly web: number;
  /** Held digits: skin length from the MP joint line to the limit that must stay free. */
  readonly reach: number;
}

export interface PlateFrame {
  readonly palm: CompletePalm;
  readonly section: PalmSection;
  readonly proximalSection: PalmSection;
  readonly row: DigitRow;
  /** Skin length that is covered proximal of the long finger's MP joint line. */
  readonly cover: number;
  readonly faces: readonly FaceFrame[];
  readonly estimated: readonly string[];
}

/** Wrist circumference over hand circumference, from which the hand tapers: from memory, to be replaced by a measured value. */
export const WRIST_SHARE = 0.83;
/** PIP crease to PIP joint, the middle of 2 to 3 mm. Bugbee & Botte, Clin Orthop 1993. */
export const PIP_CREASE_TO_JOINT = 2.5;
/** The least that a plate may cover of a finger beyond its bend, and of the hand before it: less does not hold. Ours, no source. mm */
const LEAST_FINGER = 8;
const LEAST_HAND = 12;
/** How far a held digit's edge must stand beyond that of a free neighbour: room for two rounded corners. mm */
const LEAST_BESIDE = 14;

/** Everything that outlines and marks are built on. Refused with every reason when the hand leaves no room for the plate. */
export function plateFrame(hand: Hand, design: PlateDesign, options: PlateOptions): Result<PlateFrame> {
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
  const faces = facesOf(design.faces).map((face) =>
    faceFrame(face, hand, palm, section, proximalSection, row.value, cover, design, options),
  );
  const problems = faces.flatMap((frame) => roomProblems(frame, options));
  if (problems.length > 0) return failure(...problems);
  const estimated = [
    ...completed.estimated.map((e) => e.where),
    ...hand.estimated.map((e) => e.where).filter((where) => design.digits.some((digit) => where.startsWith(`digits.${digit}.`))),
  ];
  return success({ palm, section, proximalSection, row: row.value, cover, faces, estimated }, completed.warnings);
}

function faceFrame(
  face: Face,
  hand: Hand,
  palm: CompletePalm,
  section: PalmSection,
  proximalSection: PalmSection,
  row: DigitRow,
  cover: number,
  design: PlateDesign,
  options: PlateOptions,
): FaceFrame {
  const offset = options.skinClearance + options.thickness / 2;
  const { thickness, skinClearance: clearance, neutralShare: neutral, palmarBendRadius: palmarRadius } = options;
  const inputs = { angle: design.angle, mpDepth: palm.mpDepth, clearance, thickness, neutral, palmarRadius };
  const bend = face === 'dorsal' ? dorsalBend(inputs) : palmarBend(inputs);
  const shift = bendShift(bend);
  const stretches = mpStretches(hand, section, offset);
  const held = row.digits.map((d) => ({ along: d.along, mpX: stretches[d.digit].middle }));
  // The row lies so that its midlines are, on average, straight ahead of their MP joints.
  const rowStart = held.reduce((sum, d) => sum + d.mpX - d.along, 0) / held.length;
  const both = design.faces === 'both';
  const first = row.digits[0] as RowDigit;
  const last = row.digits.at(-1) as RowDigit;
  const wall = (d: RowDigit) => (both ? -options.faceGap / 2 : options.sideWall * 2 * d.halfDepth);
  // A palmar edge beside a free digit must leave it room to bend to 90 degrees round its MP axis.
  const freeMp = face === 'dorsal' ? options.mpClearance : Math.max(options.mpClearance, palm.mpDepth / 2 + clearance);
  const columns = DIGITS.map((digit): Column => {
    const mpY = -palm.setbacks[digit];
    const rowDigit = row.digits.find((d) => d.digit === digit) ?? null;
    const measures = hand.digits[digit];
    const { from, to, middle } = stretches[digit];
    const place = { digit, held: rowDigit, from, to, mpX: middle, mpY };
    if (!rowDigit || !measures) return { ...place, edge: mpY - freeMp, web: mpY, reach: 0 };
    const crease = measures.dorsalLength - PIP_CREASE_TO_JOINT;
    const reach = (face === 'dorsal' ? measures.dorsalLength : crease) - options.pipClearance;
    return { ...place, edge: mpY + shift + reach, web: mpY + shift + crease - measures.palmarRoom + options.webClearance, reach };
  });
  const quarter = (s: PalmSection) => faceLength(s, offset) / 2;
  return {
    face,
    bend,
    shift,
    midLateral: quarter(section),
    midLateralProximal: quarter(proximalSection),
    proximal: -cover - options.trim,
    // A wing ends where the border's round ends.
    wing: both ? -options.faceGap / 2 : Math.min(options.wing, (Math.PI / 2) * (proximalSection.thickness / 2 + offset)),
    walls: { radial: wall(first), ulnar: wall(last) },
    rowStart,
    columns,
  };
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
  distal: readonly { readonly digit: DigitName; readonly y: number }[],
  options: PlateOptions,
): readonly Problem[] {
  const { bend, face, columns } = frame;
  return distal.flatMap(({ digit, y }): readonly Problem[] => {
    const at = columns.findIndex((c) => c.digit === digit);
    const column = columns[at] as Column;
    const free = [columns[at - 1], columns[at + 1]].filter((c) => c !== undefined && !c.held) as readonly Column[];
    const finger = column.reach - bend.before - (column.edge - y);
    const beside = Math.min(Number.POSITIVE_INFINITY, ...free.map((c) => y - c.edge));
    if (y === column.edge || (finger >= LEAST_FINGER && beside >= LEAST_BESIDE)) return [];
    const left =
      finger < LEAST_FINGER
        ? `${plain(Math.max(0, finger), 1)} mm of it beyond the bend, under ${LEAST_FINGER}`
        : `${plain(Math.max(0, beside), 1)} mm beyond the edge at the free finger beside it, under ${LEAST_BESIDE}`;
    const message = `digits.${digit}: the step to the shorter edge beside it would leave the ${face} plate only ${left}. Measure dorsalLength and mpSetback of these digits again, use a pipClearance under ${plain(options.pipClearance)} mm, or leave a digit out.`;
    return [{ code: 'PLATE_NO_ROOM', where: `digits.${digit}`, message, kind: 'refused' }];
  });
}

function roomProblems(frame: FaceFrame, options: PlateOptions): readonly Problem[] {
  const problems: Problem[] = [];
  const { bend, face } = frame;
  const refuse = (digit: DigitName, message: string) =>
    problems.push({ code: 'PLATE_NO_ROOM', where: `digits.${digit}`, message: `digits.${digit}: ${message}`, kind: 'refused' });
  const smaller = bend.angle > 0 && face === 'palmar' ? 'a smaller MP angle, ' : '';
  for (const [k, column] of frame.columns.entries()) {
    for (const free of [frame.columns[k - 1], frame.columns[k + 1]]) {
      if (!column.held || !free || free.held || column.edge - free.edge >= LEAST_BESIDE) continue;
      const beside = `${plain(Math.max(0, column.edge - free.edge), 1)} mm beyond the edge at the free ${free.digit} finger, under ${LEAST_BESIDE}`;
      refuse(
        column.digit,
        `the ${face} plate would hold the ${column.digit} finger only ${beside}. Take the ${free.digit} finger in, or use ${smaller}a pipClearance under ${plain(options.pipClearance)} mm.`,
      );
    }
    if (column.held) {
      const finger = column.reach - bend.before;
      if (finger < LEAST_FINGER)
        refuse(
          column.digit,
          `at ${plain(bend.angle)} degrees the ${face} plate would cover only ${plain(Math.max(0, finger), 1)} mm of the ${column.digit} finger beyond its bend, under ${LEAST_FINGER}. Use ${smaller}a pipClearance under ${plain(options.pipClearance)} mm, or leave the digit out.`,
        );
    }
    const hand = (column.held ? column.mpY - bend.before : column.edge) - frame.proximal - options.trim;
    if (hand < LEAST_HAND)
      refuse(
        column.digit,
        `the ${face} plate would cover only ${plain(Math.max(0, hand), 1)} mm of the hand before the ${column.digit} finger, under ${LEAST_HAND}. Use ${smaller}a larger coverShare, or measure metacarpalLength and mpSetback again.`,
      );
  }
  return problems;
}
