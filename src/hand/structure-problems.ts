import type * as z from 'zod';
import { formProblems } from '../units/form-problems.ts';
import { getOwn } from '../units/json-text.ts';
import type { Problem } from '../units/result.ts';
import { DIGITS, WEBS } from './digits.ts';
import { DIGIT_FIELDS, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from './fields.ts';
import { digitSchema, digitsSchema, flagsSchema, handSchema, targetSchema } from './hand-schema.ts';
import { TARGET_MOTIONS, targetMotionFields } from './target-motion.ts';

/** Other words for our keys that are too far in spelling for `nearest`. */
const SYNONYMS: Readonly<Record<string, string>> = { middle: 'long', small: 'little', pinky: 'little', pinkie: 'little', pointer: 'index' };

/** What zod found wrong with the form of a hand file, see `formProblems`. */
export function structureProblems(issues: readonly z.core.$ZodIssue[], json: unknown): readonly Problem[] {
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
