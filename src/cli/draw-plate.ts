import { cautionsFor } from '../block/cautions-for.ts';
import { readJson, readText } from '../files/read-file.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import { parseHandText } from '../hand/read-hand.ts';
import { makePattern, type PlateRequest } from '../pattern/make-pattern.ts';
import type { OptionSource } from '../pattern/option-table.ts';
import { plannedAngle } from '../pattern/plan-hand.ts';
import { holdsInWords, PLATE_ANGLE, PLATE_FACES } from '../pattern/plate/plate-design.ts';
import { plateById, plateOfFaces, plates } from '../pattern/plate/plate-library.ts';
import { PLATE_NUMBER_OPTIONS, type PlateOptions } from '../pattern/plate/plate-options.ts';
import { designFor, type PlatePreset, readPlate } from '../pattern/plate/read-plate.ts';
import { readPlateOptions } from '../pattern/plate/read-plate-options.ts';
import { parseDegrees } from '../units/degrees-text.ts';
import { nearest } from '../units/nearest.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { describePlate } from './describe-plate.ts';
import type { DrawFlags } from './draw-command.ts';
import { fail, warn } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';
import { rejectInapplicableFlags } from './flags/reject-inapplicable-flags.ts';
import { type OutputPlan, readOutputPlan } from './output-plan.ts';
import { readDate } from './read-date.ts';
import { checkOutput, writePatterns } from './write-patterns.ts';

/** Runs `draw --plate`: reads everything, checks the folder, makes and proves the plate, writes the files together, reports. */
export async function drawPlate(handFile: string, flags: DrawFlags): Promise<void> {
  const inputs = await readInputs(handFile, flags);
  if (!inputs.ok) return fail(inputs.problems);
  const { request, output } = inputs.value;
  const stem = `${request.hand.code}-${request.plate.id}`;
  const place = await checkOutput(output, [stem]);
  if (!place.ok) return fail(place.problems);
  const made = makePattern(request);
  if (!made.ok) return fail(made.problems);
  const files = await writePatterns([{ stem, pattern: made.value.pattern }], output);
  if (!files.ok) return fail(files.problems);
  const warnings: readonly Warning[] = [...inputs.warnings, ...made.warnings, ...files.warnings];
  if (flags.json === true) process.stdout.write(`${JSON.stringify({ ...made.value.report, warnings, files: files.value }, null, 2)}\n`);
  else {
    warn(warnings);
    process.stdout.write(describePlate(made.value.report, `${request.plate.title}, ${holdsInWords(request.plate)}`, files.value));
  }
}

interface PlateInputs {
  readonly request: PlateRequest;
  readonly output: OutputPlan;
}

/** Everything that the person gave, with all problems of all of it at once. */
async function readInputs(handFile: string, flags: DrawFlags): Promise<Result<PlateInputs>> {
  const text = await readText(handFile);
  const hand = text.ok ? parseHandText(text.value, handFile) : text;
  const preset = await namedPlate(String(flags.plate));
  const digits = readDigits(flags.digits);
  const angle = readAngle(flags.angle);
  const options = await readOptions(flags, preset.ok ? preset.value : null);
  const output = readOutputPlan(flags);
  const date = readDate(flags.date);
  const problems: Problem[] = [hand, preset, digits, angle, options, output, date, rejectInapplicableFlags(flags, 'plate')].flatMap((r) =>
    r.ok ? [] : r.problems,
  );
  if (!hand.ok || !preset.ok || !digits.ok || !angle.ok || !options.ok || !output.ok || !date.ok || problems.length > 0) {
    return failure(...problems);
  }
  const choice = {
    digits: digits.value,
    angle: angle.value,
    planned: plannedAngle(hand.value, { clinicianConfirms: flags.clinicianConfirms === true }),
  };
  const plate = designFor(hand.value, preset.value, choice);
  if (!plate.ok) return failure(...plate.problems.map(withFlag));
  const request: PlateRequest = { kind: 'plate', hand: hand.value, plate: plate.value, options: options.value, date: date.value };
  return success({ request, output: output.value }, [
    ...hand.warnings,
    ...cautionsFor(hand.value.flags),
    ...plate.warnings,
    ...output.warnings,
  ]);
}

/** A face by its name, a plate of the library by its id, or of a file by its path. A bare face takes in all four digits. */
export async function namedPlate(name: string): Promise<Result<PlatePreset>> {
  const faces = PLATE_FACES.find((known) => known === name);
  if (faces) return success(plateOfFaces(faces));
  const known = plateById(name);
  if (known) return success(known);
  if (!/[/\\.]/.test(name)) {
    const names = [...PLATE_FACES, ...plates().map((p) => p.id)];
    const near = nearest(name, names);
    const hint = near ? `; did you mean ${near}?` : `. It can be ${names.join(', ')}, or a plate file`;
    return failure(flagProblem('--plate', `there is no plate "${name}"${hint}`));
  }
  const json = await readJson(name);
  return json.ok ? readPlate(json.value, name) : json;
}

function readDigits(list: string | undefined): Result<readonly DigitName[] | null> {
  if (list === undefined) return success(null);
  const asked = list.split(',').map((word) => word.trim().toLowerCase());
  const unknown = asked.filter((word) => !DIGITS.some((digit) => digit === word));
  if (unknown.length > 0) {
    return failure(
      flagProblem(
        '--digits',
        `"${list}" names ${unknown.map((w) => `"${w}"`).join(', ')}; the digits are ${DIGITS.join(', ')}, with commas between`,
      ),
    );
  }
  return success(DIGITS.filter((digit) => asked.includes(digit)));
}

function readAngle(text: string | undefined): Result<number | null> {
  if (text === undefined) return success(null);
  const angle = parseDegrees(text);
  if (angle.ok && angle.degrees <= PLATE_ANGLE.high) return success(angle.degrees);
  const why = angle.ok ? `${text} is out of range` : angle.reason;
  return failure(flagProblem('--angle', `${why}; ${PLATE_ANGLE.low} to ${PLATE_ANGLE.high} degrees is allowed`));
}

/** Defaults, then the preset's options, an options file, and the flags. */
async function readOptions(flags: DrawFlags, preset: PlatePreset | null): Promise<Result<PlateOptions>> {
  const file = flags.options === undefined ? null : await readJson(flags.options);
  const given = Object.fromEntries(PLATE_NUMBER_OPTIONS.flatMap(({ key }) => (flags[key] === undefined ? [] : [[key, flags[key]]])));
  const sources: readonly OptionSource[] = [
    ...(preset ? [{ origin: preset.id, values: preset.options }] : []),
    ...(file?.ok ? [{ origin: String(flags.options), values: file.value }] : []),
    { origin: 'flags', values: given },
  ];
  const options = readPlateOptions(sources);
  return file && !file.ok ? failure(...file.problems, ...(options.ok ? [] : options.problems)) : options;
}

/** Says which flag answers a problem of the design. */
function withFlag(problem: Problem): Problem {
  const flag = { PLATE_ANGLE: '--angle', NO_TARGET: '--digits' }[problem.code];
  return flag ? { ...problem, message: `${problem.message} Use ${flag}.` } : problem;
}
