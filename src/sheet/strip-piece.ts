import type { Block } from '../block/block.ts';
import { type LineArcPath, polyline, type Vertex, vertex } from '../geometry/path.ts';
import { boxOf } from '../geometry/path-measures.ts';
import { outlineFaults } from '../geometry/validate-outline.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { makePattern } from '../pattern/make-pattern.ts';
import type { Part } from '../pattern/pattern.ts';
import { stripFigures } from '../pattern/strip/strip.ts';
import type { StripOptions } from '../pattern/strip/strip-options.ts';
import { uprightMarks } from '../pattern/strip/upright-marks.ts';
import { rounded } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { CutPiece } from './cut-list.ts';

const DECIMALS = 3;

/** The line of the cut list for a hand's strip: its size and marks, proven, without drawing it. Refused as the strip itself is. */
export function stripPiece(hand: Hand, block: Block, options: StripOptions): Result<CutPiece> {
  const figures = stripFigures(hand, block, options);
  if (!figures.ok) return figures;
  const { flat, path, warnings } = figures.value;
  const faults = outlineFaults(flat.outline, 'outside');
  if (faults.length > 0)
    return failure(
      ...faults.map((f) => ({
        code: f.code,
        where: 'outline',
        message: `${f.message}. This is a fault of the program; please report the hand.`,
        kind: 'refused' as const,
      })),
    );
  const box = boxOf([flat.outline]);
  const marks = uprightMarks(path, flat, options).map(({ v, role, title }) => ({ at: rounded(v - flat.start, DECIMALS), role, title }));
  return success({
    id: pieceId(hand, block),
    code: hand.code,
    side: hand.side,
    block: block.id,
    length: rounded(box.maxX - box.minX, DECIMALS),
    width: rounded(box.maxY - box.minY, DECIMALS),
    quantity: 1,
    marks,
    warnings: [...new Set(warnings.map((w) => w.code))],
    invented: hand.invented,
    hand: hand.source,
  });
}

/** Name of a hand's piece in lists and of its files. */
export function pieceId(hand: Hand, block: Block): string {
  return `${hand.code}-${hand.side}-${block.id}`;
}

/** What a piece is drawn from beside the list itself. */
export interface PieceSource {
  readonly blockOf: (id: string) => Block | undefined;
  readonly options: StripOptions;
}

/** The part to cut: with all its marks where the list has the hand, else a blank with rounded corners. Refused as `makePattern` refuses. */
export function partOfPiece(piece: CutPiece, source: PieceSource): Result<Part> {
  const block = piece.block === null ? undefined : source.blockOf(piece.block);
  if (piece.hand === null || piece.hand === undefined || !block) return success(blank(piece));
  const hand = readHand(piece.hand, piece.id);
  if (!hand.ok) return hand;
  const made = makePattern({ kind: 'strip', hand: hand.value, block, options: source.options, date: null });
  if (!made.ok) return made;
  const [part] = made.value.pattern.parts;
  return part ? success(part) : success(blank(piece));
}

/** Radius of a blank's corners, mm: no square corner may lie on skin. */
const CORNER_RADIUS = 3;
const QUARTER_BULGE = Math.tan(Math.PI / 8);

function blank({ id, code, length, width, marks }: CutPiece): Part {
  const size = `${Number(length.toFixed(1))} x ${Number(width.toFixed(1))}`;
  const height = Math.min(4, width / 4);
  return {
    id,
    title: `${code}, ${size} mm`,
    outline: roundedBox(length, width),
    holes: [],
    marks: marks
      .filter((m) => m.at > 1 && m.at < length - 1)
      .map((m) => ({
        layer: 'MARK',
        role: m.role,
        title: m.title,
        paths: [
          polyline([
            { x: m.at, y: 1 },
            { x: m.at, y: width - 1 },
          ]),
        ],
        circles: [],
      })),
    labels: [
      { layer: 'MARK', text: `${code}  ${size}`, at: { x: length / 2, y: width / 2 - height / 2 }, height, align: 'center', angle: 0 },
    ],
  };
}

function roundedBox(length: number, width: number): LineArcPath {
  const r = Math.min(CORNER_RADIUS, (Math.min(length, width) - 1) / 2);
  if (r < 1)
    return polyline(
      [
        { x: 0, y: 0 },
        { x: length, y: 0 },
        { x: length, y: width },
        { x: 0, y: width },
      ],
      true,
    );
  const vertices: Vertex[] = [
    vertex(r, 0),
    vertex(length - r, 0, QUARTER_BULGE),
    vertex(length, r),
    vertex(length, width - r, QUARTER_BULGE),
    vertex(length - r, width),
    vertex(r, width, QUARTER_BULGE),
    vertex(0, width - r),
    vertex(0, r, QUARTER_BULGE),
  ];
  return { closed: true, vertices };
}
