import { type Box, boxOf, unionBox } from '../../geometry/path.ts';
import type { Part, Pattern } from '../../pattern/pattern.ts';
import { boxOfDrawn, type Drawn, shiftDrawn, shiftPart, turnDrawn, turnPart } from '../../pattern/place-marks.ts';
import { REFERENCE_SIDE, referenceSquare } from '../../pattern/reference-square.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success, type Warning } from '../../units/result.ts';

/** How much of a drawing a file holds: the cuts, the cuts and what is drawn on the pieces, or everything with words and views. */
export const CONTENTS = ['cut', 'cut-and-marks', 'all'] as const;
export type Content = (typeof CONTENTS)[number];

export interface MachineChoices {
  readonly content: Content;
  /** Size of the machine's bed, mm; null: none is given. */
  readonly bed: { readonly width: number; readonly height: number } | null;
  /** The square of 50 mm, off the parts, in a file for a machine. */
  readonly testSquare: boolean;
}

/** Nothing but the drawing as it is. */
export const WHOLE_DRAWING: MachineChoices = { content: 'all', bed: null, testSquare: false };

/** Room between parts and test square, mm. */
const SQUARE_GAP = 5;
/** Places for the test square on a sheet are tried so far apart, mm. */
const SQUARE_STEP = 5;
/** Rounding, mm. */
const FITS = 1e-6;

/**
 * The drawing as a machine gets it: only what is asked for, cropped to it, its lower left corner at (0, 0). With a bed everything lies on it,
 * lead-ins and the half kerf too: a strip or plate may be turned by a quarter (`TURNED_FOR_BED`); a sheet of plastic keeps its own lower left corner
 * at (0, 0), so that the plastic lies on the bed as drawn. Refused (exit 3): `BED_TOO_SMALL`, `NO_ROOM_FOR_SQUARE`.
 */
export function machineDrawing(pattern: Pattern, choices: MachineChoices): Result<Pattern> {
  const { content, bed, testSquare } = choices;
  if (content === 'all' && !bed) return success(pattern);
  const kept =
    content === 'all' ? pattern : { ...pattern, parts: pattern.parts.map((part) => machinePart(part, content)), beside: NOTHING };
  const sheet = pattern.kind === 'sheet' ? sheetEdge(pattern) : null;
  const square = testSquare && content !== 'all' ? squareFor(kept.parts, sheet, bed) : success(NOTHING);
  if (!square.ok) return square;
  const drawn = { ...kept, beside: joined(kept.beside, square.value) };
  // A sheet that is to lie on a bed is the area; otherwise what is drawn.
  const area = bed && sheet && content !== 'all' ? sheet : boxOfPattern(drawn);
  const laid = shifted(drawn, area);
  return bed ? onBed(laid, bed, sheet !== null) : success(laid);
}

const NOTHING: Drawn = { marks: [], labels: [] };

function machinePart(part: Part, content: 'cut' | 'cut-and-marks'): Part {
  if (content === 'cut') return { ...part, marks: [], labels: [] };
  return {
    ...part,
    marks: part.marks.filter((mark) => mark.layer === 'MARK'),
    labels: part.labels.filter((label) => label.layer === 'MARK'),
  };
}

function joined(a: Drawn, b: Drawn): Drawn {
  return { marks: [...a.marks, ...b.marks], labels: [...a.labels, ...b.labels] };
}

/** The plastic itself, by the edge that its drawing shows. */
function sheetEdge(pattern: Pattern): Box | null {
  const edge = pattern.beside.marks.find((mark) => mark.role === 'sheet-edge');
  return edge ? boxOf(edge.paths) : null;
}

/** Box of all that is cut or drawn on a part, lead-ins too. */
function partBox(part: Part): Box {
  const cuts = part.cuts?.map((cut) => cut.path) ?? [part.outline, ...part.holes];
  const boxes = [boxOf(cuts)];
  if (part.marks.length + part.labels.length > 0) boxes.push(boxOfDrawn(part));
  return unionBox(boxes);
}

function boxOfPattern({ parts, beside }: Pick<Pattern, 'parts' | 'beside'>): Box {
  const boxes = parts.map(partBox);
  if (beside.marks.length + beside.labels.length > 0) boxes.push(boxOfDrawn(beside));
  return unionBox(boxes);
}

