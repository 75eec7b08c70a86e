import { PLATE_NUMBER_OPTIONS } from '../../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { failure, type Result, success } from '../../units/result.ts';
import type { DrawFlags } from '../draw-command.ts';
import { flagProblem } from './flag-problem.ts';

const STRIP_KEYS = [...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((o) => o.key as string);
const PLATE_KEYS = ['digits', 'angle', ...PLATE_NUMBER_OPTIONS.map((o) => o.key as string)];

/** Flags that mean nothing for what is drawn: they are refused, never passed over. */
export function rejectInapplicableFlags(flags: DrawFlags, drawn: 'strip' | 'plate'): Result<null> {
  const [mine, others] = drawn === 'strip' ? [STRIP_KEYS, PLATE_KEYS] : [PLATE_KEYS, STRIP_KEYS];
  const stray = others.filter((key) => !mine.includes(key) && flags[key] !== undefined);
  const problems = stray.map((key) => {
    const flag = `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
    const what = drawn === 'strip' ? 'a plate; add --plate, or leave it out' : 'a strip; leave it out, or leave out --plate';
    return flagProblem(flag, `belongs to ${what}`);
  });
  if (drawn === 'plate' && flags.block !== 'auto')
    problems.push(flagProblem('--block', 'belongs to a strip; leave it out, or leave out --plate'));
  return problems.length > 0 ? failure(...problems) : success(null);
}
