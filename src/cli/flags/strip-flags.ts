import { type Command, Option } from 'commander';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { LENGTH_UNITS } from '../../units/length.ts';

/** The flags of a command that works through a table of hands: which block, in what units, and every option of a strip. */
export function addHandTableFlags(command: Command, blockDefault?: string): void {
  command
    .option(
      '--block <id>',
      'block by id (knucklewright blocks), a block file, or auto: what each target and its deficits suggest',
      blockDefault,
    )
    .addOption(
      new Option('--units <unit>', 'unit of bare numbers in a table without a units column').choices([...LENGTH_UNITS]).default('mm'),
    )
    .option('--options <file>', 'options file (JSON), its keys named as in: knucklewright schema options; flags win over it');
  for (const option of NUMBER_OPTIONS) {
    const unit = option.unit === 'mm' ? 'length' : option.unit;
    command.addOption(
      new Option(`--${kebab(option.key)} <${unit}>`, `${option.about}, ${option.low} to ${option.high} (default: ${option.default})`),
    );
  }
  for (const option of CHOICE_OPTIONS)
    command.addOption(
      new Option(`--${kebab(option.key)} <word>`, `${option.about} (default: ${option.default})`).choices([...option.choices]),
    );
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
