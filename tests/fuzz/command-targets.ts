import type { CommandUnknownOpts } from '@commander-js/extra-typings';
import { CommanderError } from '@commander-js/extra-typings';
import * as fc from 'fast-check';
import { neverAsk } from '../../src/cli/ask.ts';
import { commandsFor } from '../../src/cli/commands.ts';
import type { Command } from '../../src/cli/define-command.ts';
import { programOf } from '../../src/cli/program.ts';
import { escapeInvisible } from '../../src/units/quote.ts';
import type { Result } from '../../src/units/result.ts';
import { typed } from './field-targets.ts';
import { bombText } from './hostile.ts';
import { hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

type Word = string | { readonly bomb: string };
interface CommandRecipe {
  readonly name: string;
  readonly args: readonly Word[];
  readonly flags: readonly { readonly flag: string; readonly value: Word | null }[];
}

const COMMANDS = await commandsFor([]);
neverAsk(true);

/** Files that a command may be given: some are of its kind, the others of another. */
const FILES = [
  'fixtures/demo-hand.json',
  'fixtures/demo-hand-plate.json',
  'fixtures/case-gains.json',
  'fixtures/demo-clinic.csv',
  'templates/blocks/ring-raised-in-three.json',
  'nowhere.json',
];
const LONG_NAME = 200;
const RANGE = /(\d+(?:\.\d+)?) to (\d+(?:\.\d+)?)/;

/** Words for a value: of its choices, from, on and beyond the range that its help says, lists of words in its help, files, and anything at all. */
function valuesOf(about: string, choices: readonly string[] | undefined): fc.Arbitrary<Word> {
  const [, low, high] = RANGE.exec(about) ?? [];
  const words = about.match(/[a-z0-9-]+/gi) ?? [];
  const known: fc.Arbitrary<Word>[] = [
    ...(choices ? [fc.constantFrom(...choices), fc.constantFrom(...choices).map((word) => `${word.toUpperCase()} `)] : []),
    ...(low === undefined || high === undefined ? [] : [edges(Number(low), Number(high)).map(String)]),
    ...(words.length > 0 ? [fc.array(fc.constantFrom(...words), { minLength: 1, maxLength: 3 }).map((list) => list.join(','))] : []),
    fc.constantFrom(...FILES),
    typed,
  ];
  return fc.oneof(...known);
}

function edges(low: number, high: number): fc.Arbitrary<number> {
  return fc.oneof(fc.double({ min: low, max: high, noNaN: true }), fc.constantFrom(low, high, low - 1, high + 1, 0, -low));
}

function recipesOf({ name, args, flags }: Command): fc.Arbitrary<CommandRecipe> {
  const value = (option: Command['flags'][number]) =>
    option.required || option.optional ? valuesOf(option.description, option.argChoices) : fc.constant(null);
  return fc.record({
    name: fc.constant(name),
    args: fc
      .tuple(
        ...args.map((arg) =>
          fc.array(valuesOf(arg.description, arg.argChoices), { minLength: arg.required ? 1 : 0, maxLength: arg.variadic ? 3 : 1 }),
        ),
      )
      .map((lists) => lists.flat()),
    flags: fc
      .uniqueArray(fc.constantFrom(...flags), { maxLength: 6 })
      .chain((some) =>
        fc.tuple(...some.map((option) => value(option).map((word) => ({ flag: option.long ?? option.flags, value: word })))),
      ),
  });
}

/** A word of the command line, where no system takes a NUL. */
const text = (word: Word) => (typeof word === 'string' ? word : bombText(word.bomb)).replaceAll('\u0000', '');

/** Every command by what it says of itself, as far as it reads what a person gave: nothing is made or written. */
export const COMMAND_TARGETS: readonly Target[] = [
  target<CommandRecipe>({
    name: 'commands',
    holds: 'whatever stands behind the flags and arguments of a command is read, or refused with a reason',
    recipes: fc.oneof(...COMMANDS.map(recipesOf)),
    async feed({ name, args, flags }) {
      const words = [
        ...name.split(' '),
        ...args.map(text),
        ...flags.map(({ flag, value }) => (value === null ? flag : `${flag}=${text(value)}`)),
      ];
      const command = COMMANDS.find((known) => known.name === name);
      if (!command) throw new Error(`no command ${name}`);
      const parsed = await parse(command, words);
      if (parsed === null) return;
      for (const { argChoices, attributeName } of command.flags.map((option) => ({ ...option, attributeName: option.attributeName() }))) {
        const value: unknown = Reflect.get(parsed.flags, attributeName);
        if (argChoices && value !== undefined) hold(argChoices.includes(String(value)), () => `${attributeName} is ${String(value)}`);
      }
      readable(asPrinted(await command.read(parsed.args, parsed.flags), words), words.join(' '));
    },
  }),
];

/** Problems and warnings as they are printed, which escapes what a terminal obeys; a file's name, whole in its message however long, is left out. */
function asPrinted(result: Result<unknown>, words: readonly string[]): Result<unknown> {
  const names = words.map((word) => word.slice(word.indexOf('=') + 1)).filter((name) => name.length > LONG_NAME);
  const printed = <Said extends { readonly message: string }>(said: Said): Said => ({
    ...said,
    message: escapeInvisible(names.reduce((message, name) => message.replaceAll(name, '(name)'), said.message)),
  });
  return result.ok
    ? { ...result, warnings: result.warnings.map(printed) }
    : { ...result, problems: result.problems.map(printed) as typeof result.problems };
}

/** What commander makes of the words; null where it says wrong usage, with a reason that is printed. */
async function parse(command: Command, words: readonly string[]): Promise<{ args: readonly unknown[]; flags: object } | null> {
  let found: { args: readonly unknown[]; flags: object } | null = null;
  const noted: Command = {
    ...command,
    run: async (args, flags) => {
      found = { args, flags };
    },
  };
  const program = programOf([noted]);
  let said = '';
  for (const each of withChildren(program))
    each.configureOutput({ writeErr: (line) => (said += line), writeOut: (line) => (said += line) });
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    hold(said.length > 0, () => 'wrong usage without a word');
    return null;
  }
  return found;
}

function withChildren(command: CommandUnknownOpts): readonly CommandUnknownOpts[] {
  return [command, ...command.commands.flatMap(withChildren)];
}
