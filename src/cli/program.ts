import { Command as CommanderCommand, type CommandUnknownOpts } from '@commander-js/extra-typings';
import { FAMILIES } from './commands.ts';
import type { Command } from './define-command.ts';
import { VERSION } from './version.ts';

/** The command line over these commands: commander parses it, and each command runs on what it found. */
export function programOf(commands: readonly Command[]): CommanderCommand {
  const program = new CommanderCommand('knucklewright')
    .description(
      'From a measured hand to an exact, full-scale flat pattern for a relative-motion finger orthosis. It suggests; the clinician decides.',
    )
    .version(VERSION);
  const families = new Map<string, CommanderCommand>();
  for (const command of commands) {
    const [first = '', second] = command.name.split(' ');
    if (second === undefined) program.addCommand(commanderOf(command, first));
    else {
      const family =
        families.get(first) ??
        program
          .command(first)
          .description(FAMILIES[first] ?? '')
          .helpGroup(`${command.group}:`);
      families.set(first, family.addCommand(commanderOf(command, second)));
    }
  }
  for (const [words, command] of withPaths(program)) command.exitOverride().showHelpAfterError(`(see ${words} --help)`);
  return program;
}

function commanderOf({ group, about, examples, args, flags, run }: Command, name: string): CommanderCommand {
  const command = new CommanderCommand(name).description(about).helpGroup(`${group}:`);
  for (const arg of args) command.addArgument(arg);
  for (const option of flags) command.addOption(option);
  if (examples.length > 0) command.addHelpText('after', `\nExamples:\n${examples.map((words) => `  knucklewright ${words}`).join('\n')}`);
  const isGiven = (key: string) => command.getOptionValueSource(key) === 'cli';
  // After the arguments commander gives the flags and the command itself.
  return command.action((...given: unknown[]) => run(given.slice(0, args.length), given[args.length] as object, isGiven));
}

function withPaths(command: CommandUnknownOpts, before = ''): readonly (readonly [string, CommandUnknownOpts])[] {
  const words = `${before}${command.name()}`;
  return [[words, command], ...command.commands.flatMap((child) => withPaths(child, `${words} `))];
}
