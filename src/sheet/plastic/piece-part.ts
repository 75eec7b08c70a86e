import type { Block } from '../../block/block.ts';
import { blockById } from '../../block/library.ts';
import { type LineArcPath, polyline, type Vertex, vertex } from '../../geometry/path.ts';
import { readHand } from '../../hand/read-hand.ts';
import { makePattern, type PatternRequest } from '../../pattern/make-pattern.ts';
import type { Part } from '../../pattern/pattern.ts';
import { holdsIn, plateName } from '../../pattern/plate/plate-names.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { blockTitle } from '../../words/hand-words.ts';
import type { Language } from '../../words/language.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { CutPiece } from './cut-list.ts';

/** What a piece is, on paper: how its strip runs, its plate, or nothing for a blank. */
export function pieceName({ block, plate }: CutPiece, speech: Speech, blockOf?: (id: string) => Block | undefined): string {
  if (plate) return `${plateName(plate.design, speech)}, ${holdsIn(plate.design, speech)}`;
  return block === null ? '' : blockName(block, speech, blockOf);
}

/** How the strip of a block runs; a block that is not known keeps its id. */
export function blockName(
  id: string,
  { language }: Speech = speechIn('en'),
  blockOf: (id: string) => Block | undefined = blockById,
): string {
  const block = blockOf(id);
  return block ? blockTitle(block, language) : id;
}

/** What strips are drawn from beside the list itself. */
export interface PieceSource {
  readonly blockOf: (id: string) => Block | undefined;
  readonly options: StripOptions;
  readonly language?: Language;
}

/** The request that made a piece, so that it can be drawn again; null for a blank, which has no hand. Refused as `readHand` refuses. */
export function requestOfPiece(piece: CutPiece, source: PieceSource, date: string | null): Result<PatternRequest | null> {
  const block = piece.block === null ? undefined : source.blockOf(piece.block);
  const spoken = source.language ? { language: source.language } : {};
  if (piece.hand === null || piece.hand === undefined || !(block || piece.plate)) return success(null);
  const hand = readHand(piece.hand, piece.id);
  if (!hand.ok) return hand;
  if (piece.plate)
    return success({ kind: 'plate', hand: hand.value, plate: piece.plate.design, options: piece.plate.options, date, ...spoken });
  return success(block ? { kind: 'strip', hand: hand.value, block, options: source.options, date, ...spoken } : null);
}

/** The part to cut: with all its marks where the list has the hand, else a blank with rounded corners. Refused as `makePattern` refuses. */
export function partOfPiece(piece: CutPiece, source: PieceSource): Result<Part> {
  const request = requestOfPiece(piece, source, null);
  if (!request.ok) return request;
  if (request.value === null) return success(blank(piece, source.language));
  const made = makePattern(request.value);
  if (!made.ok) return made;
  const [part, ...others] = made.value.pattern.parts;
  if (part && others.length === 0) return success(part);
  const message = `${piece.id}: has ${others.length + 1} parts to cut; a piece of a cut list is one. Give each face of a plate a line of its own.`;
  return failure({ code: 'PIECE_PARTS', where: piece.id, message, kind: 'refused' });
}

/** A piece as the box that shears cut, with its code: what the outline is, its own drawing says. */
export function boxPart(piece: CutPiece, language?: Language): Part {
  const { length, width } = piece;
  const corners = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
  return { ...blank({ ...piece, marks: [] }, language), outline: polyline(corners, true) };
}

/** Radius of a blank's corners, mm: no square corner may lie on skin. */
const CORNER_RADIUS = 3;
const QUARTER_BULGE = Math.tan(Math.PI / 8);

function blank({ id, code, length, width, marks }: CutPiece, language: Language = 'en'): Part {
  const { number } = speechIn(language);
  const size = `${number(length, 1)} x ${number(width, 1)}`;
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
