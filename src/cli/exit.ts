import { rounded } from '../units/number.ts';
import { escapeInvisible, escapeInvisibleJson } from '../units/quote.ts';
import type { Problem, Warning } from '../units/result.ts';

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

/** Exit codes of every command. */
export const EXIT = { done: 0, badInput: 1, wrongUsage: 2, refused: 3 } as const;

/** Prints every problem on stderr and sets the exit code. */
export function fail(problems: readonly Problem[]): void {
  for (const problem of problems) process.stderr.write(`error ${problem.code}: ${escapeInvisible(problem.message)}\n`);
  process.exitCode = exitOf(problems);
}

/** The same for a program that asked for JSON: the problems on stdout, in place of a report, and in words on stderr as always. */
export function failAsJson(problems: readonly Problem[]): void {
  const report = { schema: 'knucklewright/errors@1', errors: problems, exit: exitOf(problems) };
  process.stdout.write(`${escapeInvisibleJson(JSON.stringify(roundedReport(report), null, 2))}\n`);
  fail(problems);
}

/** 2 when a flag is wrong, else 1 when an input is, else 3 (readable but not makeable). */
function exitOf(problems: readonly Problem[]): number {
  if (problems.some((p) => p.kind === 'usage')) return EXIT.wrongUsage;
  return problems.some((p) => p.kind === 'input') ? EXIT.badInput : EXIT.refused;
}

/** Prints warnings on stderr, each with what to do, equal ones once. */
export function warn(warnings: readonly Warning[]): void {
  const lines = warnings.map((w) => `warning ${w.code}: ${escapeInvisible(`${w.message}${w.next ? ` - ${w.next}` : ''}`)}\n`);
  for (const line of new Set(lines)) process.stderr.write(line);
}

/** Says on stderr that a file is held by another process, which is waited for. */
export function sayWaiting(path: string): (owner: string) => void {
  return (owner) => {
    process.stderr.write(`waiting: ${escapeInvisible(`${path} is held by ${owner}`)}\n`);
  };
}
