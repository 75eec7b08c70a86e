import type * as z from 'zod';
import { getOwn } from '../units/get-own.ts';
import { nearest } from '../units/nearest.ts';
import { quote, visible } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { DIGITS, WEBS } from './digits.ts';
import { DIGIT_FIELDS, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from './fields.ts';
import { digitSchema, digitsSchema, flagsSchema, handSchema, targetSchema } from './hand-schema.ts';
import { TARGET_MOTIONS, targetMotionFields } from './target-motion.ts';

type Issue = z.core.$ZodIssue;

/** More messages than these help nobody; the rest are counted. */
const MOST_PROBLEMS = 60;

/** Other words for our keys that are too far in spelling for `nearest`. */
const SYNONYMS: Readonly<Record<string, string>> = { middle: 'long', small: 'little', pinky: 'little', pinkie: 'little', pointer: 'index' };

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  object: 'an object',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
};

/**
 * What zod found wrong with the form of a hand file, in our words: missing, unknown (with the nearest known key), wrong type or
 * value. The first 60, and one `MORE_PROBLEMS` that counts the rest.
 */
export function structureProblems(issues: readonly Issue[], json: unknown): Problem[] {
  const problems: Problem[] = [];
  let unsaid = 0;
  for (const issue of issues) {
    const room = MOST_PROBLEMS - problems.length;
    const count = issue.code === 'unrecognized_keys' ? issue.keys.length : 1;
    unsaid += Math.max(0, count - room);
    if (room === 0) continue;
    if (issue.code === 'unrecognized_keys') problems.push(...issue.keys.slice(0, room).map((key) => unknownKey(key, issue.path)));
    else problems.push(wrongValue(issue, json));
  }
  if (unsaid > 0) problems.push({ code: 'MORE_PROBLEMS', where: '', message: `and ${unsaid} more problems of this kind`, kind: 'input' });
  return problems;
}

function unknownKey(key: string, path: readonly PropertyKey[]): Problem {
  const known = knownKeys(path);
  const where = [...path.map(String), visible(key)].join('.');
  const synonym = synonymOf(key);
  const meant = synonym !== null && known.includes(synonym) ? synonym : nearest(key, known);
  const advice = meant === null ? `Known here: ${known.join(', ')}.` : `Did you mean ${quote(meant)}?`;
  return { code: 'FIELD_UNKNOWN', where, message: `${where}: this key is not known. ${advice}`, kind: 'input' };
}

function synonymOf(text: string): string | null {
  const meant = getOwn(SYNONYMS, text.toLowerCase());
  return typeof meant === 'string' ? meant : null;
}

function knownKeys(path: readonly PropertyKey[]): string[] {
  const [first, second] = path;
  const motion = TARGET_MOTIONS.find((known) => known === second);
  if (first === 'target' && motion) return Object.keys(targetMotionFields(motion));
  if (first === 'target' && second === 'readings') return ['extension', 'flexion'];
  if (Object.keys(WEB_FIELDS).some((id) => id === first)) return [...WEBS];
  const schemas = { target: targetSchema, flags: flagsSchema, digits: second === undefined ? digitsSchema : digitSchema };
  const schema = first === undefined ? handSchema : (Object.entries(schemas).find(([key]) => key === first)?.[1] ?? handSchema);
  return Object.keys(schema.shape);
}

function wrongValue(issue: Issue, json: unknown): Problem {
  const where = issue.path.map(String).join('.');
  const value = issue.path.reduce(getOwn, json);
  const name = where === '' ? 'the file' : where;
  const expected = expectation(issue);
  const hint = howTo(issue.path);
  if (value === undefined)
    return { code: 'FIELD_MISSING', where, message: `${name}: missing; expected ${expected}.${hint}`, kind: 'input' };
  const allowed = issue.code === 'invalid_value' ? issue.values.filter((v) => typeof v === 'string') : [];
  const meant = typeof value === 'string' ? (synonymOf(value) ?? nearest(value, allowed)) : null;
  const advice = meant !== null && allowed.includes(meant) ? ` Did you mean ${quote(meant)}?` : hint;
  const code = issue.code === 'invalid_type' || issue.code === 'invalid_union' ? 'FIELD_TYPE' : 'FIELD_VALUE';
  return { code, where, message: `${name}: ${quote(value)} is not allowed; expected ${expected}.${advice}`, kind: 'input' };
}

function expectation(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? issue.expected;
    case 'invalid_union':
      return issue.path[0] === 'target' ? 'a number of degrees' : 'a number, or text such as "84.5 mm"';
    case 'invalid_value':
      return `${issue.values.length > 1 ? 'one of ' : ''}${issue.values.map(quote).join(', ')}`;
    case 'too_big':
      return `at most ${String(issue.maximum)}${{ string: ' characters', array: ' entries' }[issue.origin as string] ?? ''}`;
    case 'too_small':
      return `at least ${String(issue.minimum)}`;
    case 'invalid_format':
    case 'custom':
      return 'one line without control characters';
    default:
      return 'another value';
  }
}

function howTo(path: readonly PropertyKey[]): string {
  const key = path.find((part) => typeof part === 'string' && Object.hasOwn(WEB_FIELDS, part)) ?? path.at(-1);
  if (path[0] === 'digits' && path.length === 1) return ` The digits are ${DIGITS.join(', ')}.`;
  const field = Object.values({ ...DIGIT_FIELDS, ...WEB_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS }).find(({ id }) => id === key);
  return field === undefined ? '' : ` ${field.howToMeasure}`;
}
