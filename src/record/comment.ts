import type { Problem } from '../units/result.ts';

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
