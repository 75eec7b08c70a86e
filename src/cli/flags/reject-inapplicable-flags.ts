import { failure, type Result, success } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import { flagProblem } from './flag-problem.ts';
import { PLATE_KEYS, STRIP_KEYS } from './option-flags.ts';

const KEYS: Readonly<Record<'strip' | 'plate', readonly string[]>> = {
  strip: ['paperTrial', ...STRIP_KEYS],
  plate: ['digits', 'angle', ...PLATE_KEYS],
};

/** Flags that mean nothing for what is drawn: they are refused, never passed over. */
export function rejectInapplicableFlags(flags: { readonly block: string }, drawn: 'strip' | 'plate'): Result<null> {
  const [mine, others] = drawn === 'strip' ? [KEYS.strip, KEYS.plate] : [KEYS.plate, KEYS.strip];
  const given = Object.entries(flags).flatMap(([key, value]) => (value === undefined ? [] : [key]));
  const what = drawn === 'strip' ? 'a plate; add --plate, or leave it out' : 'a strip; leave it out, or leave out --plate';
  const problems = others
    .filter((key) => !mine.includes(key) && given.includes(key))
    .map((key) => flagProblem(`--${kebabCase(key)}`, `belongs to ${what}`));
  if (drawn === 'plate' && flags.block !== 'auto') problems.push(flagProblem('--block', `belongs to ${what}`));
  return problems.length > 0 ? failure(...problems) : success(null);
}
