import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import { readHead } from '../files/read-file.ts';
import { columnOfProblem, HAND_COLUMNS } from '../hand/hand-columns.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/length.ts';
import { quote, visible } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { nearest } from '../units/typed-name.ts';
import { spokenPath } from './standard-input.ts';

/** A row of a table of hands, its cells by column name; or what is wrong with its form. */
export type HandRow =
  | { readonly line: number; readonly cells: Readonly<Record<string, string>> }
  | { readonly line: number; readonly cells: null; readonly error: RowError };

/** Something wrong in a row. `column` counts from 1; null when the whole row is meant. */
export interface RowError {
  readonly line: number;
  readonly column: number | null;
  readonly name: string | null;
  readonly code: string;
  readonly message: string;
}

export interface HandTable {
  readonly columns: readonly string[];
  readonly delimiter: ',' | ';';
  /** The rows in order, read as they are asked for; to be run through once. */
  readonly rows: AsyncIterable<HandRow>;
}

const HEADER_BYTES = 65_536;
const LARGEST_ROW = 65_536;
const MOST_COLUMNS = 1000;
/** More messages than these help nobody. */
const MOST_PROBLEMS = 50;

/**
 * Opens a table of hands as a spreadsheet left it: UTF-8 or UTF-16, a line `sep=;`, lines of title before the header, names of columns in any case.
 * Columns of no meaning here are left out and their headers named (`COLUMNS_IGNORED`), never their cells, which may hold names. Checks the header:
 * `FILE_NOT_READ`, `CSV_HEADER`, with every wrong column at once.
 */
export async function openHandTable(path: string): Promise<Result<HandTable>> {
  const start = await readHead(path, HEADER_BYTES);
  if (!start.ok) return start;
  const encoding = encodingOf(start.value);
  const lines = new TextDecoder(encoding).decode(start.value).split(/\r\n|\n|\r/);
  const stated = /^"?sep=([,;])"?$/i.exec(lines[0]?.trim() ?? '')?.[1];
  const split = (line: string, delimiter: string) =>
    line.split(delimiter).map((name) =>
      name
        .trim()
        .replace(/^"(.*)"$/, '$1')
        .trim(),
    );
  const delimiterOf = (line: string) =>
    (stated ?? ((line.match(/;/g) ?? []).length > (line.match(/,/g) ?? []).length ? ';' : ',')) as ',' | ';';
  const needed = HAND_COLUMNS.filter((column) => column.required).map((column) => column.name);
  const isHeader = (line: string) => {
    const names = split(line, delimiterOf(line)).map((name) => name.toLowerCase());
    return needed.every((name) => names.includes(name));
  };
  const first = stated === undefined ? 0 : 1;
  const found = lines.slice(first, first + MOST_TITLE_LINES).findIndex(isHeader);
  const at = first + Math.max(0, found);
  const header = lines[at] ?? '';
  const delimiter = delimiterOf(header);
  const columns = split(header, delimiter).map((name) => KNOWN.get(name.toLowerCase()) ?? name);
  const problems = headerProblems(path, columns, at + 1);
  if (problems.length > 0) return failure(...problems.slice(0, MOST_PROBLEMS));
  const ignored = columns.filter((name) => !KNOWN.has(name.toLowerCase()) && name !== '');
  const warnings = ignored.length > 0 ? [ignoredColumns(path, ignored)] : [];
  return success({ columns, delimiter, rows: rowsOf(path, columns, { delimiter, encoding, header: at + 1 }) }, warnings);
}

/** Lines of title that may stand before the header. */
const MOST_TITLE_LINES = 20;
/** Columns by their names in small letters. */
const KNOWN: ReadonlyMap<string, string> = new Map(HAND_COLUMNS.map(({ name }) => [name.toLowerCase(), name]));
/** Names that look like a column of ours; a slip in them would lose a measure, so they are not passed over. */
const LIKE_OURS = new RegExp(
  `^(${[...new Set(HAND_COLUMNS.filter(({ name }) => name.includes('.')).map(({ name }) => name.split('.')[0]))].join('|')})\\.`,
  'i',
);

type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be';

/** By the mark at the beginning, or by the zeros between the letters. */
function encodingOf(bytes: Uint8Array): Encoding {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a !== 0 && b === 0)) return 'utf-16le';
  return (a === 0xfe && b === 0xff) || (a === 0 && b !== 0) ? 'utf-16be' : 'utf-8';
}

function ignoredColumns(path: string, names: readonly string[]): Warning {
  const shown = names.slice(0, MOST_IGNORED_SHOWN).map((name) => quote(name));
  const more = names.length > shown.length ? ` and ${names.length - shown.length} more` : '';
  return {
    code: 'COLUMNS_IGNORED',
    where: path,
    message: `${names.length} columns are not read: ${shown.join(', ')}${more}`,
    next: 'a column that should be read needs its name: knucklewright schema csv',
  };
}

const MOST_IGNORED_SHOWN = 12;

