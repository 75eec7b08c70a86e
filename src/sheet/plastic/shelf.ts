import { parseLength } from '../../units/length.ts';
import { plain } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { csvLine } from './csv-text.ts';
import { MOST_PROBLEMS, readTable } from './read-table.ts';

/** Strips of one size that lie in stock, ready cut; mm. */
export interface ShelfStrip {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly count: number;
}

/** A strip that is needed: its box, mm. */
export interface Wanted {
  readonly id: string;
  readonly length: number;
  readonly width: number;
}

/** What serves a strip that is needed; null: nothing on the shelf does, so that it is cut anew. */
export interface Taken {
  readonly wanted: Wanted;
  readonly from: ShelfStrip | null;
  /** mm; of the length, at the finishing end. */
  readonly cutOff: number;
}

/** A size of the shelf afterwards: how many are left, and how many to cut anew. */
export interface ShelfAfter extends ShelfStrip {
  readonly anew: number;
}

const COLUMNS = ['length', 'width', 'count'] as const;
const LARGEST_SIDE = 1000;
const MOST_COUNT = 100_000;
const MOST_ROWS = 10_000;
/** Rounding of a length that came out of the geometry is not a longer one, mm. */
const ROUNDING = 1e-6;

/** The shelf from CSV with the columns length, width and count, and id where the sizes have names; others are not read. All problems at once (`SHELF`). */
export function readShelf(text: string, source: string): Result<readonly ShelfStrip[]> {
  const table = readTable(text, ['id', ...COLUMNS], MOST_ROWS, (message) => problem(source, '', message));
  if (!table.ok) return table;
  const { header, rows } = table.value;
  const missing = COLUMNS.filter((name) => !header.includes(name));
  if (missing.length > 0)
    return failure(problem(source, 'header', `has no ${missing.join(' and no ')}; a shelf has the columns ${COLUMNS.join(',')}`));
  const problems: Problem[] = [];
  const shelf = rows.map(({ line, cells }, k): ShelfStrip => {
    const wrong = (column: string, why: string) => {
      problems.push(problem(source, `line ${line}, ${column}`, why));
      return 0;
    };
    const side = (column: 'length' | 'width') => {
      const parsed = parseLength(cells[column] ?? '', 'mm');
      if (parsed.ok && parsed.mm <= LARGEST_SIDE) return parsed.mm;
      return wrong(column, parsed.ok ? `is over ${LARGEST_SIDE} mm` : parsed.reason);
    };
    const text = cells.count?.trim() ?? '';
    const count =
      /^\d{1,6}$/.test(text) && Number(text) <= MOST_COUNT ? Number(text) : wrong('count', `${quote(text)} is no whole number from 0`);
    return { id: cells.id?.trim() || `SHELF-${k + 1}`, length: side('length'), width: side('width'), count };
  });
  const ids = new Set<string>();
  for (const { id } of shelf) {
    if (ids.has(id)) problems.push(problem(source, 'id', `${quote(id)} stands twice`));
    ids.add(id);
  }
  return problems.length > 0 ? failure(...problems.slice(0, MOST_PROBLEMS)) : success(shelf);
}

/**
 * The nearest strip for each that is needed: the shortest that is long and wide enough, of equal ones the narrowest. The shortest needs are served first, so that
 * a long strip is left for who needs it. In the order of what is needed.
 */
export function takeFromShelf(shelf: readonly ShelfStrip[], needed: readonly Wanted[]): readonly Taken[] {
  const left = shelf.map(({ count }) => count);
  const served = new Map<Wanted, Taken>();
  for (const wanted of needed.toSorted((a, b) => a.length - b.length || a.width - b.width)) {
    const able = shelf
      .map((strip, k) => ({ strip, k }))
      .filter(({ strip, k }) => (left[k] ?? 0) > 0 && strip.length >= wanted.length - ROUNDING && strip.width >= wanted.width - ROUNDING)
      .sort((a, b) => a.strip.length - b.strip.length || a.strip.width - b.strip.width);
    const [best] = able;
    if (best) left[best.k] = (left[best.k] ?? 0) - 1;
    served.set(wanted, { wanted, from: best?.strip ?? null, cutOff: best ? Math.max(0, best.strip.length - wanted.length) : 0 });
  }
  return needed.map((wanted) => served.get(wanted) as Taken);
}

/** What is left, and what to cut anew: as many of each size as were taken, and a strip for each that nothing served, in whole mm. */
export function shelfAfter(shelf: readonly ShelfStrip[], taken: readonly Taken[]): readonly ShelfAfter[] {
  const kept = shelf.map((strip) => {
    const gone = taken.filter(({ from }) => from === strip).length;
    return { ...strip, count: strip.count - gone, anew: gone };
  });
  const missing = taken.flatMap(({ wanted: { id, length, width }, from }) =>
    from === null ? [{ id, length: Math.ceil(length - ROUNDING), width: Math.ceil(width - ROUNDING), count: 0, anew: 1 }] : [],
  );
  return [...kept, ...missing];
}

/** The same as CSV, which can be the shelf of the next time. */
export function shelfText(after: readonly ShelfAfter[]): string {
  return [
    csvLine(['id', 'length', 'width', 'count', 'anew']),
    ...after.map(({ id, length, width, count, anew }) => csvLine([id, plain(length, 3), plain(width, 3), count, anew])),
    '',
  ].join('\n');
}

function problem(source: string, where: string, message: string): Problem {
  return { code: 'SHELF', where, message: `${source}: ${where === '' ? '' : `${where}: `}${message}.`, kind: 'input' };
}
