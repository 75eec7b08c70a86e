import * as z from 'zod';
import { GONIOMETRY_FIELDS, JOINTS, MOTION_KEYS } from '../hand/target-motion.ts';
import { formProblems } from '../units/form-problems.ts';
import type { Problem } from '../units/result.ts';
import { CLOSE_REASONS } from './case-schema.ts';

/**
 * What zod found wrong with the form of a case or visit, see `formProblems`.
 * @param known names of the keys that an object at a path may have
 */
export function caseProblems(
  issues: readonly z.core.$ZodIssue[],
  json: unknown,
  known: (path: readonly PropertyKey[]) => readonly string[],
): readonly Problem[] {
  return formProblems(issues, json, { known, expected, hint });
}

function expected({ code, path }: z.core.$ZodIssue): string | null {
  const field = goniometryField(path);
  if (field !== null) return `the ${field.label}, a number of degrees from ${field.refuse.from} to ${field.refuse.to}`;
  const key = path.at(-1);
  if (key === 'reason') return `one of ${CLOSE_REASONS.join(', ')}`;
  if (key === 'date') return 'a day from 2000 to 2099 that exists, as 2026-03-31';
  return code === 'invalid_union' && (key === 'made' || key === 'kind') ? '"kind" to be "strip" or "plate"' : null;
}

function hint(path: readonly PropertyKey[]): string {
  if (path.length === 1 && path[0] === 'visits') return 'Open a new case for the visits that follow (case new).';
  const field = goniometryField(path);
  if (field === null) return '';
  const deficit = field.id.endsWith('.extensionDeficit');
  const sign = ' A deficit is written without a sign; a joint that goes beyond straight has "hyperextension" instead.';
  return `${field.howToMeasure}${deficit ? sign : ''}`;
}

function goniometryField(path: readonly PropertyKey[]) {
  const key = MOTION_KEYS.find((known) => known === path.at(-1));
  const joint = path.includes('pencil') ? 'pip' : JOINTS.find((known) => path.includes(known));
  return key === undefined || joint === undefined ? null : GONIOMETRY_FIELDS[joint][key];
}

/** The keys that the object at a path of a schema may have; empty where the path leads nowhere or to no object. */
export function knownKeys(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly string[] {
  const found = path.reduce<readonly z.core.$ZodType[]>((at, key) => at.flatMap((one) => step(one, key)), bare(schema));
  return [...new Set(found.flatMap((one) => (one instanceof z.ZodObject ? Object.keys(one.shape) : [])))];
}

/** What a schema stands for without its wrapping: itself, or each of its alternatives. */
function bare(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  if (schema instanceof z.ZodOptional) return bare(schema.unwrap());
  if (schema instanceof z.ZodUnion) return schema.options.flatMap(bare);
  return [schema];
}

function step(schema: z.core.$ZodType, key: PropertyKey): readonly z.core.$ZodType[] {
  if (schema instanceof z.ZodArray) return bare(schema.element);
  if (!(schema instanceof z.ZodObject)) return [];
  const shape: Record<string, z.core.$ZodType> = schema.shape;
  const inner = typeof key === 'string' && Object.hasOwn(shape, key) ? shape[key] : undefined;
  return inner === undefined ? [] : bare(inner);
}

/** What tells who somebody is and can be told from a remark by its form. Dates stay allowed: operations have them. */
const TELLS_WHO: readonly (readonly [(text: string) => boolean, string])[] = [
  [(text) => /\S@\S+\.\S/.test(text), 'an e-mail address'],
  [hasLongNumber, 'a telephone or insurance number'],
  [(text) => /\b(?:Mr|Mrs|Ms|Miss|Mx|Dr|Prof)\b\.? *\p{Lu}/u.test(text), 'a person by title and name'],
  [(text) => /\b(?:d\.?o\.?b\b|date of birth|born (?:on|in))/i.test(text), 'a date of birth'],
];

const DATE = /\b(?:\d{4}-\d\d-\d\d|\d{1,2}[./]\d{1,2}[./]\d{2,4})\b/g;
const DIGITS_IN_A_ROW = /\d(?:[ ().-]{0,2}\d){8,}/g;

/** Nine digits or more in a row with a group of four among them: angles and lengths, which may stand in a row as well, have three at most. */
function hasLongNumber(text: string): boolean {
  return (text.replace(DATE, ';').match(DIGITS_IN_A_ROW) ?? []).some((row) => /\d{4}/.test(row));
}

/** A problem `COMMENT_TELLS_WHO` when a comment names somebody in a form that can be recognised; a bare name cannot be. */
export function commentProblem(text: string | undefined, where: string): readonly Problem[] {
  const found = text === undefined ? undefined : TELLS_WHO.find(([tells]) => tells(text));
  if (found === undefined) return [];
  const message = `${where}: looks as if it had ${found[1]} in it. A case file must not tell who the person is; write it without.`;
  return [{ code: 'COMMENT_TELLS_WHO', where, message, kind: 'input' }];
}