function shifted(pattern: Pattern, area: Box): Pattern {
  const [dx, dy] = [-area.minX, -area.minY];
  return {
    ...pattern,
    parts: pattern.parts.map((part) => shiftPart(part, dx, dy)),
    beside: shiftDrawn(pattern.beside, dx, dy),
    extents: { minX: 0, minY: 0, maxX: area.maxX + dx, maxY: area.maxY + dy },
  };
}

function onBed(pattern: Pattern, bed: { readonly width: number; readonly height: number }, isSheet: boolean): Result<Pattern> {
  const [width, height] = [pattern.extents.maxX, pattern.extents.maxY];
  const fits = (w: number, h: number) => w <= bed.width + FITS && h <= bed.height + FITS;
  if (fits(width, height)) return success(pattern);
  const size = `${plain(width, 1)} x ${plain(height, 1)} mm`;
  const room = `${plain(bed.width, 1)} x ${plain(bed.height, 1)} mm`;
  const turned = fits(height, width);
  if (turned && !isSheet) {
    const warning: Warning = {
      code: 'TURNED_FOR_BED',
      where: '--bed',
      message: `the drawing, ${size}, is turned by 90 degrees to fit the bed of ${room}`,
      next: 'lay the sheet so that its grain runs up the bed',
    };
    return success(turnedPattern(pattern), [warning]);
  }
  const mend = isSheet
    ? turned
      ? `lay out on a sheet that lies the other way, --sheet ${plain(height, 1)}x${plain(width, 1)} with the grain across, or turn the bed`
      : `lay out on sheets of at most that size, --sheet ${plain(bed.width, 1)}x${plain(bed.height, 1)}`
    : `a bed of ${plain(Math.max(width, height), 1)} x ${plain(Math.min(width, height), 1)} mm would do`;
  const message = `${isSheet ? 'the sheet' : 'the drawing'} is ${size}, the bed ${room}${isSheet ? '' : ', turned or not'}; ${mend}.`;
  return failure({ code: 'BED_TOO_SMALL', where: '--bed', message, kind: 'refused' });
}

/** A quarter turn to the left, its lower left corner at (0, 0) again. */
function turnedPattern(pattern: Pattern): Pattern {
  const quarter = Math.PI / 2;
  const parts = pattern.parts.map((part) => turnPart(part, quarter));
  const beside = turnDrawn(pattern.beside, quarter);
  const { maxX, maxY } = pattern.extents;
  return shifted({ ...pattern, parts, beside }, { minX: -maxY, minY: 0, maxX: 0, maxY: maxX });
}

/** The test square: on a sheet where no part lies, else beside the drawing on the side on which the bed has room. */
function squareFor(parts: readonly Part[], sheet: Box | null, bed: MachineChoices['bed']): Result<Drawn> {
  const boxes = parts.map(partBox);
  if (!sheet) {
    const box = unionBox(boxes);
    const right = at(box.maxX + SQUARE_GAP, box.minY);
    const below = at(box.minX, box.minY - SQUARE_GAP - REFERENCE_SIDE);
    const width = box.maxX - box.minX + SQUARE_GAP + REFERENCE_SIDE;
    const height = Math.max(REFERENCE_SIDE, box.maxY - box.minY);
    const fits = !bed || (width <= bed.width && height <= bed.height) || (height <= bed.width && width <= bed.height);
    return success(fits ? right : below);
  }
  for (let y = sheet.minY + SQUARE_GAP; y + REFERENCE_SIDE + SQUARE_GAP <= sheet.maxY + FITS; y += SQUARE_STEP) {
    for (let x = sheet.minX + SQUARE_GAP; x + REFERENCE_SIDE + SQUARE_GAP <= sheet.maxX + FITS; x += SQUARE_STEP) {
      const clear = boxes.every(
        (box) =>
          box.minX >= x + REFERENCE_SIDE + SQUARE_GAP ||
          box.maxX <= x - SQUARE_GAP ||
          box.minY >= y + REFERENCE_SIDE + SQUARE_GAP ||
          box.maxY <= y - SQUARE_GAP,
      );
      if (clear) return success(at(x, y));
    }
  }
  const message = `no ${REFERENCE_SIDE} mm square has room on this sheet beside its parts; leave --test-square out and measure a part, or cut it from a scrap with draw.`;
  return failure({ code: 'NO_ROOM_FOR_SQUARE', where: '--test-square', message, kind: 'refused' });
}

/** The square with its lower left corner at (x, y), without words: a machine would draw them. */
function at(x: number, y: number): Drawn {
  return { marks: referenceSquare(x, y + REFERENCE_SIDE).marks, labels: [] };
}
