import { fullWays } from '../sheet/bars/bar-ways.ts';
import { type CutBars, type CutEffort, cutBars } from '../sheet/bars/cut-bars.ts';
import { kindsOf } from '../sheet/bars/fill-bar.ts';
import { barOf } from '../sheet/bars/greedy-bars.ts';

/** Ways to fill a bar up to which the whole programme is given to the solver. */
const MOST_WAYS = 20_000;
const SECONDS = 60;

/**
 * A cutter like `cutBars` that hands what is still open to HiGHS: one variable for each way to fill a bar that leaves no room for another piece, every piece
 * cut, fewest bars. Its bound is proven when the solver ends; when there are too many ways, or the time is over, what was known before stands.
 */
export async function provingCutter(): Promise<(lengths: readonly number[], capacity: number, effort: CutEffort) => CutBars> {
  const loaded = await import('highs');
  // Its types are written for CommonJS, where the loader is one level deeper.
  const load = loaded.default as unknown as (typeof loaded.default)['default'];
  const highs = await load();
  return (lengths, capacity, effort) => {
    const quick = cutBars(lengths, capacity, effort);
    if (quick.bars.length === quick.atLeast) return quick;
    const kinds = kindsOf(lengths);
    const ways = fullWays(kinds, capacity, MOST_WAYS);
    if (!ways) return quick;
    const terms = kinds.lengths.map((_, kind) =>
      ways.flatMap((way, k) => way.flatMap(([i, count]) => (i === kind ? [`${count} x${k}`] : []))).join(' + '),
    );
    const model = [
      'Minimize',
      ` bars: ${lines(ways.map((_, k) => `x${k}`))}`,
      'Subject To',
      ...terms.map((sum, kind) => ` c${kind}: ${lines(sum.split(' + '))} >= ${kinds.counts[kind]}`),
      ` least: ${lines(ways.map((_, k) => `x${k}`))} >= ${quick.atLeast}`,
      'General',
      ways.map((_, k) => `x${k}`).join('\n'),
      'End',
    ].join('\n');
    const solved = highs.solve(model, { time_limit: SECONDS });
    if (solved.Status !== 'Optimal') return quick;
    const left = [...kinds.counts];
    const bars = ways.flatMap((way, k) => {
      const column = solved.Columns[`x${k}`];
      const times = Math.round(column && 'Primal' in column ? Number(column.Primal) : 0);
      return Array.from({ length: times }, () =>
        way.flatMap(([kind, count]) => {
          // A cover may cut a piece too often; then it is left out.
          const needed = Math.min(count, left[kind] as number);
          left[kind] = (left[kind] as number) - needed;
          return barOf([kinds.lengths[kind] as number], [needed]);
        }),
      );
    });
    const atLeast = Math.round(solved.ObjectiveValue);
    return bars.length <= quick.bars.length ? { bars: bars.filter((bar) => bar.length > 0), atLeast } : quick;
  };
}

/** The format's lines may not be long. */
function lines(terms: readonly string[]): string {
  const rows: string[] = [];
  for (let i = 0; i < terms.length; i += 20) rows.push(terms.slice(i, i + 20).join(' + '));
  return rows.join('\n + ');
}
