import type * as z from 'zod';
import { getOwn } from './json-text.ts';
import { escapeInvisible, quote, visible } from './quote.ts';
import { failure, type Problem, type Result, success } from './result.ts';
import { nearest } from './typed-name.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** More messages than these help nobody; the rest are counted. */
const MOST_PROBLEMS = 60;
/** More unknown keys than these are counted where one sentence names them all. */
const MOST_KEYS = 5;

/** What a kind of file knows of itself beyond its form. */
interface FormWords {
  /** Names of the keys that an object at a path may have. */
  readonly known: (path: Path) => readonly string[];
  /** What is expected at a place, where the form itself does not say it well; null where it does. */
  readonly expected?: (issue: Issue) => string | null;
  /** How the value at a path is found or written, as a sentence; empty where there is nothing to say. */
  readonly hint?: (path: Path) => string;
  /** The key or word that another word stands for, too far in spelling to be found as the nearest. */
  readonly synonym?: (text: string) => string | null;
}

/** A form that is built when it is first asked for: most commands read a few kinds of file, and building the form of each takes long beside a short command. */
export function lateForm<Form>(build: () => Form): () => Form {
  let built: Form | undefined;
  return () => {
    built ??= build();
    return built;
  };
}

/**
 * What zod found wrong with the form of a file, in our words: what, where, the value, what is allowed. zod's own words quote keys of the file
 * as they are, however long, and call a missing value undefined. The first 60, and one `MORE_PROBLEMS` that counts the rest. Codes
 * `FIELD_MISSING`, `FIELD_UNKNOWN` (with the nearest known key), `FIELD_TYPE`, `FIELD_VALUE`, `FIELD_OUT_OF_RANGE`.
 * @param json the whole value that was checked
 */
export function formProblems(issues: readonly Issue[], json: unknown, words: FormWords): readonly Problem[] {
  const all = issues.flatMap((issue): (() => Problem)[] => {
    if (issue.code !== 'unrecognized_keys') return [() => wrongValue(issue, json, words)];
    return issue.keys.map((key) => () => unknownKey(key, issue.path, words));
  });
  // Only what is said is worded: looking for the nearest key takes long when there are a hundred thousand.
  const said = all.slice(0, MOST_PROBLEMS).map((word) => word());
  if (all.length <= MOST_PROBLEMS) return said;
  const message = `and ${all.length - MOST_PROBLEMS} more problems of this kind`;
  return [...said, { code: 'MORE_PROBLEMS', where: '', message, kind: 'input' }];
}

/** The same of one issue, as the end of a sentence about the value: `is missing; expected text`. */
export function formWords(issue: Issue, json: unknown): string {
  if (issue.code === 'unrecognized_keys') {
    const more = issue.keys.length > MOST_KEYS ? ` and ${issue.keys.length - MOST_KEYS} more` : '';
    return `has keys that are not known: ${issue.keys.slice(0, MOST_KEYS).map(quote).join(', ')}${more}`;
  }
  const value = issue.path.reduce<unknown>(getOwn, json);
  return `${value === undefined ? 'is missing' : `is ${quote(value)}`}; expected ${expectation(issue)}`;
}

function unknownKey(key: string, path: Path, { known, synonym }: FormWords): Problem {
  const where = [...path.map(String), visible(key)].join('.');
  const names = known(path);
  const other = synonym?.(key) ?? null;
  const meant = other !== null && names.includes(other) ? other : nearest(key, names);
  const advice = meant !== null ? ` Did you mean ${quote(meant)}?` : names.length > 0 ? ` Known here: ${names.join(', ')}.` : '';
  return { code: 'FIELD_UNKNOWN', where, message: `${where}: this key is not known.${advice}`, kind: 'input' };
}

