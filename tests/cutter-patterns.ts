import demoHand from '../fixtures/demo-hand.json' with { type: 'json' };
import { blockById, blocks } from '../src/block/library.ts';
import { type LineArcPath, vertex } from '../src/geometry/path.ts';
import { parseHandText } from '../src/hand/read-hand.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Label, Part, Pattern } from '../src/pattern/pattern.ts';
import { shiftPart } from '../src/pattern/place-marks.ts';
import { DEFAULT_PLATE_OPTIONS } from '../src/pattern/plate/plate-options.ts';
import { readDesign } from '../src/pattern/plate/read-plate.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import { layOut } from '../src/sheet/plastic/lay-out.ts';
import { platePiece, stripPiece } from '../src/sheet/plastic/piece.ts';
import { partOfPiece } from '../src/sheet/plastic/piece-part.ts';
import { sheetPattern } from '../src/sheet/plastic/sheet-pattern.ts';
import type { Result } from '../src/units/result.ts';
import { demoPlateHand, presetPlate } from './demo-plate.ts';

/** Patterns to try cutters and readers on: the demo strip, a plate-like part with holes, and a sheet full of both. Invented. */

const QUARTER = Math.SQRT2 - 1;

export function demoStrip(): Pattern {
  const hand = parseHandText(JSON.stringify(demoHand), 'fixtures/demo-hand.json');
  const block = blockById('ring-lowered-in-three');
  if (!hand.ok || !block) throw new Error('the demo hand or block is missing');
  const made = makePattern({ kind: 'strip', hand: hand.value, block, options: DEFAULT_STRIP_OPTIONS, date: null });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.pattern;
}

/** A rectangle with round corners, counter-clockwise from its lower left. */
export function roundBar(x: number, y: number, width: number, height: number, r: number): LineArcPath {
  const [right, top] = [x + width, y + height];
  return {
    closed: true,
    vertices: [
      vertex(x + r, y),
      vertex(right - r, y, QUARTER),
      vertex(right, y + r),
      vertex(right, top - r, QUARTER),
      vertex(right - r, top),
      vertex(x + r, top, QUARTER),
      vertex(x, top - r),
      vertex(x, y + r, QUARTER),
    ],
  };
}

function slot(x: number, y: number, length: number, radius: number): LineArcPath {
  return {
    closed: true,
    vertices: [vertex(x, y + radius), vertex(x + length, y + radius, -1), vertex(x + length, y - radius), vertex(x, y - radius, -1)],
  };
}

function roundHole(x: number, y: number, radius: number): LineArcPath {
  return { closed: true, vertices: [vertex(x + radius, y, -1), vertex(x - radius, y, -1)] };
}

const label = (text: string, x: number, y: number, height = 3): Label => ({
  layer: 'MARK',
  text,
  at: { x, y },
  height,
  align: 'left',
  angle: 0,
});

/** 90 x 110 mm, a thumb web cut out of its left edge, slots for straps and two round holes: cut like a plate. */
export function plateLike(id: string): Part {
  return {
    id,
    title: `Plate ${id}`,
    outline: {
      closed: true,
      vertices: [
        vertex(8, 0),
        vertex(82, 0, QUARTER),
        vertex(90, 8),
        vertex(90, 102, QUARTER),
        vertex(82, 110),
        vertex(8, 110, QUARTER),
        vertex(0, 102),
        vertex(0, 70, -0.6),
        vertex(0, 40),
        vertex(0, 8, QUARTER),
      ],
    },
    holes: [slot(30, 20, 26, 1.5), slot(30, 90, 26, 1.5), roundHole(70, 55, 2.5), roundHole(80, 55, 2.5)],
    marks: [
      {
        layer: 'MARK',
        role: 'bend-line',
        title: 'bend line',
        paths: [{ closed: false, vertices: [vertex(25, 60), vertex(60, 64)] }],
        circles: [],
      },
    ],
    labels: [label(`PLATE ${id}`, 25, 45)],
  };
}

export const INPUTS: Pattern['inputs'] = { schema: 'knucklewright/inputs@1', geometryVersion: 'test', date: null };

/** Any parts as a pattern on a sheet of that size, with nothing beside them. */
export function sheetOf(parts: readonly Part[], width: number, height: number): Pattern {
  return {
    kind: 'plate',
    title: 'Sheet of parts',
    parts,
    beside: { marks: [], labels: [] },
    extents: { minX: 0, minY: 0, maxX: width, maxY: height },
    inputs: INPUTS,
    warnings: [],
  };
}

/**
 * What `sheets` makes of a day's list: the strips of all blocks and a dorsal and a palmar plate, twice each, laid on one sheet of 457 x 610 mm,
 * with numbers, shear cuts, list and cautions.
 */
export function laidSheet(): Pattern {
  sheet ??= layDaySheet();
  return sheet;
}

let sheet: Pattern | null = null;

function layDaySheet(): Pattern {
  const hand = parseHandText(JSON.stringify(demoHand), 'fixtures/demo-hand.json');
  if (!hand.ok) throw new Error('the demo hand cannot be read');
  const whole = <T>(result: Result<T>): T => {
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    return result.value;
  };
  const strips = blocks().map((block) => whole(stripPiece(hand.value, block, DEFAULT_STRIP_OPTIONS)));
  const plates = ['mp-immobilisation-dorsal', 'mp-immobilisation-palmar'].map((id) => {
    const { inputs } = presetPlate(id).pattern;
    const design = whole(readDesign(inputs.plate, id));
    return whole(platePiece(demoPlateHand(), { design, options: DEFAULT_PLATE_OPTIONS }));
  });
  const pieces = [...strips, ...plates, ...plates];
  const layout = whole(
    layOut({ parts: pieces, sheet: { id: 'new', along: 610, across: 457 }, remnants: [], rules: { gap: 2, margin: 5, grain: 'along' } }),
  );
  if (layout.sheets.length !== 1) throw new Error(`${layout.sheets.length} sheets`);
  const source = { options: DEFAULT_STRIP_OPTIONS, blockOf: blockById };
  return whole(sheetPattern({ layout, sheet: 0, pieces, partOf: (piece) => partOfPiece(piece, source), date: null, request: {} }));
}

/** A sheet of 457 x 610 mm (18 x 24 in, common practice) with ten strips and eight plates, in an order that no machine would take. */
export function fullSheet(): Pattern {
  const strip = demoStrip().parts[0];
  if (!strip) throw new Error('the strip has no part');
  const low = Math.min(...strip.outline.vertices.map((v) => v.y));
  const left = Math.min(...strip.outline.vertices.map((v) => v.x));
  const strips = Array.from({ length: 10 }, (_, k) =>
    shiftPart({ ...strip, id: `strip-${k}`, title: `Strip ${k}` }, 5 - left + (k % 2) * 190, 5 - low + Math.floor(k / 2) * 26),
  );
  const plates = Array.from({ length: 8 }, (_, k) => shiftPart(plateLike(`p${k}`), 5 + (k % 4) * 100, 150 + Math.floor(k / 4) * 120));
  const parts = [...strips, ...plates];
  // Every seventh in turn: far apart, one after the other.
  return sheetOf(
    parts.map((_, k) => parts[(k * 7) % parts.length] as Part),
    457,
    610,
  );
}
