import { type Command, Option } from 'commander';
import type { NumberEntry } from '../pattern/option-entries.ts';
import { PLATE_NUMBER_OPTIONS } from '../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { addOutputFlags, type OutputFlags } from './flags/output-flags.ts';
import { confirmsFlag } from './plan-command.ts';

/** `draw`: from a hand file to pattern files. */
export function addDrawCommand(program: Command): void {
  const command = program
    .command('draw')
    .description('draw the strip, or with --plate the plate, for a measured hand, at full scale')
    .argument('<hand>', 'hand file (JSON), see: knucklewright schema hand')
    .option('--block <id>', 'block by id (knucklewright blocks), a block file, or auto: what knucklewright plan puts first', 'auto')
    .addOption(confirmsFlag())
    .option('--plate <name>', 'draw a plate instead: dorsal, palmar or both, a plate by id (knucklewright plates), or a plate file')
    .option('--digits <list>', 'plate: digits whose MP joints are held, neighbours with commas between')
    .option('--angle <degrees>', "plate: MP flexion, 0 to 90; without it the preset's, else the plan's")
    .option(
      '--options <file>',
      'options file (JSON), its keys named as in: knucklewright schema options (or plate-options); flags win over it',
    )
    .option('--date <date>', 'date to print on the pattern, YYYY-MM-DD; never taken from the clock');
  addOutputFlags(command);
  const known = new Set<string>();
  for (const option of NUMBER_OPTIONS) {
    known.add(option.key);
    const plate = PLATE_NUMBER_OPTIONS.find((o) => o.key === option.key);
    const ofPlate = plate ? `; plate: ${plate.low} to ${plate.high} (default: ${plate.default})` : '';
    command.addOption(numberOption(option, `${option.about}, ${option.low} to ${option.high} (default: ${option.default})${ofPlate}`));
  }
  for (const option of PLATE_NUMBER_OPTIONS.filter(({ key }) => !known.has(key))) {
    command.addOption(numberOption(option, `plate: ${option.about}, ${option.low} to ${option.high} (default: ${option.default})`));
  }
  for (const option of CHOICE_OPTIONS) {
    command.addOption(
      new Option(`--${kebab(option.key)} <word>`, `${option.about} (default: ${option.default})`).choices([...option.choices]),
    );
  }
  command.action(async (handFile: string, flags: DrawFlags) => {
    if (flags.plate !== undefined) await (await import('./draw-plate.ts')).drawPlate(handFile, flags);
    else await (await import('./draw.ts')).draw(handFile, flags);
  });
}

/** The flags of `draw` as commander gives them; the model's options are among them under their own names. */
export interface DrawFlags extends OutputFlags {
  readonly block: string;
  readonly plate?: string;
  readonly digits?: string;
  readonly angle?: string;
  readonly options?: string;
  readonly date?: string;
  readonly clinicianConfirms?: boolean;
  readonly [option: string]: string | boolean | undefined;
}

function numberOption({ key, unit }: NumberEntry, about: string): Option {
  return new Option(`--${kebab(key)} <${unit === 'mm' ? 'length' : unit}>`, about);
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
