import type { Problem } from '../units/result.ts';

/** What tells who somebody is and can be told from a remark by its form. Dates stay allowed: operations have them. */
const TELLS_WHO: readonly (readonly [RegExp, string])[] = [
  [/\S@\S+\.\S/, 'an e-mail address'],
  [/(?:\d[ ()./-]{0,2}){9,}/, 'a telephone or insurance number'],
  [/\b(?:Mr|Mrs|Ms|Miss|Mx|Dr|Prof)\b\.? *\p{Lu}/u, 'a person by title and name'],
  [/\b(?:d\.?o\.?b\b|date of birth|born (?:on|in))/i, 'a date of birth'],
];

/** A problem `COMMENT_TELLS_WHO` when a comment names somebody in a form that can be recognised; a bare name cannot be. */
export function commentProblem(text: string | undefined, where: string): readonly Problem[] {
  const found = TELLS_WHO.find(([form]) => form.test(text ?? ''));
  if (found === undefined) return [];
  const message = `${where}: looks as if it had ${found[1]} in it. A case file must not tell who the person is; write it without.`;
  return [{ code: 'COMMENT_TELLS_WHO', where, message, kind: 'input' }];
}
