import { rounded } from '../units/number.ts';

/** Lengths in mm to a micrometre; angles and shares need no more. */
const DECIMALS = 3;
/** Pure numbers by which lengths are multiplied, by their key; null keeps all places. */
const DECIMALS_OF: Readonly<Record<string, number | null>> = { mmPerUnit: null, factors: 6 };

/** The same data with every figure to a thousandth, as mm are given in reports: more would only show rounding. The one place that rounds them. */
export function roundedReport<T>(data: T, decimals: number | null = DECIMALS): T {
  if (typeof data === 'number') return (decimals === null || !Number.isFinite(data) ? data : rounded(data, decimals)) as T;
  if (Array.isArray(data)) return data.map((each) => roundedReport(each, decimals)) as T;
  if (typeof data !== 'object' || data === null) return data;
  const within = (name: string) => (Object.hasOwn(DECIMALS_OF, name) ? (DECIMALS_OF[name] as number | null) : decimals);
  return Object.fromEntries(Object.entries(data).map(([name, value]) => [name, roundedReport(value, within(name))])) as T;
}
