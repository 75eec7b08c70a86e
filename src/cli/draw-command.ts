import { type Command, Option } from 'commander';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { addOutputFlags, type OutputFlags } from './output-flags.ts';
import { confirmsFlag } from './plan-command.ts';

/** `draw`: from a hand file to pattern files. */
export function addDrawCommand(program: Command): void {
  const command = program
    .command('draw')
    .description('draw the strip for a measured hand, at full scale')
    .argument('<hand>', 'hand file (JSON), see: knucklewright schema hand')
    .option('--block <id>', 'block by id (knucklewright blocks), a block file, or auto: what knucklewright plan puts first', 'auto')
    .addOption(confirmsFlag())
    .option('--options <file>', 'options file (JSON), its keys named as in: knucklewright schema options; flags win over it')
    .option('--date <date>', 'date to print on the pattern, YYYY-MM-DD; never taken from the clock');
  addOutputFlags(command);
  for (const option of NUMBER_OPTIONS) {
    const unit = option.unit === 'mm' ? 'length' : option.unit;
    command.addOption(
      new Option(`--${kebab(option.key)} <${unit}>`, `${option.about}, ${option.low} to ${option.high} (default: ${option.byDefault})`),
    );
  }
  for (const option of CHOICE_OPTIONS) {
    command.addOption(
      new Option(`--${kebab(option.key)} <word>`, `${option.about} (default: ${option.byDefault})`).choices([...option.choices]),
    );
  }
  command.action(async (handFile: string, flags: DrawFlags) => {
    const { draw } = await import('./draw.ts');
    await draw(handFile, flags);
  });
}

/** The flags of `draw` as commander gives them; the model's options are among them under their own names. */
export interface DrawFlags extends OutputFlags {
  readonly block: string;
  readonly options?: string;
  readonly date?: string;
  readonly clinicianConfirms?: boolean;
  readonly [option: string]: string | boolean | undefined;
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
