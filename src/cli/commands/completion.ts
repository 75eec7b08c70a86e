import { success } from '../../units/result.ts';
import { type Command, defineCommand } from '../define-command.ts';
import { argument } from '../flags/flag.ts';
import { SHELLS, shellCompletion } from '../shell-completion.ts';

/** `completion`: what a shell needs to complete commands, flags and their words. */
export function completionOf(all: () => Promise<readonly Command[]>) {
  return defineCommand({
    name: 'completion',
    group: 'What it knows',
    about: 'print a script that lets the shell complete commands, flags and their words: source <(knucklewright completion bash)',
    examples: ['completion bash > ~/.local/share/bash-completion/completions/knucklewright', 'completion fish | source'],
    args: [argument('<shell>', 'the shell').choices(SHELLS)],
    flags: [],
    read: ([shell]) => success(shell),
    make: async (shell) => success(shellCompletion(shell, await all())),
    report: { text: (script) => script },
  });
}