function headerProblems(path: string, columns: readonly string[], line: number): readonly Problem[] {
  const known = HAND_COLUMNS.map((c) => c.name);
  const problems: Problem[] = [];
  // A header of thousands of wrong names is no header; the first tell it.
  for (const [i, name] of columns.slice(0, MOST_COLUMNS).entries()) {
    if (!known.includes(name)) {
      if (!LIKE_OURS.test(name)) continue;
      const near = nearest(name, known);
      problems.push(
        headerProblem(
          path,
          `line ${line}, column ${i + 1}: ${quote(name)} is no column of a table of hands${near ? `; did you mean ${near}?` : ''}`,
        ),
      );
    } else if (columns.indexOf(name) !== i) problems.push(headerProblem(path, `line ${line}, column ${i + 1}: ${name} stands twice`));
  }
  const missing = HAND_COLUMNS.filter((c) => c.required && !columns.includes(c.name)).map((c) => c.name);
  if (missing.length > 0) problems.push(headerProblem(path, `line ${line}: the header has no ${missing.join(' and no ')}`));
  return problems;
}

function headerProblem(path: string, message: string): Problem {
  return { code: 'CSV_HEADER', where: path, message: `${path}: ${message}. The columns: knucklewright schema csv`, kind: 'input' };
}

/** Strict reading, row by row; what is wrong with one row does not stop the others. */
async function* rowsOf(
  path: string,
  columns: readonly string[],
  { delimiter, encoding, header }: { readonly delimiter: string; readonly encoding: Encoding; readonly header: number },
): AsyncGenerator<HandRow> {
  const skipped: HandRow[] = [];
  const parser = parse({
    bom: false,
    delimiter,
    from_line: header,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    skip_records_with_empty_values: true,
    skip_records_with_error: true,
    max_record_size: LARGEST_ROW,
  });
  parser.on('skip', (error: CsvError) => {
    const line = Number((error as unknown as { lines?: number }).lines ?? 0);
    skipped.push(broken(line, error.code, `${visible(error.message)}`));
  });
  const source = Readable.from(decoded(path, encoding));
  source.on('error', (error) => parser.destroy(error));
  source.pipe(parser);
  let isHeader = true;
  try {
    for await (const item of parser) {
      const { info, record } = item as { info: { lines: number }; record: string[] };
      // The parser reads ahead, so rows that it skipped may lie beyond this one.
      while (skipped[0] && skipped[0].line < info.lines) yield skipped.shift() as HandRow;
      if (isHeader) {
        isHeader = false;
        continue;
      }
      yield rowFrom(info.lines, record, columns);
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = Number((error as unknown as { lines?: number }).lines ?? 0);
    skipped.push(broken(line, error.code, `${visible(error.message)}; nothing after this line was read`));
  } finally {
    source.destroy();
  }
  yield* skipped.splice(0);
}

/** The text of a file, piece by piece, without its byte order mark. */
async function* decoded(path: string, encoding: Encoding): AsyncGenerator<string> {
  const decoder = new TextDecoder(encoding);
  for await (const chunk of createReadStream(path)) yield decoder.decode(chunk as Uint8Array, { stream: true });
  yield decoder.decode();
}

function rowFrom(line: number, record: readonly string[], columns: readonly string[]): HandRow {
  if (record.length !== columns.length) {
    const hint = record.length > columns.length ? '; is there a decimal comma in a table with commas?' : '';
    return broken(line, 'CSV_CELLS', `the row has ${record.length} cells, the header ${columns.length}${hint}`);
  }
  // What is not read is not kept either: it may be a name.
  return {
    line,
    cells: Object.fromEntries(columns.flatMap((name, i) => (KNOWN.has(name.toLowerCase()) ? [[name, record[i] ?? '']] : []))),
  };
}

function broken(line: number, code: string, message: string): HandRow {
  return { line, cells: null, error: { line, column: null, name: null, code, message } };
}

/** A problem of a row's hand, with the column it is about. */
export function rowErrorOf(problem: Problem, line: number, columns: readonly string[]): RowError {
  const name = columnOfProblem(problem.where);
  const at = name === null ? -1 : columns.indexOf(name);
  return { line, column: at < 0 ? null : at + 1, name, code: problem.code, message: problem.message };
}

/** The units of a row: its own column, which must say the same in every row, or the flag's. */
export function unitsOfRow(
  cells: Readonly<Record<string, string>>,
  flag: LengthUnit,
  first: LengthUnit | null,
): { readonly units: LengthUnit } | { readonly wrong: string } {
  const text = cells.units?.trim().toLowerCase() ?? '';
  if (text === '') return { units: flag };
  const units = LENGTH_UNITS.find((known) => known === text);
  if (!units) return { wrong: `${quote(text)} is no unit; use ${LENGTH_UNITS.join(', ')}` };
  if (first !== null && units !== first) return { wrong: `${units} here, ${first} in the rows before; a table has one unit` };
  return { units };
}

/** One line for a person: where, and what. */
export function rowErrorText(path: string, { line, column, name, code, message }: RowError): string {
  const where = column === null ? `line ${line}` : `line ${line}, column ${column} (${name})`;
  return `${spokenPath(path)}: ${where}: ${code}: ${message}`;
}
