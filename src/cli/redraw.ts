import { requestFromDrawing } from '../files/file-inputs.ts';
import { type MadePattern, type MadePlate, makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import { describeDrawing } from './describe-drawing.ts';
import { describePlate } from './describe-plate.ts';
import { fail, warn } from './exit.ts';
import type { OutputFlags } from './flags/output-flags.ts';
import { readOutputPlan } from './output-plan.ts';
import { checkOutput, stemOf, type WrittenFile, writePatterns } from './write-patterns.ts';

/** Runs `redraw`: reads what the file carries, checks all of it anew, makes the pattern and writes it as `draw` does. */
export async function redraw(file: string, flags: OutputFlags): Promise<void> {
  const plan = readOutputPlan(flags);
  const request = await requestFromDrawing(file);
  if (!plan.ok || !request.ok) return fail([plan, request].flatMap((r) => (r.ok ? [] : r.problems)));
  const stem = stemOf(request.value);
  const place = await checkOutput(plan.value, [stem]);
  if (!place.ok) return fail(place.problems);
  const made = makePattern(request.value);
  if (!made.ok) return fail(made.problems);
  const files = await writePatterns([{ stem, pattern: made.value.pattern }], plan.value);
  if (!files.ok) return fail(files.problems);
  const warnings = [...request.warnings, ...made.warnings, ...files.warnings];
  const why = `drawn again from ${file}`;
  if (flags.json) process.stdout.write(`${JSON.stringify({ ...made.value.report, why, warnings, files: files.value }, null, 2)}\n`);
  else {
    warn(warnings);
    process.stdout.write(described(request.value, made.value.report, why, files.value));
  }
}

function described(
  request: PatternRequest,
  report: MadePattern['report'] | MadePlate['report'],
  why: string,
  files: readonly WrittenFile[],
): string {
  if (request.kind === 'strip' && 'passes' in report) return describeDrawing(report, { block: request.block, why }, files);
  if (request.kind === 'plate' && !('passes' in report)) return describePlate(report, `${request.plate.title}, ${why}`, files);
  throw new Error('a report of another kind than its request');
}
