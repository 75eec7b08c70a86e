import { chordPoints } from '../../geometry/inside.ts';
import { boxOf, unionBox } from '../../geometry/path.ts';
import { placePath, reversePath } from '../../geometry/transform.ts';
import type { Hand } from '../../hand/hand.ts';
import { type FoldFindings, judgePlate } from '../../judge/judge-plate.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { Mark, Part, Pattern } from '../pattern.ts';
import { boxOfDrawn, shiftDrawn, shiftPart } from '../place-marks.ts';
import { type FittedPlate, fittedPlate, tryPlate } from './fitted-plate.ts';
import { designProblems, type Face, type PlateDesign } from './plate-design.ts';
import type { FaceFrame } from './plate-frame.ts';
import { faceLettering, placeFaceLabel } from './plate-labels.ts';
import { cornerMark, faceMarks } from './plate-marks.ts';
import { holdsIn, plateName } from './plate-names.ts';
import { plateNotes, plateSheet } from './plate-notes.ts';
import type { PlateOptions } from './plate-options.ts';
import type { PlateOutline } from './plate-outline.ts';
import { type PlateReport, plateFigures, plateReport, plateWarnings } from './plate-report.ts';
import { withTriedChange } from './tried-change.ts';

/** Raised whenever the same inputs give another outline; the CHANGELOG says by how many mm. */
export const PLATE_GEOMETRY_VERSION = '2';

/** Free margin round everything drawn, between two faces, and under them. mm */
const MARGIN = 5;
const FACE_GAP = 12;
const GAP_UNDER = 10;

export interface Plate {
  readonly pattern: Pattern;
  readonly report: PlateReport;
}

/**
 * The plate for a hand: its full-scale pattern, one part for each face, and its report. `date` is the person's, ISO, or null; the clock is
 * never read. Fails with every reason when the design breaks a rule, a measurement is missing and cannot be estimated, or the hand has no room.
 */
export function makePlate(
  hand: Hand,
  design: PlateDesign,
  asked: PlateOptions,
  date: string | null,
  language: Language = 'en',
): Result<Plate> {
  const speech = speechIn(language);
  const problems = designProblems(hand, design);
  if (problems.length > 0) return failure(...problems);
  const framed = fittedPlate(hand, design, asked);
  if (!framed.ok) return failure(...withTriedChange(framed.problems, hand, design, asked));
  // A digit that finds no room is left free; what is drawn and said is of those that are held, what travels along is what was asked for.
  const held = { ...design, digits: framed.value.frame.digits };
  const drawn = drawFaces(framed.value, hand, speech);
  const { frame, outlines, faces, folds } = clearOfJoints(drawn, hand, held, speech);
  const { options } = framed.value.frame;
  const figures = plateFigures(held, options, frame, outlines);
  const warnings = [...framed.warnings, ...plateWarnings(figures, folds)];
  const parts = sideBySide(faces.map((f) => f.part));
  const partsBox = unionBox(parts.map((part) => boxOf([part.outline])));
  const left = faces.flatMap((f) => f.left);
  const used = new Set(parts.flatMap((part) => part.marks.map((m) => m.role)));
  const sheet = shiftDrawn(
    plateSheet(figures, hand, date, left, partsBox.maxX - partsBox.minX, used, speech),
    partsBox.minX,
    partsBox.minY - GAP_UNDER,
  );
  const box = unionBox([partsBox, ...parts.map(boxOfDrawn), boxOfDrawn(sheet)]);
  const dx = MARGIN - box.minX;
  const dy = MARGIN - box.minY;
  const pattern: Pattern = {
    kind: 'plate',
    title: speech.plate.drawing(
      hand.code,
      speech.hand.side[hand.side],
      speech.plate.name(plateName(design, speech), holdsIn(held, speech)),
    ),
    parts: parts.map((part) => shiftPart(part, dx, dy)),
    beside: shiftDrawn(sheet, dx, dy),
    extents: { minX: 0, minY: 0, maxX: box.maxX + dx + MARGIN, maxY: box.maxY + dy + MARGIN },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: PLATE_GEOMETRY_VERSION,
      date,
      kind: 'plate',
      hand: hand.source,
      plate: { id: design.id, title: design.title, faces: design.faces, digits: design.digits, angle: design.angle },
      options: asked,
      ...spokenIn(language),
    },
    notes: plateNotes(figures, hand, date, left, used, speech),
    warnings,
  };
  return success({ pattern, report: plateReport(figures, folds, warnings) }, warnings);
}

