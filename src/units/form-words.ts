import type * as z from 'zod';
import { getOwn } from './get-own.ts';
import { quote } from './quote.ts';

/** More unknown keys than these are counted. */
const MOST_KEYS = 5;

/**
 * What zod found wrong with a value, as the end of a sentence about it: "is missing", "is 7; expected text". zod's own words quote keys
 * of the file as they are, however long, and call a missing value undefined.
 * @param json the whole value that was checked
 */
export function formWords(issue: z.core.$ZodIssue, json: unknown): string {
  if (issue.code === 'unrecognized_keys') {
    const more = issue.keys.length > MOST_KEYS ? ` and ${issue.keys.length - MOST_KEYS} more` : '';
    return `has keys that are not known: ${issue.keys.slice(0, MOST_KEYS).map(quote).join(', ')}${more}`;
  }
  const value = issue.path.reduce(getOwn, json);
  return `${value === undefined ? 'is missing' : `is ${quote(value)}`}; ${expectation(issue)}`;
}

function expectation(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `expected ${{ string: 'text', object: 'an object', array: 'a list', boolean: 'true or false' }[issue.expected as string] ?? `a ${issue.expected}`}`;
    case 'invalid_value':
      return `expected ${issue.values.map(quote).join(' or ')}`;
    case 'too_big':
      return `at most ${String(issue.maximum)}${issue.origin === 'string' ? ' characters' : ''} is allowed`;
    case 'too_small':
      return `at least ${String(issue.minimum)}${issue.origin === 'string' ? ' characters' : ''} is allowed`;
    case 'invalid_format':
    case 'custom':
      // These messages are written in our schemas.
      return issue.message;
    default:
      return 'expected another value';
  }
}
