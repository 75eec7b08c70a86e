import type * as z from 'zod';
import { getOwn } from '../units/get-own.ts';
import { nearest } from '../units/nearest.ts';
import { quote, visible } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { GONIOMETRY_FIELDS, JOINTS, MOTION_KEYS } from './goniometry-fields.ts';

type Issue = z.core.$ZodIssue;

/** More messages than these help nobody; the rest are counted. */
const MOST_PROBLEMS = 60;
const TYPE_WORDS: Readonly<Record<string, string>> = {
  object: 'an object',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  number: 'a number',
};

/**
 * What zod found wrong with the form of a case or visit, in our words: what, where, the value, what is allowed. The first 60, and one
 * `MORE_PROBLEMS` that counts the rest. Codes `FIELD_MISSING`, `FIELD_UNKNOWN`, `FIELD_TYPE`, `FIELD_VALUE`, `FIELD_OUT_OF_RANGE`.
 * @param known names of the keys that an object at a path may have
 */
export function formProblems(
  issues: readonly Issue[],
  json: unknown,
  known: (path: readonly PropertyKey[]) => readonly string[],
): readonly Problem[] {
  const all = issues.flatMap((issue): (() => Problem)[] => {
    if (issue.code !== 'unrecognized_keys') return [() => wrongValue(issue, json)];
    return issue.keys.map((key) => () => unknownKey(key, issue.path, known(issue.path)));
  });
  // Only what is said is worded: looking for the nearest key takes long when there are a hundred thousand.
  const said = all.slice(0, MOST_PROBLEMS).map((word) => word());
  if (all.length <= MOST_PROBLEMS) return said;
  const message = `and ${all.length - MOST_PROBLEMS} more problems of this kind`;
  return [...said, { code: 'MORE_PROBLEMS', where: '', message, kind: 'input' }];
}

function unknownKey(key: string, path: readonly PropertyKey[], known: readonly string[]): Problem {
  const where = [...path.map(String), visible(key)].join('.');
  const meant = nearest(key, known);
  const advice = meant !== null ? ` Did you mean ${quote(meant)}?` : known.length > 0 ? ` Known here: ${known.join(', ')}.` : '';
  return { code: 'FIELD_UNKNOWN', where, message: `${where}: this key is not known.${advice}`, kind: 'input' };
}

function wrongValue(issue: Issue, json: unknown): Problem {
  const where = issue.path.map((key) => visible(String(key))).join('.');
  const value = issue.path.reduce<unknown>(getOwn, json);
  const name = where === '' ? 'the file' : where;
  if (Array.isArray(value) && issue.code === 'too_big') {
    const message = `${name}: there are ${value.length}; at most ${issue.maximum} are read. Start a new case for what follows (case new).`;
    return { code: 'FIELD_OUT_OF_RANGE', where, message, kind: 'input' };
  }
  const { expected, hint, range } = expectation(issue);
  if (value === undefined)
    return { code: 'FIELD_MISSING', where, message: `${name}: missing; expected ${expected}.${hint}`, kind: 'input' };
  const code = range
    ? 'FIELD_OUT_OF_RANGE'
    : issue.code === 'invalid_type' || issue.code === 'invalid_union'
      ? 'FIELD_TYPE'
      : 'FIELD_VALUE';
  return { code, where, message: `${name}: ${quote(value)} is not allowed; expected ${expected}.${hint}`, kind: 'input' };
}

interface Expectation {
  readonly expected: string;
  readonly hint: string;
  readonly range: boolean;
}

function expectation(issue: Issue): Expectation {
  const field = goniometryField(issue.path);
  const range = issue.code === 'too_big' || issue.code === 'too_small';
  if (field !== null) {
    const { label, refuse, howToMeasure } = field;
    const minus = field.id.endsWith('.extensionDeficit')
      ? ' A deficit is written without a sign; a joint that goes beyond straight has "hyperextension" instead.'
      : '';
    return { expected: `the ${label}, a number of degrees from ${refuse.from} to ${refuse.to}`, hint: ` ${howToMeasure}${minus}`, range };
  }
  const key = issue.path.at(-1);
  const plainly = (expected: string, hint = ''): Expectation => ({ expected, hint, range });
  if (key === 'date') return plainly('a day from 2000 to 2099 that exists, as 2026-03-31');
  switch (issue.code) {
    case 'invalid_type':
      return plainly(TYPE_WORDS[issue.expected] ?? issue.expected);
    case 'invalid_union':
      return key === 'made' || key === 'kind' ? plainly('"kind" to be "strip" or "plate"') : plainly('a number, or text such as "84.5 mm"');
    case 'invalid_value':
      return plainly(`${issue.values.length > 1 ? 'one of ' : ''}${issue.values.map(quote).join(', ')}`);
    case 'too_big':
      return plainly(`at most ${String(issue.maximum)}${sizeOf(issue.origin)}`);
    case 'too_small':
      return plainly(`${issue.inclusive === false ? 'more than' : 'at least'} ${String(issue.minimum)}${sizeOf(issue.origin)}`);
    case 'invalid_format':
    case 'custom':
      return key === 'comment' || key === 'note' || key === 'why'
        ? plainly('one line without control characters')
        : plainly('another form of text');
    default:
      return plainly('another value');
  }
}

function sizeOf(origin: string): string {
  return origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '';
}

function goniometryField(path: readonly PropertyKey[]) {
  const key = MOTION_KEYS.find((known) => known === path.at(-1));
  const joint = path.includes('pencil') ? 'pip' : JOINTS.find((known) => path.includes(known));
  return key === undefined || joint === undefined ? null : GONIOMETRY_FIELDS[joint][key];
}
