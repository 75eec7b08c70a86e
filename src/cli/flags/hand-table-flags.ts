import { LENGTH_UNITS } from '../../units/length.ts';
import { flag, flagSet } from './flag.ts';
import { optionsFileFlag, stripOptionFlags } from './option-flags.ts';

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
