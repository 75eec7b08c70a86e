import type { Block } from '../../block/block.ts';
import { polyline } from '../../geometry/path.ts';
import type { Label, Mark, Pattern } from '../../pattern/pattern.ts';
import { digestOf } from '../../pattern/set-id.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { wrapText } from '../../pattern/text-lines.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { lookAtWords, type PlasticWords, plasticWords } from '../../words/plastic/plastic-words.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { CutPiece } from './cut-list.ts';
import { pieceName } from './piece-part.ts';

/** A4 upright (ISO 216), mm. */
const PAGE = { width: 210, height: 297 };
const MARGIN = 15;
const TEXT = 2.2;
const PITCH = 4.2;
const HEADING = 3.5;
/** Where each column begins, mm from the left margin; the last one takes what is left. */
const COLUMNS = { number: 0, code: 10, side: 42, size: 60, quantity: 84, done: 101, notes: 108 } as const;
const NOTES_WIDTH = PAGE.width - 2 * MARGIN - COLUMNS.notes;
const BOX = 3;
/** Line pitch of the words under the list. */
const LEGEND_PITCH = 3.2;

/** A cut list to print and tick off, as pages of A4 drawn on INFO alone: number, code, side, size, how many, a box to tick, the strip or plate and what to look at, by letters that are explained under the list; distances of marks stand in the CSV and on the parts. */
export function listPages(
  pieces: readonly CutPiece[],
  date: string | null,
  language: Language = 'en',
  blockOf?: (id: string) => Block | undefined,
): readonly Pattern[] {
  const list: ListWords = { w: plasticWords(language), speech: speechIn(language), letters: lettersOf(pieces), blockOf };
  const rows = pieces.map((piece, i) => ({ piece, number: i + 1, lines: notesOf(piece, list) }));
  const pages: (typeof rows)[] = [[]];
  let used = 0;
  // Each page explains its own codes, so room for all of them is kept on every one.
  const room = PAGE.height - 2 * MARGIN - 4 * PITCH - legendOf(pieces, list).length * LEGEND_PITCH;
  for (const row of rows) {
    const height = Math.max(1, row.lines.length) * PITCH + 1;
    if (used + height > room && pages.at(-1)?.length) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)?.push(row);
    used += height;
  }
  const members = digestOf(pieces);
  return pages.map((page, k) => pageOf(page, list.w.list.title(`${k + 1}`, `${pages.length}`), date, members, list));
}

/** What a list is worded with. */
interface ListWords {
  readonly w: PlasticWords;
  readonly speech: Speech;
  /** The letter of each code. */
  readonly letters: ReadonlyMap<string, string>;
  readonly blockOf: ((id: string) => Block | undefined) | undefined;
}

/** A letter for each code that has words: paper has no codes of the program. After z come aa, bb and so on. */
function lettersOf(pieces: readonly CutPiece[]): ReadonlyMap<string, string> {
  const codes = [...new Set(pieces.flatMap((piece) => piece.warnings))]
    .filter((code) => lookAtWords(code, plasticWords('en')) !== null)
    .sort();
  return new Map(codes.map((code, k) => [code, String.fromCharCode(97 + (k % 26)).repeat(1 + Math.floor(k / 26))]));
}

/** The letters of these pieces with their words, each once, as lines under a list. */
function legendOf(pieces: readonly CutPiece[], { w, letters }: ListWords): readonly string[] {
  const used = new Set(pieces.flatMap((piece) => piece.warnings));
  const explained = [...letters].flatMap(([code, letter]) =>
    used.has(code) ? wrapText(`${letter}: ${lookAtWords(code, w) ?? ''}`, PAGE.width - 2 * MARGIN, TEXT * 0.8) : [],
  );
  return explained.length === 0 ? [] : [w.list.legend, ...explained];
}

function notesOf(piece: CutPiece, { w, speech, letters, blockOf }: ListWords): readonly string[] {
  // A code of a list from elsewhere, which this program has no words for, stands as it was written.
  const look = piece.warnings.map((code) => letters.get(code) ?? code).join(', ');
  const text = [pieceName(piece, speech, blockOf) || w.list.blank, ...(look === '' ? [] : [w.list.look(look)])].join('; ');
  return wrapText(text, NOTES_WIDTH, TEXT * 0.8);
}

function pageOf(
  rows: readonly { piece: CutPiece; number: number; lines: readonly string[] }[],
  title: string,
  date: string | null,
  members: string,
  list: ListWords,
): Pattern {
  const { w, speech } = list;
  const mm = (value: number) => speech.number(value, 1);
  const labels: Label[] = [];
  const marks: Mark[] = [];
  const put = (text: string, column: number, y: number, height = TEXT) => {
    if (text !== '') labels.push({ layer: 'INFO', text, at: { x: MARGIN + column, y }, height, align: 'left', angle: 0 });
  };
  let y = PAGE.height - MARGIN - HEADING;
  const invented = rows.some(({ piece }) => piece.invented) ? `   ${w.invented}` : '';
  put(`${title}${date ? `, ${date}` : ''}${invented}`, 0, y, HEADING);
  y -= 2 * PITCH;
  const heads = { ...w.list.head, done: '' };
  for (const [key, text] of Object.entries(heads)) put(text, COLUMNS[key as keyof typeof COLUMNS], y);
  marks.push(line('table-head', 'line under the head', y - 1.4));
  y -= PITCH + 1;
  for (const { piece, number, lines } of rows) {
    put(String(number), COLUMNS.number, y);
    put(piece.code, COLUMNS.code, y);
    put(piece.side ? w.side[piece.side] : '', COLUMNS.side, y);
    put(`${mm(piece.length)} x ${mm(piece.width)}`, COLUMNS.size, y);
    put(String(piece.quantity), COLUMNS.quantity, y);
    marks.push(box(MARGIN + COLUMNS.done, y - 0.5, number));
    for (const [k, text] of lines.entries()) put(text, COLUMNS.notes, y - k * PITCH, TEXT * 0.8);
    y -= Math.max(1, lines.length) * PITCH + 1;
  }
  const legend = legendOf(
    rows.map(({ piece }) => piece),
    list,
  );
  for (const [k, text] of legend.entries()) put(text, 0, MARGIN + (legend.length - 1 - k) * LEGEND_PITCH, TEXT * 0.8);
  return {
    kind: 'page',
    title,
    parts: [],
    beside: { marks, labels },
    extents: { minX: 0, minY: 0, maxX: PAGE.width, maxY: PAGE.height },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: GEOMETRY_VERSION,
      date,
      kind: 'page',
      page: 'cut list',
      members,
      ...spokenIn(speech.language),
    },
    warnings: [],
  };
}

function line(role: string, title: string, y: number): Mark {
  const path = polyline([
    { x: MARGIN, y },
    { x: PAGE.width - MARGIN, y },
  ]);
  return { layer: 'INFO', role, title, paths: [path], circles: [] };
}

function box(x: number, y: number, number: number): Mark {
  const corners = [
    { x, y },
    { x: x + BOX, y },
    { x: x + BOX, y: y + BOX },
    { x, y: y + BOX },
  ];
  return { layer: 'INFO', role: 'tick-box', title: `box to tick, piece ${number}`, paths: [polyline(corners, true)], circles: [] };
}
