import { readJson } from '../../files/read-file.ts';
import type { ChoiceEntry, NumberEntry } from '../../pattern/option-entries.ts';
import { FLAGS, type OptionSource } from '../../pattern/option-table.ts';
import { PLATE_CHOICE_OPTIONS, PLATE_NUMBER_OPTIONS, type PlateOptions } from '../../pattern/plate/plate-options.ts';
import { readPlateOptions } from '../../pattern/plate/read-plate.ts';
import { readStripOptions } from '../../pattern/strip/read-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS, type StripOptions } from '../../pattern/strip/strip-options.ts';
import { LENGTH_UNITS } from '../../units/length.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import type { WithClinic } from './clinic-flag.ts';
import { type FlagSet, flag, flagSet } from './flag.ts';

export const STRIP_KEYS = [...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((option) => option.key);
export const PLATE_KEYS = [...PLATE_NUMBER_OPTIONS, ...PLATE_CHOICE_OPTIONS].map((option) => option.key);

type StripValues = { readonly [K in keyof StripOptions]?: string };
type PlateValues = { readonly [K in keyof PlateOptions]?: string };

export const optionsFileFlag = flag(
  '--options <file>',
  'options file (JSON), its keys named as in: knucklewright schema options (or plate-options); flags win over it',
);

/** Every option of a strip as a flag. */
const stripOptionFlags: FlagSet<StripValues> = {
  options: [
    ...NUMBER_OPTIONS.map((option) => numberFlag(option, `${option.about}, ${rangeText(option)}`)),
    ...CHOICE_OPTIONS.map(choiceFlag),
  ],
};

/** Every option of a strip and of a plate as a flag; what both have is one flag, and its help says both ranges. */
export const stripAndPlateOptionFlags: FlagSet<StripValues & PlateValues> = {
  options: [
    ...NUMBER_OPTIONS.map((option) => {
      const plate = PLATE_NUMBER_OPTIONS.find(({ key }) => key === option.key);
      return numberFlag(option, `${option.about}, ${rangeText(option)}${plate ? `; plate: ${rangeText(plate)}` : ''}`);
    }),
    ...PLATE_NUMBER_OPTIONS.filter(({ key }) => !STRIP_KEYS.some((known) => known === key)).map((option) =>
      numberFlag(option, `plate: ${option.about}, ${rangeText(option)}`),
    ),
    ...CHOICE_OPTIONS.map(choiceFlag),
    ...PLATE_CHOICE_OPTIONS.map((option) => choiceFlag({ ...option, about: `plate: ${option.about}` })),
  ],
};

function rangeText({ low, high, default: usual }: NumberEntry): string {
  return `${low} to ${high} (default: ${usual})`;
}

function numberFlag({ key, unit }: NumberEntry, about: string) {
  return flag(`--${kebabCase(key)} <${unit === 'mm' ? 'length' : unit}>`, about);
}

function choiceFlag({ key, about, choices, default: usual }: ChoiceEntry) {
  return flag(`--${kebabCase(key)} <word>`, `${about} (default: ${usual})`).choices([...choices]);
}

/** A strip's options: defaults, then the clinic's file, the options file, then the flags; all problems of both at once. */
export function readStripOptionFlags(flags: OptionFlags): Promise<Result<StripOptions>> {
  return readOptionFlags(flags, STRIP_KEYS, [], readStripOptions);
}

/** A plate's options: defaults, then the clinic's file, those of the plate that was named, then the options file, then the flags. */
export function readPlateOptionFlags(flags: OptionFlags, named: readonly OptionSource[]): Promise<Result<PlateOptions>> {
  return readOptionFlags(flags, PLATE_KEYS, named, readPlateOptions);
}

type OptionFlags = { readonly options?: string } & WithClinic;

async function readOptionFlags<Options>(
  flags: OptionFlags,
  keys: readonly string[],
  before: readonly OptionSource[],
  read: (sources: readonly OptionSource[]) => Result<Options>,
): Promise<Result<Options>> {
  const file = flags.options === undefined ? success(null) : await readJson(flags.options);
  const given = Object.entries(flags).filter(([key, value]) => keys.includes(key) && value !== undefined);
  const clinic = flags.fromClinic;
  const options = read([
    ...(clinic ? [{ origin: clinic.path, values: clinic.options }] : []),
    ...before,
    ...(file.ok && flags.options !== undefined ? [{ origin: flags.options, values: file.value }] : []),
    { origin: FLAGS, values: Object.fromEntries(given) },
  ]);
  return file.ok ? options : failure(...file.problems, ...(options.ok ? [] : options.problems));
}

/** A new one each time: `batch` gives it a default, and a flag holds its own. */
export function tableBlockFlag() {
  return flag('--block <id>', 'block by id (knucklewright blocks), a block file, or auto: what each target and its deficits suggest');
}

/** The flags of a command that works through a table of hands: in what units, and every option of a strip. */
export const handTableFlags = flagSet(
  flag('--units <unit>', 'unit of bare numbers in a table without a units column').choices(LENGTH_UNITS).default('mm'),
  optionsFileFlag,
  stripOptionFlags,
);
