import { CsvError, parse } from 'csv-parse/sync';
import { parseLength } from '../../units/length.ts';
import { quote, visible } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { csvLine } from './csv-text.ts';
import type { StockSheet } from './layout.ts';

/** Columns of a list of remnants: a name, and the two sides in mm, the first along the grain. */
export const STOCK_COLUMNS = ['id', 'along', 'across'] as const;

const LARGEST_SIDE = 5000;
/** No workshop keeps so many remnants. */
const MOST_SHEETS = 10_000;
/** More messages than these help nobody. */
const MOST_PROBLEMS = 50;

/** Remnants from CSV; all problems at once (`STOCK`), with their lines. */
export function readStock(text: string, source: string): Result<readonly StockSheet[]> {
  const firstLine = text.slice(0, Math.max(0, text.search(/[\r\n]|$/)));
  let rows: { info: { lines: number }; record: Record<string, string> }[];
  try {
    rows = parse(text, {
      bom: true,
      delimiter: firstLine.includes(';') ? ';' : ',',
      columns: (header: string[]) => header.map((h) => h.trim()),
      info: true,
      skip_empty_lines: true,
      max_record_size: 100_000,
      // One more than may be is enough to say so, whatever stands behind.
      to: MOST_SHEETS + 1,
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return failure(problem(source, '', visible(error.message)));
  }
  if (rows.length > MOST_SHEETS) return failure(problem(source, '', `has more than ${MOST_SHEETS} rows`));
  const problems: Problem[] = [];
  const header = firstLine
    .replace(/^\uFEFF/, '')
    .split(/[,;]/)
    .map((name) => name.trim());
  const missing = STOCK_COLUMNS.filter((name) => !header.includes(name));
  if (missing.length > 0)
    return failure(
      problem(source, 'header', `has no ${missing.join(' and no ')}; a list of remnants begins with ${STOCK_COLUMNS.join(',')}`),
    );
  const ids = new Set<string>();
  const stock = rows.map(({ info, record }): StockSheet => {
    const side = (name: 'along' | 'across'): number => {
      const parsed = parseLength(record[name] ?? '', 'mm');
      if (parsed.ok && parsed.mm <= LARGEST_SIDE) return parsed.mm;
      problems.push(problem(source, `line ${info.lines}, ${name}`, parsed.ok ? `is over ${LARGEST_SIDE} mm` : parsed.reason));
      return 0;
    };
    const id = record.id?.trim() || `line ${info.lines}`;
    if (ids.has(id)) problems.push(problem(source, `line ${info.lines}, id`, `${quote(id)} stands twice`));
    ids.add(id);
    return { id, along: side('along'), across: side('across') };
  });
  return problems.length > 0 ? failure(...problems.slice(0, MOST_PROBLEMS)) : success(stock);
}

/** The same list as text, to be kept with the remnants and given to `--stock` the next time. */
export function stockText(stock: readonly StockSheet[]): string {
  return [csvLine(STOCK_COLUMNS), ...stock.map((s) => csvLine([s.id, s.along.toFixed(1), s.across.toFixed(1)]))]
    .map((line) => `${line}\n`)
    .join('');
}

function problem(source: string, where: string, message: string): Problem {
  return { code: 'STOCK', where, message: `${source}: ${where === '' ? '' : `${where}: `}${message}.`, kind: 'input' };
}
