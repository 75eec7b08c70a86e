import { success } from '../../units/result.ts';
import { bashCompletion } from '../bash-completion.ts';
import { type Command, defineCommand } from '../define-command.ts';
import { argument } from '../flags/flag.ts';

/** `completion`: what a shell needs to complete commands, flags and their words. */
export function completionOf(all: () => Promise<readonly Command[]>) {
  return defineCommand({
    name: 'completion',
    group: 'What it knows',
    about: 'print a script that lets the shell complete commands, flags and their words: source <(knucklewright completion bash)',
    args: [argument('<shell>', 'the shell').choices(['bash'])],
    flags: [],
    read: () => success(null),
    make: async () => success(bashCompletion(await all())),
    report: { text: (script) => script },
  });
}
