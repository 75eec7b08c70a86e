import { getOwn } from '../units/get-own.ts';
import { parseJsonText } from '../units/json-text.ts';
import { LENGTH_UNITS } from '../units/length.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { checkCaseCode } from './case-code.ts';
import { DIGITS, type DigitName } from './digits.ts';
import { type Completed, completeDigits, type MeasuredDigits, type PartlyMeasured } from './estimate.ts';
import { digitsIn } from './fields.ts';
import type { Hand, Target } from './hand.ts';
import { FEWEST_DIGITS, type HandFile, handSchema } from './hand-schema.ts';
import { judgeMeasures } from './plausibility.ts';
import { type ReadMeasures, readMeasures } from './read-measures.ts';
import { structureProblems } from './structure-problems.ts';

/**
 * A hand from the text of a hand file; see `readHand`. Besides its problems: `JSON_SYNTAX`, `FILE_TOO_LARGE`.
 * @param source name of the file, set before each message
 */
export function parseHandText(text: string, source?: string): Result<Hand> {
  const json = parseJsonText(text, source);
  return json.ok ? readHand(json.value, source) : json;
}

/**
 * A hand from parsed JSON: form, units, ranges, what the measurements say of each other, and estimates for the lengths that are
 * missing. All problems at once (but estimates only once all that was measured holds).
 * Kind `input`: `FIELD_MISSING`, `FIELD_UNKNOWN`, `FIELD_TYPE`, `FIELD_VALUE`, `FIELD_UNREADABLE`, `FIELD_OUT_OF_RANGE`, `CASE_CODE`,
 * `TOO_FEW_DIGITS`, `TARGET_NOT_MEASURED`, `NOT_ESTIMABLE`, `MORE_PROBLEMS`. Kind `refused`, where each value is possible but not all
 * together: `SECTION_IMPOSSIBLE`, `LENGTHS_CONTRADICT`, `PALM_IMPOSSIBLE`.
 * @param source name of the file, set before each message
 */
export function readHand(json: unknown, source?: string): Result<Hand> {
  const form = handSchema.safeParse(json);
  const unit = LENGTH_UNITS.find((known) => known === getOwn(json, 'units')) ?? null;
  const measures = readMeasures(json, unit);
  const judged = judgeMeasures(measures, unit ?? 'mm');
  const problems: Problem[] = [
    ...(form.success ? [] : structureProblems(form.error.issues, json)),
    ...codeProblems(getOwn(json, 'code')),
    ...digitProblems(json),
    ...measures.problems,
    ...judged.problems,
  ];
  if (!form.success || problems.length > 0) return refusal(problems, source);
  const measured = measuredDigits(form.data, measures);
  if (!measured.ok) return refusal(measured.problems, source);
  const completed = completeDigits(measured.value, form.data.units);
  if (completed.problems.length > 0) return refusal(completed.problems, source);
  const warnings: Warning[] = [...measures.warnings, ...judged.warnings, ...completed.warnings];
  return success(assemble(form.data, measures, completed), warnings);
}

function refusal(problems: readonly Problem[], source: string | undefined): Result<Hand> {
  const prefix = source === undefined ? '' : `${source}: `;
  return { ok: false, problems: problems.map((problem) => ({ ...problem, message: `${prefix}${problem.message}` })) };
}

/** The digits with what must have been measured. Fails only for values that an object merely inherits, which the form lets pass. */
function measuredDigits(file: HandFile, measures: ReadMeasures): Result<MeasuredDigits> {
  const digits: Partial<Record<DigitName, PartlyMeasured>> = {};
  const problems: Problem[] = [];
  for (const digit of digitsIn(file.digits)) {
    const { width, circumference, ...others } = measures.digits[digit] ?? {};
    if (width === undefined || circumference === undefined) {
      const where = `digits.${digit}`;
      problems.push({ code: 'FIELD_MISSING', where, message: `${where}: width or circumference is missing.`, kind: 'input' });
    } else digits[digit] = { width, circumference, ...others };
  }
  return problems.length > 0 ? failure(...problems) : success(digits);
}

function assemble(file: HandFile, measures: ReadMeasures, completed: Completed): Hand {
  const flags = file.flags ?? {};
  return {
    code: file.code,
    side: file.side,
    units: file.units,
    digits: completed.digits,
    palm: measures.palm,
    target: target(file, measures),
    flags: {
      hypermobile: DIGITS.filter((digit) => flags.hypermobile?.includes(digit)),
      swelling: flags.swelling ?? false,
      sensation: flags.sensation ?? false,
      hardEndFeel: flags.hardEndFeel ?? false,
      unprotectedRepair: flags.unprotectedRepair ?? false,
    },
    estimated: completed.estimated,
    invented: file.invented ?? false,
    note: file.note ?? null,
    source: file,
  };
}

function target(file: HandFile, { target: read }: ReadMeasures): Target | null {
  const { pipExtensionDeficit, pipFlexionDeficit, ...passive } = read;
  if (file.target === undefined || pipExtensionDeficit === undefined || pipFlexionDeficit === undefined) return null;
  return { digit: file.target.digit, pipExtensionDeficit, pipFlexionDeficit, ...passive };
}

function codeProblems(code: unknown): Problem[] {
  if (typeof code !== 'string') return [];
  const checked = checkCaseCode(code);
  return checked.ok ? [] : [{ code: 'CASE_CODE', where: 'code', message: `code: ${checked.reason}.`, kind: 'input' }];
}

function digitProblems(json: unknown): Problem[] {
  const digits = getOwn(json, 'digits');
  if (typeof digits !== 'object' || digits === null || Array.isArray(digits)) return [];
  const present = DIGITS.filter((digit) => getOwn(digits, digit) !== undefined);
  const problems: Problem[] = [];
  if (present.length < FEWEST_DIGITS) {
    const message = `digits: ${present.length} of ${DIGITS.join(', ')} given; at least ${FEWEST_DIGITS} neighbours are needed.`;
    problems.push({ code: 'TOO_FEW_DIGITS', where: 'digits', message, kind: 'input' });
  }
  const digit = DIGITS.find((known) => known === getOwn(getOwn(json, 'target'), 'digit'));
  if (digit !== undefined && !present.includes(digit)) {
    const message = `target.digit: the ${digit} finger is to be treated but was not measured; add digits.${digit}.`;
    problems.push({ code: 'TARGET_NOT_MEASURED', where: 'target.digit', message, kind: 'input' });
  }
  return problems;
}
