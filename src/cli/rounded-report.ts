import { rounded } from '../units/number.ts';

/** Figures of a report that are no mm and need more places. */
const EXACT: ReadonlySet<string> = new Set(['mmPerUnit']);
const DECIMALS = 3;

/** The same data with every figure to a thousandth, as mm are given in reports: more would only show rounding. */
export function roundedReport<T>(data: T, key = ''): T {
  if (typeof data === 'number') return (EXACT.has(key) || !Number.isFinite(data) ? data : rounded(data, DECIMALS)) as T;
  if (Array.isArray(data)) return data.map((each) => roundedReport(each, key)) as T;
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(Object.entries(data).map(([name, value]) => [name, roundedReport(value, name)])) as T;
}
