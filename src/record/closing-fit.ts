import type { Block } from '../block/block.ts';
import type { Hand } from '../hand/hand.ts';
import { knownVersion } from '../pattern/strip/geometry-version.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { clearanceOfLength } from '../pattern/strip/solve-clearance.ts';
import { stripFigures } from '../pattern/strip/strip.ts';
import type { Case } from './case.ts';
import type { MadeFile } from './case-schema.ts';

/** Fewer strips than this say nothing of a clinic's way of measuring: an assumption, no source. */
export const FEWEST_STRIPS = 5;

/** Where one strip was closed. */
export interface Closing {
  readonly code: string;
  /** Day on which it was noted. */
  readonly date: string;
  readonly block: string;
  /** mm from where it was drawn, + longer. */
  readonly closedAt: number;
  /** Reading of a paper strip that it was drawn for, mm; null where it was drawn by the model alone. */
  readonly paperReading: number | null;
  /** The clearance it was drawn with, and the one that would have met it, mm; null where the case does not tell, or no clearance would. */
  readonly drawnWith: number | null;
  readonly wouldMeet: number | null;
}

/** Middle and spread of some figures, mm. */
export interface Spread {
  readonly count: number;
  readonly median: number;
  /** Half of them lie no farther than this from the median (median absolute deviation). */
  readonly spread: number;
  readonly least: number;
  readonly most: number;
}

/** How far strips were closed from where they were drawn: those drawn by the model alone, and those drawn for a reading of a paper strip. */
export interface ClosingFit {
  readonly closings: readonly Closing[];
  readonly byModel: Spread | null;
  readonly byPaper: Spread | null;
  /** The clearance that would have met each strip that was drawn by the model alone. */
  readonly clearance: Spread | null;
  /** What `skinClearance` of the clinic's options may become; null where there are too few strips, or it would be under 0. */
  readonly suggested: number | null;
}

/** Where a case's strips were closed: the last that was noted of each, of the one made at that visit or worn until it. */
export function closingsOf(record: Case): readonly Closing[] {
  const found = new Map<number, Closing>();
  for (const [k, visit] of record.visits.entries()) {
    const { closedAt } = visit.noted;
    if (closedAt === null) continue;
    const at = record.visits.findLastIndex((v, i) => i <= k && v.made !== null);
    const made = record.file.visits[at]?.made;
    if (made?.kind === 'strip') found.set(at, closing(record, visit.date, made, closedAt));
  }
  return [...found.values()];
}

function closing(record: Case, date: string, made: Extract<MadeFile, { kind: 'strip' }>, closedAt: number): Closing {
  const options = readStripOptions([{ origin: 'options', values: made.options }]);
  const paperReading = options.ok && options.value.paperReading !== 'none' ? options.value.paperReading : null;
  const plain = { code: record.code, date, block: made.block.id, closedAt, paperReading, drawnWith: null, wouldMeet: null };
  if (!options.ok || record.hand === null) return plain;
  const places = Object.fromEntries(Object.entries(made.block.places).filter(([, place]) => place !== undefined));
  const block: Block = { id: made.block.id, title: made.block.id, places };
  return { ...plain, ...clearances(record.hand, block, options.value, made.geometryVersion, closedAt) };
}

function clearances(
  hand: Hand,
  block: Block,
  options: Parameters<typeof stripFigures>[2],
  geometry: string,
  closedAt: number,
): Pick<Closing, 'drawnWith' | 'wouldMeet'> {
  const version = knownVersion(geometry);
  const drawn = stripFigures(hand, block, options, version);
  if (!drawn.ok) return { drawnWith: null, wouldMeet: null };
  const { path, options: settings } = drawn.value;
  const found = clearanceOfLength(hand, block, settings, path.pathLength + closedAt * (1 + settings.stretch), version);
  return { drawnWith: settings.skinClearance, wouldMeet: typeof found === 'number' ? found : null };
}

/** The fit of all closings together. */
export function closingFit(closings: readonly Closing[]): ClosingFit {
  const byModel = closings.filter((c) => c.paperReading === null);
  const clearance = spreadOf(byModel.flatMap((c) => (c.wouldMeet === null ? [] : [c.wouldMeet])));
  return {
    closings,
    byModel: spreadOf(byModel.map((c) => c.closedAt)),
    byPaper: spreadOf(closings.filter((c) => c.paperReading !== null).map((c) => c.closedAt)),
    clearance,
    suggested: clearance !== null && clearance.count >= FEWEST_STRIPS && clearance.median >= 0 ? clearance.median : null,
  };
}

function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const median = middleOf(values);
  return {
    count: values.length,
    median,
    spread: middleOf(values.map((value) => Math.abs(value - median))),
    least: Math.min(...values),
    most: Math.max(...values),
  };
}

function middleOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? Number.NaN) + (sorted[Math.floor(half)] ?? Number.NaN)) / 2;
}
