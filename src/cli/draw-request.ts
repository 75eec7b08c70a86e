import { type MadePattern, type MadePlate, makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { paperTrial } from '../pattern/strip/paper-trial.ts';
import { validatePattern } from '../pattern/validate-pattern.ts';
import { type Result, success, type Warning } from '../units/result.ts';
import { describeDrawing } from './describe-drawing.ts';
import { describePlate } from './describe-plate.ts';
import type { OutputPlan } from './flags/output-flags.ts';
import { checkOutput, stemOf, type WrittenFile, writePatterns } from './write-patterns.ts';

/** What is to be drawn, why this, and where it goes. */
export interface Drawing {
  readonly request: PatternRequest;
  readonly why: string;
  readonly output: OutputPlan;
  /** Draw the paper strip of a trial as well, as files of its own. */
  readonly paperTrial?: boolean;
}

export interface Drawn {
  readonly request: PatternRequest;
  readonly why: string;
  readonly report: MadePattern['report'] | MadePlate['report'];
  readonly files: readonly WrittenFile[];
}

/** Checks the folder, makes and proves the pattern, and writes the files together or none. */
export async function drawRequest({ request, why, output, paperTrial: wanted }: Drawing): Promise<Result<Drawn>> {
  const stem = stemOf(request);
  const place = await checkOutput(output, wanted ? [stem, `${stem}-paper`] : [stem]);
  if (!place.ok) return place;
  const made = makePattern(request);
  if (!made.ok) return made;
  const paper =
    wanted && request.kind === 'strip'
      ? paperTrial(request.hand, request.block, request.options, request.date, request.language)
      : success<Pattern | null>(null);
  if (!paper.ok) return paper;
  const sound = paper.value === null ? paper : validatePattern(paper.value);
  if (!sound.ok) return sound;
  const drawn = [{ stem, pattern: made.value.pattern }, ...(paper.value ? [{ stem: `${stem}-paper`, pattern: paper.value }] : [])];
  const files = await writePatterns(drawn, output);
  if (!files.ok) return files;
  return success({ request, why, report: made.value.report, files: files.value }, [...made.warnings, ...files.warnings]);
}

/** What `draw` and `redraw` print. */
export const drawnReport = {
  text: ({ request, report, why, files }: Drawn): string => {
    if (request.kind === 'strip' && 'passes' in report) return describeDrawing(report, { block: request.block, why }, files);
    if (request.kind === 'plate' && !('passes' in report)) return describePlate(report, `${request.plate.title}, ${why}`, files);
    throw new Error('a report of another kind than its request');
  },
  json: ({ report, why, files }: Drawn, warnings: readonly Warning[]): object => ({ ...report, why, warnings, files }),
};
