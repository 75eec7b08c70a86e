import { success } from '../../units/result.ts';
import { type Command, defineCommand } from '../define-command.ts';
import type { AnyArgument, AnyOption } from '../flags/flag.ts';
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

/** The manual page of section 1 in the man macros (man(7)), from the data of the commands; `version` stands in its foot. */
export function manual(commands: readonly Command[], version: string): string {
  const groups = [...new Set(commands.map(({ group }) => group))];
  return [
    `.TH KNUCKLEWRIGHT 1 "" "knucklewright ${version}"`,
    '.SH NAME',
    'knucklewright \\- flat patterns of relative-motion finger orthoses from a measured hand',
    '.SH SYNOPSIS',
    '.B knucklewright',
    '.I command',
    '[flags]',
    '.SH DESCRIPTION',
    roff('From a measured hand to an exact, full-scale flat pattern. It suggests; the clinician decides. For licensed therapists.'),
    ...groups.flatMap((group) => [
      `.SH ${roff(group.toUpperCase())}`,
      ...commands.filter((command) => command.group === group).flatMap(commandPage),
    ]),
    '.SH EXIT STATUS',
    ...[
      ['0', 'done'],
      ['1', 'a file or an answer is wrong'],
      ['2', 'wrong usage: a flag or its value is wrong'],
      ['3', 'readable, but not makeable, or stopped by the advice'],
    ].flatMap(([code = '', meaning = '']) => ['.TP', `.B ${code}`, meaning]),
    '.SH ENVIRONMENT',
    '.TP',
    '.B KNUCKLEWRIGHT_CLINIC',
    "the clinic's own file, where no \\-\\-clinic names one",
    '',
  ].join('\n');
}

function commandPage({ name, about, args, flags, examples }: Command): readonly string[] {
  return [
    `.SS knucklewright ${roff([name, ...args.map(argumentText)].join(' '))}`,
    roff(`${about}.`),
    ...args.flatMap((arg) => ['.TP', `.I ${roff(arg.name())}`, roff(withChoices(arg.description, arg.argChoices))]),
    ...flags.flatMap((option) => ['.TP', `.B ${roff(option.flags)}`, roff(withChoices(option.description, option.argChoices))]),
    ...(examples.length === 0
      ? []
      : ['.PP', 'Examples:', ...examples.flatMap((words) => ['.RS', '.nf', roff(`knucklewright ${words}`), '.fi', '.RE'])]),
  ];
}

function argumentText(arg: AnyArgument): string {
  const text = `${arg.name()}${arg.variadic ? '...' : ''}`;
  return arg.required ? text : `[${text}]`;
}

function withChoices(about: string, choices: AnyOption['argChoices']): string {
  return choices && choices.length > 0 ? `${about} (${choices.join(', ')})` : about;
}

/** Text that roff takes as it stands: no escape, no request at the beginning of a line, hyphens that can be copied. */
function roff(text: string): string {
  const plain = text.replaceAll('\\', '\\e').replaceAll('-', '\\-').replaceAll(/\s+/g, ' ');
  return /^[.']/.test(plain) ? `\\&${plain}` : plain;
}
