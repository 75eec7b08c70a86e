import { chordPoints } from '../../geometry/inside.ts';
import { boxOf, unionBox } from '../../geometry/path-measures.ts';
import { placePath, reversePath } from '../../geometry/transform.ts';
import type { Hand } from '../../hand/hand.ts';
import { type FoldFindings, judgePlate } from '../../judge/judge-plate.ts';
import { failure, type Result, success } from '../../units/result.ts';
import type { Language } from '../../words/language.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { Mark, Part, Pattern } from '../pattern.ts';
import { boxOfDrawn, shiftDrawn, shiftPart } from '../place-marks.ts';
import { designProblems, type Face, type PlateDesign } from './plate-design.ts';
import { type FaceFrame, plateFrame, stepProblems } from './plate-frame.ts';
import { faceLettering, placeFaceLabel } from './plate-labels.ts';
import { cornerMark, faceMarks } from './plate-marks.ts';
import { holdsIn, plateName } from './plate-names.ts';
import { plateNotes } from './plate-notes.ts';
import type { PlateOptions } from './plate-options.ts';
import { type PlateOutline, plateOutline } from './plate-outline.ts';
import { type PlateReport, plateFigures, plateReport, plateWarnings } from './plate-report.ts';
import { plateSheet } from './plate-sheet.ts';

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
  options: PlateOptions,
  date: string | null,
  language: Language = 'en',
): Result<Plate> {
  const speech = speechIn(language);
  const problems = designProblems(hand, design);
  if (problems.length > 0) return failure(...problems);
  const framed = plateFrame(hand, design, options);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const outlines = frame.faces.map((face) => plateOutline(face, options));
  const cutBack = frame.faces.flatMap((face, k) => stepProblems(face, outlines[k]?.distal ?? [], options));
  if (cutBack.length > 0) return failure(...cutBack);
  const figures = plateFigures(design, options, frame, outlines);
  const faces = frame.faces.map((face, k) => facePart(face, outlines[k] as PlateOutline, hand, options, speech));
  const folds: FoldFindings[] = [];
  for (const [k, { part }] of faces.entries()) {
    const { face, angle } = frame.faces[k] as FaceFrame;
    const { outline, marks } = part;
    const drawn = {
      outline,
      marks,
      face,
      side: hand.side,
      digits: frame.digits,
      angle,
      thickness: options.thickness,
      clearance: options.skinClearance,
    };
    const found = judgePlate(drawn, hand, options.webGap);
    // Every plate has the marks that folding needs and a complete hand: without them it would not be a plate.
    if (!found) throw new Error(`the ${face} plate cannot be folded along its marks`);
    folds.push(found);
  }
  const warnings = [...framed.warnings, ...plateWarnings(figures, folds)];
  const parts = sideBySide(faces.map((f) => f.part));
  const partsBox = unionBox(parts.map((part) => boxOf([part.outline])));
  const left = faces.flatMap((f) => f.left);
  const used = new Set(parts.flatMap((part) => part.marks.map((m) => m.role)));
  const sheet = shiftDrawn(
    plateSheet(figures, hand, date, PLATE_GEOMETRY_VERSION, left, partsBox.maxX - partsBox.minX, used, speech),
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
      speech.plate.name(plateName(design, speech), holdsIn(design, speech)),
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
      options,
      ...(language === 'en' ? {} : { language }),
    },
    notes: plateNotes(figures, hand, date, left, used, speech),
    warnings,
  };
  return success({ pattern, report: plateReport(figures, folds, warnings) }, warnings);
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
  const marks = [...drawn.marks, ...lettering.marks, cornerMark(face)].map(
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
