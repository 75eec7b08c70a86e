import { success } from '../../units/result.ts';
import { type Command, defineCommand } from '../define-command.ts';
import { manual } from '../manual.ts';
import { VERSION } from '../version.ts';

/** `man`: the manual page, from the same data as the help. */
export function manOf(all: () => Promise<readonly Command[]>) {
  return defineCommand({
    name: 'man',
    group: 'What it knows',
    about: 'print the manual page of all commands, for man',
    examples: ['man > knucklewright.1', 'man | man -l -'],
    args: [],
    flags: [],
    read: () => success(null),
    make: async () => success(manual(await all(), VERSION)),
    report: { text: (page) => page },
  });
}
