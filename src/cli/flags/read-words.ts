import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { flagProblem } from './flag-problem.ts';

/** Words from a list with commas between, whatever their order and letter case, in the order of `known`; at least one. */
export function readWords<Word extends string>(
  flag: string,
  list: string,
  known: readonly Word[],
  one: string,
  several: string,
): Result<readonly Word[]> {
  const asked = list
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  const unknown = [...new Set(asked)].filter((word) => !known.some((w) => w === word));
  if (unknown.length === 0 && asked.length > 0) return success(known.filter((word) => asked.includes(word)));
  const what = unknown.length > 0 ? `unknown ${several} (${unknown.slice(0, 5).map(quote).join(', ')})` : `no ${one}`;
  return failure(flagProblem(flag, `${quote(list)} names ${what}; the ${several} are ${known.join(', ')}`));
}
