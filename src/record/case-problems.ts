import type * as z from 'zod';
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