function wrongValue(issue: Issue, json: unknown, { expected: special, hint, synonym }: FormWords): Problem {
  const where = issue.path.map((key) => visible(String(key))).join('.');
  const value = issue.path.reduce<unknown>(getOwn, json);
  const name = where === '' ? 'the file' : where;
  const expected = special?.(issue) ?? expectation(issue);
  const how = hint?.(issue.path) ?? '';
  const next = how === '' ? '' : ` ${how}`;
  if (value === undefined)
    return { code: 'FIELD_MISSING', where, message: `${name}: missing; expected ${expected}.${next}`, kind: 'input' };
  if (Array.isArray(value) && issue.code === 'too_big') {
    const message = `${name}: there are ${value.length}; at most ${String(issue.maximum)} are read.${next}`;
    return { code: codeOf(issue), where, message, kind: 'input' };
  }
  const allowed = issue.code === 'invalid_value' ? issue.values.filter((v) => typeof v === 'string') : [];
  const meant = typeof value === 'string' ? (synonym?.(value) ?? nearest(value, allowed)) : null;
  const advice = meant !== null && allowed.includes(meant) ? ` Did you mean ${quote(meant)}?` : next;
  return { code: codeOf(issue), where, message: `${name}: ${quote(value)} is not allowed; expected ${expected}.${advice}`, kind: 'input' };
}

function codeOf({ code }: Issue): string {
  if (code === 'too_big' || code === 'too_small') return 'FIELD_OUT_OF_RANGE';
  return code === 'invalid_type' || code === 'invalid_union' ? 'FIELD_TYPE' : 'FIELD_VALUE';
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  object: 'an object',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
};

function expectation(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? `a ${issue.expected}`;
    case 'invalid_union':
      return 'a number, or text such as "84.5 mm"';
    case 'invalid_value':
      return `${issue.values.length > 1 ? 'one of ' : ''}${issue.values.map(quote).join(', ')}`;
    case 'too_big':
      return `at most ${String(issue.maximum)}${sizeOf(issue.origin)}`;
    case 'too_small':
      return `${issue.inclusive === false ? 'more than' : 'at least'} ${String(issue.minimum)}${sizeOf(issue.origin)}`;
    case 'invalid_format':
    case 'custom':
      // A form of ours says what it wants; zod's own words begin with this one.
      return issue.message.startsWith('Invalid') ? 'another form of text' : issue.message;
    default:
      return 'another value';
  }
}

function sizeOf(origin: string): string {
  return { string: ' characters', array: ' entries' }[origin] ?? '';
}

const SCHEMA = /^knucklewright\/([a-z-]{1,30})@(\d{1,9})$/;

/**
 * `FILE_NEWER` when a file says that it has a later version of its kind than this program knows; null for any other file, whatever is wrong
 * with it.
 * @param known the schema of the kind that is read, as `knucklewright/hand@1`
 */
export function newerVersion(json: unknown, known: string, source = ''): Problem | null {
  const written = getOwn(json, 'schema');
  const found = typeof written === 'string' ? SCHEMA.exec(written) : null;
  const own = SCHEMA.exec(known);
  if (!found || !own || found[1] !== own[1] || Number(found[2]) <= Number(own[2])) return null;
  const message = `${source === '' ? '' : `${source}: `}${newerWords(Number(found[2]), Number(own[2]), String(own[1]))}`;
  return { code: 'FILE_NEWER', where: 'schema', message, kind: 'input' };
}

export function newerWords(found: number, known: number, kind: string): string {
  return `the file has version ${found} of the ${kind} file, and this program knows up to version ${known}: a newer knucklewright wrote it. Use that one; the file was left as it is`;
}

/** A small file of ours, all of whose problems go by one code. */
interface SmallFile {
  /** Name and version, as `knucklewright/block@1`. */
  readonly schema: string;
  readonly code: string;
  /** The whole of it, in a message: `the block`. */
  readonly whole: string;
  /** A sentence that ends each message: what such a file looks like. */
  readonly advice: string;
}

/** What a small file holds by its form; fails with `FILE_NEWER`, or with its own code for each problem. `source` names the file in messages. */
export function readSmallFile<T>(form: z.ZodType<T>, json: unknown, source: string, { schema, code, whole, advice }: SmallFile): Result<T> {
  const newer = newerVersion(json, schema, source);
  if (newer) return failure(newer);
  const read = form.safeParse(json);
  if (read.success) return success(read.data);
  return failure(
    ...read.error.issues.map((issue): Problem => {
      const where = issue.path.map(String).map(visible).join('.');
      const message = `${escapeInvisible(source)}: ${where || whole} ${formWords(issue, json)}. ${advice}`;
      return { code, where, message, kind: 'input' };
    }),
  );
}
