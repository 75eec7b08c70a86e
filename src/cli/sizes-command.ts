import { type Command, Option } from 'commander';
import { NORM_GROUPS, type NormGroup } from '../hand/norm-groups.ts';
import { addOutputFlags, type OutputFlags } from './flags/output-flags.ts';
import { addHandTableFlags } from './flags/strip-flags.ts';

/** `sizes`: which strip lengths to keep in stock. */
export function addSizesCommand(program: Command): void {
  const command = program
    .command('sizes')
    .description('find the strip lengths to keep in stock that serve most hands with the least cut off')
    .argument('[hands]', 'table of hands (CSV), see: knucklewright schema csv')
    .requiredOption('--count <number>', 'how many sizes')
    .option('--cover <percent>', 'share of the hands that the sizes must serve; the longest beyond it are cut singly', '95')
    .addOption(new Option('--norms <group>', 'draw hands from published means and spreads in place of a table').choices([...NORM_GROUPS]))
    .option('--lengths <file>', 'measured strip lengths in place of a table: text, one length a line, in mm or with a unit')
    .option('--most <number>', 'the table and chart go up to this many sizes (default: twice the count, 12 at least)')
    .option('--step <length>', 'sizes are whole multiples of this', '1')
    .option(
      '--pieces <number>',
      'how many strips to cut in all, shared out by need, for stock-sizes.csv (default: one for each hand of a table, else 60)',
    )
    .option('--hands <number>', 'hands to draw with --norms', '2000')
    .option('--seed <number>', 'seed of that drawing', '1');
  addHandTableFlags(command);
  addOutputFlags(command);
  command.action(async (table: string | undefined, flags: SizesFlags) => {
    const { sizes } = await import('./sizes.ts');
    await sizes(table, flags);
  });
}

/** The flags of `sizes` as commander gives them. */
export interface SizesFlags extends OutputFlags {
  readonly block?: string;
  readonly options?: string;
  readonly units: 'mm' | 'cm' | 'in';
  readonly count: string;
  readonly cover: string;
  readonly norms?: NormGroup;
  readonly lengths?: string;
  readonly most?: string;
  readonly step: string;
  readonly pieces?: string;
  readonly hands: string;
  readonly seed: string;
  /** The model's options are among them under their own names. */
  readonly [option: string]: string | boolean | undefined;
}
