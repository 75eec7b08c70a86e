import type { Side } from '../../hand/digits.ts';
import { holdsInWords, type PlateDesign } from '../../pattern/plate/plate-design.ts';
import type { PlateOptions } from '../../pattern/plate/plate-options.ts';
import { plain } from '../../units/number.ts';
import { csvLine } from './csv-text.ts';

/** A line to be drawn across a strip, mm from its starting end. */
export interface CutMark {
  readonly at: number;
  readonly role: string;
  readonly title: string;
}

/** What a plate is made by, of one face. */
export interface PiecePlate {
  readonly design: PlateDesign;
  readonly options: PlateOptions;
}

/** One line of a cut list: a piece by its box, mm, and how many of it. */
export interface CutPiece {
  /** Unique in the list. */
  readonly id: string;
  /** Case code, or what stands for it. */
  readonly code: string;
  readonly side: Side | null;
  /** Id of the block; null for a plate or a blank. */
  readonly block: string | null;
  /** Null for a strip or a blank. */
  readonly plate: PiecePlate | null;
  readonly length: number;
  readonly width: number;
  readonly quantity: number;
  readonly marks: readonly CutMark[];
  /** Codes of what to look at before cutting. */
  readonly warnings: readonly string[];
  readonly invented: boolean;
  /** The hand file, so that the piece can be drawn with all its marks; null for a blank. */
  readonly hand: unknown;
}

export const CUT_LIST_SCHEMA = 'knucklewright/cut-list@1';

/** Columns of a cut list as CSV; a list from elsewhere needs only length and width, in mm. */
export const CUT_LIST_COLUMNS = [
  'id',
  'code',
  'side',
  'block',
  'plate',
  'length',
  'width',
  'quantity',
  'marks',
  'warnings',
  'invented',
] as const;

export function cutListHeader(): string {
  return csvLine(CUT_LIST_COLUMNS);
}

export function cutListLine(piece: CutPiece): string {
  const marks = piece.marks.map((mark) => `${plain(mark.at, 1)} ${mark.title}`).join('; ');
  return csvLine([
    piece.id,
    piece.code,
    piece.side ?? '',
    piece.block ?? '',
    piece.plate ? plateInWords(piece.plate) : '',
    plain(piece.length, 2),
    plain(piece.width, 2),
    piece.quantity,
    marks,
    piece.warnings.join(' '),
    piece.invented ? 'yes' : '',
  ]);
}

/** "mp-immobilisation-dorsal, MP 45 degrees, index to little". */
function plateInWords({ design }: PiecePlate): string {
  return `${design.id}, ${holdsInWords(design)}`;
}

/** Head and end of a cut list as JSON, whose pieces stand one a line between them; so it can be written while it is made. */
export function cutListJsonHead(settings: Readonly<Record<string, unknown>>): string {
  return `{"schema":${JSON.stringify(CUT_LIST_SCHEMA)},"units":"mm","settings":${JSON.stringify(settings)},"pieces":[`;
}

export const CUT_LIST_JSON_END = '\n]}\n';
