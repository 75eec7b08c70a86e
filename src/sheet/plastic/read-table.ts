import { CsvError, parse } from 'csv-parse/sync';
import { visible } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';

/** A row of a table: its cells by the column's name, and the line it ends on. */
export interface TableRow {
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface Table {
  /** Names of the columns in lower case. */
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
}

/** Rows of a small table from CSV with commas or semicolons; empty rows are left out. A file that is no CSV, or has more rows than `most`, is one problem. */
export function readTable(text: string, most: number, problem: (message: string) => Problem): Result<Table> {
  const firstLine = text.slice(0, Math.max(0, text.search(/[\r\n]|$/)));
  const count = (sign: RegExp) => firstLine.match(sign)?.length ?? 0;
  let header: readonly string[] = [];
  try {
    const rows: { info: { lines: number }; record: Record<string, string> }[] = parse(text, {
      bom: true,
      delimiter: count(/;/g) > count(/,/g) ? ';' : ',',
      columns: (names: string[]) => {
        header = names.map((name) => name.trim().toLowerCase());
        return [...header];
      },
      info: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      max_record_size: 100_000,
      // One more than may be is enough to say so, whatever stands behind.
      to: most + 1,
    });
    if (rows.length > most) return failure(problem(`has more than ${most} rows`));
    return success({ header, rows: rows.map(({ info, record }) => ({ line: info.lines, cells: record })) });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return failure(problem(visible(error.message)));
  }
}
