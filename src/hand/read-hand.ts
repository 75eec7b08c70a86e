import type * as z from 'zod';
import { formProblems, newerVersion } from '../units/form-problems.ts';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { LENGTH_UNITS } from '../units/length.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { checkCaseCode } from './case-code.ts';
import { DIGITS, type DigitName, WEBS } from './digits.ts';
import { type Completed, completeDigits, type MeasuredDigits, type PartlyMeasured } from './estimate.ts';
import { DIGIT_FIELDS, digitsIn, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from './fields.ts';
import type { Hand } from './hand.ts';
import {
  digitSchema,
  digitsSchema,
  FEWEST_DIGITS,
  flagsSchema,
  HAND_SCHEMA_ID,
  type HandFile,
  handSchema,
  targetSchema,
} from './hand-schema.ts';
import { judgeMeasures } from './plausibility.ts';
import { type ReadMeasures, readMeasures } from './read-measures.ts';
import { readTarget, targetProblems, targetWarnings } from './read-target.ts';
import { TARGET_MOTIONS, targetMotionFields } from './target-motion.ts';

/** Other words for our keys that are too far in spelling for `nearest`. */
const SYNONYMS: Readonly<Record<string, string>> = { middle: 'long', small: 'little', pinky: 'little', pinkie: 'little', pointer: 'index' };

/** What zod found wrong with the form of a hand file, see `formProblems`. */
function structureProblems(issues: readonly z.core.$ZodIssue[], json: unknown): readonly Problem[] {
  return formProblems(issues, json, {
    known: knownKeys,
    hint: howTo,
    synonym: (text) => (getOwn(SYNONYMS, text.toLowerCase()) as string | undefined) ?? null,
    expected: ({ code, path }) => (code === 'invalid_union' && path[0] === 'target' ? 'a number of degrees' : null),
  });
}

function knownKeys([first, second]: readonly PropertyKey[]): readonly string[] {
  const motion = TARGET_MOTIONS.find((known) => known === second);
  if (first === 'target' && motion) return Object.keys(targetMotionFields(motion));
  if (first === 'target' && second === 'readings') return ['extension', 'flexion'];
  if (Object.keys(WEB_FIELDS).some((id) => id === first)) return WEBS;
  const schemas = { target: targetSchema, flags: flagsSchema, digits: second === undefined ? digitsSchema : digitSchema };
  const schema = first === undefined ? handSchema : (Object.entries(schemas).find(([key]) => key === first)?.[1] ?? handSchema);
  return Object.keys(schema.shape);
}

const FIELDS = Object.values({ ...DIGIT_FIELDS, ...WEB_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS });

function howTo(path: readonly PropertyKey[]): string {
  if (path[0] === 'digits' && path.length === 1) return `The digits are ${DIGITS.join(', ')}.`;
  // A measurement of a web is told by the first key, all others by the last.
  const field = FIELDS.find(({ id }) => id === path.at(-1)) ?? Object.values(WEB_FIELDS).find(({ id }) => id === path[0]);
  return field?.howToMeasure ?? '';
}

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
 * `TOO_FEW_DIGITS`, `TARGET_NOT_MEASURED`, `ABSENT_MEASURED`, `MOTION_CONTRADICTS`, `NOT_ESTIMABLE`, `NO_CHILD_NORMS`, `MORE_PROBLEMS`. Kind `refused`, where each value is possible but not all
 * together: `SECTION_IMPOSSIBLE`, `LENGTHS_CONTRADICT`, `PALM_IMPOSSIBLE`, `SETBACK_CONTRADICTS`.
 * @param source name of the file, set before each message
 */
export function readHand(json: unknown, source?: string): Result<Hand> {
  const newer = newerVersion(json, HAND_SCHEMA_ID, source);
  if (newer) return failure(newer);
  const form = handSchema.safeParse(json);
  const unit = LENGTH_UNITS.find((known) => known === getOwn(json, 'units')) ?? null;
  const measures = readMeasures(json, unit);
  const judged = judgeMeasures(measures, unit ?? 'mm');
  const problems: Problem[] = [
    ...(form.success ? [] : structureProblems(form.error.issues, json)),
    ...codeProblems(getOwn(json, 'code')),
    ...digitProblems(json),
    ...targetProblems(json),
    ...measures.problems,
    ...judged.problems,
  ];
  if (!form.success || problems.length > 0) return refusal(problems, source);
  const measured = measuredDigits(form.data, measures);
  if (!measured.ok) return refusal(measured.problems, source);
  const completed = completeDigits(measured.value, form.data.units, form.data.child);
  if (completed.problems.length > 0) return refusal(completed.problems, source);
  const warnings: Warning[] = [...measures.warnings, ...judged.warnings, ...targetWarnings(measures), ...completed.warnings];
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
    ...(file.absent?.length ? { absent: DIGITS.filter((digit) => file.absent?.includes(digit)) } : {}),
    ...(file.child ? { child: true } : {}),
    palm: measures.palm,
    ...(Object.values(measures.webs).some((of) => Object.keys(of).length > 0) ? { webs: measures.webs } : {}),
    target: readTarget(file, measures),
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

function codeProblems(code: unknown): Problem[] {
  if (typeof code !== 'string') return [];
  const checked = checkCaseCode(code);
  return checked.ok ? [] : [{ code: 'CASE_CODE', where: 'code', message: `code: ${checked.reason}.`, kind: 'input' }];
}

function digitProblems(json: unknown): Problem[] {
  const digits = getOwn(json, 'digits');
  if (typeof digits !== 'object' || digits === null || Array.isArray(digits)) return [];
  const present = DIGITS.filter((digit) => getOwn(digits, digit) !== undefined);
  const listed = getOwn(json, 'absent');
  const absent = DIGITS.filter((digit) => Array.isArray(listed) && listed.includes(digit));
  const fewest = Math.min(FEWEST_DIGITS, Math.max(1, DIGITS.length - absent.length));
  const problems: Problem[] = [];
  if (present.length < fewest) {
    const needed = absent.length > DIGITS.length - FEWEST_DIGITS ? `all ${fewest} that there are` : `at least ${fewest} neighbours`;
    const message = `digits: ${present.length} of ${DIGITS.filter((d) => !absent.includes(d)).join(', ')} given; ${needed} are needed. A digit that the hand does not have is named in "absent".`;
    problems.push({ code: 'TOO_FEW_DIGITS', where: 'digits', message, kind: 'input' });
  }
  for (const digit of absent.filter((d) => present.includes(d))) {
    const message = `absent: the ${digit} finger is absent and measured. Take it out of "absent", or remove digits.${digit}.`;
    problems.push({ code: 'ABSENT_MEASURED', where: 'absent', message, kind: 'input' });
  }
  const digit = DIGITS.find((known) => known === getOwn(getOwn(json, 'target'), 'digit'));
  if (digit !== undefined && !present.includes(digit)) {
    const message = `target.digit: the ${digit} finger is to be treated but was not measured; add digits.${digit}.`;
    problems.push({ code: 'TARGET_NOT_MEASURED', where: 'target.digit', message, kind: 'input' });
  }
  return problems;
}
