import { CsvError, parse } from 'csv-parse/sync';
import { visible } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';

/** More messages about a table than these help nobody. */
export const MOST_PROBLEMS = 50;

/** A row of a table: its cells by the column's name, those of the columns that are known, and the line it ends on. */
export interface TableRow {
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface Table {
  /** Names of the columns in lower case. */
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
}

/**
 * Rows of a small table from CSV with commas or semicolons; empty rows are left out. A file that is no CSV, or has more rows than `most`, is one problem.
 * @param known columns whose cells are kept; the header names all that there are
 */
export function readTable(text: string, known: readonly string[], most: number, problem: (message: string) => Problem): Result<Table> {
  const firstLine = text.slice(0, Math.max(0, text.search(/[\r\n]|$/)));
  const count = (sign: RegExp) => firstLine.match(sign)?.length ?? 0;
  let header: readonly string[] = [];
  try {
    const rows: TableRow[] = parse(text, {
      bom: true,
      delimiter: count(/;/g) > count(/,/g) ? ';' : ',',
      columns: (names: string[]) => {
        header = names.map((name) => name.trim().toLowerCase());
        // A number as the name of a cell would have the engine keep a list as long as that number for each row: 750 MB for 1 MB of a drawing's lines.
        return header.map((name) => known.includes(name) && name);
      },
      on_record: (cells: Readonly<Record<string, string>>, { lines }): TableRow => ({ line: lines, cells }),
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      max_record_size: 100_000,
      // One more than may be is enough to say so, whatever stands behind.
      to: most + 1,
    });
    if (rows.length > most) return failure(problem(`has more than ${most} rows`));
    return success({ header, rows });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return failure(problem(visible(error.message)));
  }
}