interface DrawnFaces extends FittedPlate {
  readonly faces: readonly ReturnType<typeof facePart>[];
  readonly folds: readonly FoldFindings[];
}

/** Each face drawn, folded along its marks and laid on the modelled hand. */
function drawFaces({ frame, outlines }: FittedPlate, hand: Hand, speech: Speech): DrawnFaces {
  const { options } = frame;
  const faces = frame.faces.map((face, k) => facePart(face, outlines[k] as PlateOutline, hand, options, speech));
  const folds = faces.map(({ part: { outline, marks } }, k) => {
    const { face, angle } = frame.faces[k] as FaceFrame;
    const { thickness, skinClearance: clearance } = options;
    const drawn = { outline, marks, face, side: hand.side, digits: frame.digits, angle, thickness, clearance };
    const found = judgePlate(drawn, hand, options.webGap);
    // Every plate has the marks that folding needs and a complete hand: without them it would not be a plate.
    if (!found) throw new Error(`the ${face} plate cannot be folded along its marks`);
    return found;
  });
  return { frame, outlines, faces, folds };
}

/** Shortfalls under this are left. mm */
const CLEAR_ENOUGH = 0.05;

/**
 * Folded, a plate lies by the mean of its joints, which can bring its edge nearer to one PIP joint than it was drawn: then it is drawn again, shorter
 * by as much as is lacking, where it still holds enough.
 */
function clearOfJoints(drawn: DrawnFaces, hand: Hand, held: PlateDesign, speech: Speech): DrawnFaces {
  const { options, back, faces } = drawn.frame;
  const wanted = (k: number) => (faces[k]?.face === 'dorsal' ? back : options).pipClearance;
  const lacking = Math.max(...drawn.folds.map((fold, k) => wanted(k) - fold.pipClearance));
  if (lacking <= CLEAR_ENOUGH) return drawn;
  const more = (of: PlateOptions) => ({ ...of, pipClearance: of.pipClearance + lacking });
  const shorter = tryPlate(hand, held, more(options), more(back));
  if (!shorter.ok || shorter.value.problems.length > 0) return drawn;
  const again = drawFaces(shorter.value, hand, speech);
  // What is reported is what was wanted, not what it took.
  return { ...again, frame: { ...again.frame, options, back } };
}

/**
 * One face as it lies on the sheet: skin side down, distal edge up. Seen so, the radial border lies on the left for the back of a right hand
 * and the palm of a left one, else on the right.
 */
function facePart(
  face: FaceFrame,
  outline: PlateOutline,
  hand: Hand,
  options: PlateOptions,
  speech: Speech,
): { readonly part: Part; readonly left: readonly string[] } {
  const mirrorX = radialOnRight(face.face, hand.side);
  const place = { mirrorX, dx: 0, dy: 0 };
  const polygon = chordPoints(outline.outline);
  const drawn = faceMarks(face, outline, polygon, options, speech);
  const lettering = faceLettering(face, outline, polygon, drawn, { side: hand.side, code: hand.code }, speech);
  const marks = [...drawn.marks, ...lettering.marks, cornerMark(face, outline)].map(
    (mark): Mark => ({
      ...mark,
      paths: mark.paths.map((path) => placePath(path, place)),
      circles: mark.circles.map((c) => ({ ...c, center: { x: mirrorX ? -c.center.x : c.center.x, y: c.center.y } })),
    }),
  );
  const placed = placePath(outline.outline, place);
  const part: Part = {
    id: `plate-${face.face}`,
    title: speech.plate.part(speech.hand.aspect[face.face], speech.hand.side[hand.side]),
    outline: mirrorX ? reversePath(placed) : placed,
    holes: [],
    marks,
    labels: lettering.labels.map((label) => placeFaceLabel(label, mirrorX)),
  };
  return { part, left: [...drawn.left, ...lettering.left].map((words) => speech.plate.left(speech.hand.aspect[face.face], words)) };
}

function radialOnRight(face: Face, side: Hand['side']): boolean {
  return (face === 'dorsal') === (side === 'left');
}

/** The parts in one row, their long fingers' MP joints level, so that matching marks stand at one height. */
function sideBySide(parts: readonly Part[]): readonly Part[] {
  const placed: Part[] = [];
  let from = 0;
  for (const part of parts) {
    const box = boxOf([part.outline]);
    placed.push(shiftPart(part, from - box.minX, 0));
    from += box.maxX - box.minX + FACE_GAP;
  }
  return placed;
}
