import type { Block } from '../block/block.ts';
import type { Hand } from '../hand/hand.ts';
import { type Result, success } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import type { Pattern } from './pattern.ts';
import { makePlate } from './plate/plate.ts';
import type { PlateDesign } from './plate/plate-design.ts';
import type { PlateOptions } from './plate/plate-options.ts';
import type { PlateReport } from './plate/plate-report.ts';
import type { GeometryVersion } from './strip/geometry-version.ts';
import { makeStrip } from './strip/strip.ts';
import type { StripOptions } from './strip/strip-options.ts';
import type { StripReport } from './strip/strip-report.ts';
import { validatePattern } from './validate-pattern.ts';

/** Everything that decides a strip; the same request gives the same pattern. */
export interface StripRequest {
  readonly kind: 'strip';
  readonly hand: Hand;
  readonly block: Block;
  readonly options: StripOptions;
  /** Geometry to draw with, for files of an earlier one; absent: the present one. */
  readonly version?: GeometryVersion;
  /** ISO date to print, given by the person, or null. */
  readonly date: string | null;
  /** Of all words on it and about it; absent: English. */
  readonly language?: Language;
}

/** Everything that decides a plate. */
export interface PlateRequest {
  readonly kind: 'plate';
  readonly hand: Hand;
  readonly plate: PlateDesign;
  readonly options: PlateOptions;
  /** ISO date to print, given by the person, or null. */
  readonly date: string | null;
  readonly language?: Language;
}

export type PatternRequest = StripRequest | PlateRequest;

/** A strip's pattern that was proved sound, with the figures that commands and page show. */
export interface MadePattern {
  readonly pattern: Pattern;
  readonly report: StripReport;
}

/** The same of a plate. */
export interface MadePlate {
  readonly pattern: Pattern;
  readonly report: PlateReport;
}

/** The only way from inputs to a pattern: makes it and proves it. Fails when it cannot be made, with every reason. */
export function makePattern(request: StripRequest): Result<MadePattern>;
export function makePattern(request: PlateRequest): Result<MadePlate>;
export function makePattern(request: PatternRequest): Result<MadePattern | MadePlate>;
export function makePattern(request: PatternRequest): Result<MadePattern | MadePlate> {
  const made: Result<MadePattern | MadePlate> =
    request.kind === 'strip'
      ? makeStrip(request.hand, request.block, request.options, request.date, request.version, request.language)
      : makePlate(request.hand, request.plate, request.options, request.date, request.language);
  if (!made.ok) return made;
  const sound = validatePattern(made.value.pattern);
  return sound.ok ? success(made.value, made.warnings) : sound;
}
