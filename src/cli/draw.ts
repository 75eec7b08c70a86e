import { cautionsFor } from '../block/cautions-for.ts';
import type { ChosenBlock } from '../block/choose-block.ts';
import { blockById, blocks } from '../block/library.ts';
import { readBlock } from '../block/read-block.ts';
import { readJson, readText } from '../files/read-file.ts';
import type { Hand } from '../hand/hand.ts';
import { parseHandText } from '../hand/read-hand.ts';
import { type MadePattern, makePattern } from '../pattern/make-pattern.ts';
import { chooseForHand } from '../pattern/plan-hand.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import type { StripOptions } from '../pattern/strip/strip-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { nearest } from '../units/nearest.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { describeDrawing } from './describe-drawing.ts';
import type { DrawFlags } from './draw-command.ts';
import { fail, warn } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';
import { rejectInapplicableFlags } from './flags/reject-inapplicable-flags.ts';
import { type OutputPlan, readOutputPlan } from './output-plan.ts';
import { readDate } from './read-date.ts';
import { checkOutput, type WrittenFile, writePatterns } from './write-patterns.ts';

/** Runs `draw`: reads everything, checks the folder, makes and proves the pattern, writes the files together, reports. */
export async function draw(handFile: string, flags: DrawFlags): Promise<void> {
  const inputs = await readInputs(handFile, flags);
  if (!inputs.ok) return fail(inputs.problems);
  const { hand, chosen, options, date, output } = inputs.value;
  const stem = `${hand.code}-${chosen.block.id}`;
  const place = await checkOutput(output, [stem]);
  if (!place.ok) return fail(place.problems);
  const made = makePattern({ kind: 'strip', hand, block: chosen.block, options, date });
  if (!made.ok) return fail(made.problems);
  const files = await writePatterns([{ stem, pattern: made.value.pattern }], output);
  if (!files.ok) return fail(files.problems);
  report(made.value, chosen, [...inputs.warnings, ...made.warnings, ...files.warnings], files.value, flags.json === true);
}

interface DrawInputs {
  readonly hand: Hand;
  readonly chosen: ChosenBlock;
  readonly options: StripOptions;
  readonly date: string | null;
  readonly output: OutputPlan;
}

/** Everything that the person gave, with all problems of all of it at once. */
async function readInputs(handFile: string, flags: DrawFlags): Promise<Result<DrawInputs>> {
  const text = await readText(handFile);
  const hand = text.ok ? parseHandText(text.value, handFile) : text;
  const options = await readOptions(flags);
  const output = readOutputPlan(flags);
  const date = readDate(flags.date);
  const chosen = flags.block === 'auto' ? planned(hand, options, flags) : await namedBlock(flags.block);
  const problems: Problem[] = [hand, options, output, date, chosen, rejectInapplicableFlags(flags, 'strip')].flatMap((r) =>
    r && !r.ok ? r.problems : [],
  );
  if (!hand.ok || !options.ok || !output.ok || !date.ok || !chosen?.ok || problems.length > 0) return failure(...problems);
  const inputs = { hand: hand.value, chosen: chosen.value, options: options.value, date: date.value, output: output.value };
  return success(inputs, [...hand.warnings, ...cautionsFor(hand.value.flags), ...output.warnings]);
}

/** What `plan` puts first for the same hand and options; null while either is wrong. */
function planned(hand: Result<Hand>, options: Result<StripOptions>, flags: DrawFlags): Result<ChosenBlock> | null {
  if (!hand.ok || !options.ok) return null;
  return chooseForHand(hand.value, options.value, { clinicianConfirms: flags.clinicianConfirms === true });
}

export async function readOptions(flags: DrawFlags): Promise<Result<StripOptions>> {
  const file = flags.options === undefined ? null : await readJson(flags.options);
  const keys = [...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((o) => o.key);
  const given = Object.fromEntries(keys.flatMap((key) => (flags[key] === undefined ? [] : [[key, flags[key]]])));
  const options = readStripOptions([
    ...(file?.ok ? [{ origin: String(flags.options), values: file.value }] : []),
    { origin: 'flags', values: given },
  ]);
  return file && !file.ok ? failure(...file.problems, ...(options.ok ? [] : options.problems)) : options;
}

/** A block of the library by its id, or of a file by its path. */
export async function namedBlock(name: string): Promise<Result<ChosenBlock>> {
  const known = blockById(name);
  if (known) return success({ block: known, why: 'named by --block' });
  if (!/[/\\.]/.test(name)) {
    const ids = blocks().map((b) => b.id);
    const near = nearest(name, ids);
    return failure(
      flagProblem('--block', `there is no block ${quote(name)}${near ? `; did you mean ${near}?` : `. The blocks are ${ids.join(', ')}`}`),
    );
  }
  const json = await readJson(name);
  const block = json.ok ? readBlock(json.value, name) : json;
  return block.ok ? success({ block: block.value, why: `read from ${name}` }) : block;
}

function report(made: MadePattern, chosen: ChosenBlock, warnings: readonly Warning[], files: readonly WrittenFile[], json: boolean): void {
  if (json) process.stdout.write(`${JSON.stringify({ ...made.report, why: chosen.why, warnings, files }, null, 2)}\n`);
  else {
    warn(warnings);
    process.stdout.write(describeDrawing(made.report, chosen, files));
  }
}
