import { parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { csvLine } from './csv-text.ts';
import type { StockSheet } from './layout.ts';
import { MOST_PROBLEMS, readTable } from './read-table.ts';

/** Columns of a list of remnants: a name, and the two sides in mm, the first along the grain. */
export const STOCK_COLUMNS = ['id', 'along', 'across'] as const;

const LARGEST_SIDE = 5000;
/** No workshop keeps so many remnants. */
const MOST_SHEETS = 10_000;

/** Remnants from CSV; all problems at once (`STOCK`), with their lines. */
export function readStock(text: string, source: string): Result<readonly StockSheet[]> {
  const table = readTable(text, STOCK_COLUMNS, MOST_SHEETS, (message) => problem(source, '', message));
  if (!table.ok) return table;
  const { header, rows } = table.value;
  const problems: Problem[] = [];
  const missing = STOCK_COLUMNS.filter((name) => !header.includes(name));
  if (missing.length > 0)
    return failure(
      problem(source, 'header', `has no ${missing.join(' and no ')}; a list of remnants begins with ${STOCK_COLUMNS.join(',')}`),
    );
  const ids = new Set<string>();
  const stock = rows.map(({ line, cells }): StockSheet => {
    const side = (name: 'along' | 'across'): number => {
      const parsed = parseLength(cells[name] ?? '', 'mm');
      if (parsed.ok && parsed.mm <= LARGEST_SIDE) return parsed.mm;
      problems.push(problem(source, `line ${line}, ${name}`, parsed.ok ? `is over ${LARGEST_SIDE} mm` : parsed.reason));
      return 0;
    };
    const id = cells.id?.trim() || `line ${line}`;
    if (ids.has(id)) problems.push(problem(source, `line ${line}, id`, `${quote(id)} stands twice`));
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
