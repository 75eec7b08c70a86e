import { createReadStream } from 'node:fs';
import { CsvError, parse } from 'csv-parse';
import { readHead } from '../files/read-file.ts';
import { columnOfProblem, HAND_COLUMNS } from '../hand/hand-columns.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/length.ts';
import { nearest } from '../units/nearest.ts';
import { quote, visible } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';

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

/** Opens a table of hands and checks its header: `FILE_NOT_READ`, `CSV_HEADER`, with every wrong column at once. */
export async function openHandTable(path: string): Promise<Result<HandTable>> {
  const start = await readHead(path, HEADER_BYTES);
  if (!start.ok) return start;
  const bytes = start.value;
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return failure(headerProblem(path, 'is in UTF-16; save it as CSV in UTF-8'));
  const text = new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');
  const header = text.slice(0, Math.max(0, text.search(/[\r\n]|$/)));
  const delimiter = (header.match(/;/g) ?? []).length > (header.match(/,/g) ?? []).length ? ';' : ',';
  const columns = header.split(delimiter).map((name) =>
    name
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
  const problems = headerProblems(path, columns);
  if (problems.length > 0) return failure(...problems.slice(0, MOST_PROBLEMS));
  return success({ columns, delimiter, rows: rowsOf(path, columns, delimiter) });
}

function headerProblems(path: string, columns: readonly string[]): readonly Problem[] {
  const known = HAND_COLUMNS.map((c) => c.name);
  const problems: Problem[] = [];
  // A header of thousands of wrong names is no header; the first tell it.
  for (const [i, name] of columns.slice(0, MOST_COLUMNS).entries()) {
    if (!known.includes(name)) {
      const near = nearest(name, known);
      problems.push(
        headerProblem(
          path,
          `line 1, column ${i + 1}: ${quote(name)} is no column of a table of hands${near ? `; did you mean ${near}?` : ''}`,
        ),
      );
    } else if (columns.indexOf(name) !== i) problems.push(headerProblem(path, `line 1, column ${i + 1}: ${name} stands twice`));
  }
  const missing = HAND_COLUMNS.filter((c) => c.required && !columns.includes(c.name)).map((c) => c.name);
  if (missing.length > 0) problems.push(headerProblem(path, `line 1: the header has no ${missing.join(' and no ')}`));
  return problems;
}

function headerProblem(path: string, message: string): Problem {
  return { code: 'CSV_HEADER', where: path, message: `${path}: ${message}. The columns: knucklewright schema csv`, kind: 'input' };
}

/** Strict reading, row by row; what is wrong with one row does not stop the others. */
async function* rowsOf(path: string, columns: readonly string[], delimiter: string): AsyncGenerator<HandRow> {
  const skipped: HandRow[] = [];
  const parser = parse({
    bom: true,
    delimiter,
    from_line: 1,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    skip_records_with_error: true,
    max_record_size: LARGEST_ROW,
  });
  parser.on('skip', (error: CsvError) => {
    const line = Number((error as unknown as { lines?: number }).lines ?? 0);
    skipped.push(broken(line, error.code, `${visible(error.message)}`));
  });
  const source = createReadStream(path);
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

function rowFrom(line: number, record: readonly string[], columns: readonly string[]): HandRow {
  if (record.length !== columns.length) {
    const hint = record.length > columns.length ? '; is there a decimal comma in a table with commas?' : '';
    return broken(line, 'CSV_CELLS', `the row has ${record.length} cells, the header ${columns.length}${hint}`);
  }
  return { line, cells: Object.fromEntries(columns.map((name, i) => [name, record[i] ?? ''])) };
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
  const text = cells.units?.trim() ?? '';
  if (text === '') return { units: flag };
  const units = LENGTH_UNITS.find((known) => known === text);
  if (!units) return { wrong: `${quote(text)} is no unit; use ${LENGTH_UNITS.join(', ')}` };
  if (first !== null && units !== first) return { wrong: `${units} here, ${first} in the rows before; a table has one unit` };
  return { units };
}

/** One line for a person: where, and what. */
export function rowErrorText(path: string, { line, column, name, code, message }: RowError): string {
  const where = column === null ? `line ${line}` : `line ${line}, column ${column} (${name})`;
  return `${path}: ${where}: ${code}: ${message}`;
}
