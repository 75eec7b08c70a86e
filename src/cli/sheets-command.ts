import type { Command } from 'commander';
import { addLayoutFlags, type LayoutFlags } from './flags/layout-flags.ts';
import { addOutputFlags, type OutputFlags } from './flags/output-flags.ts';

/** `sheets`: from a cut list to laid-out sheets of plastic. */
export function addSheetsCommand(program: Command): void {
  const command = program
    .command('sheets')
    .description(
      'lay the pieces of a cut list out on sheets of plastic, so that they can be cut with shears, and say how many sheets are needed at least',
    )
    .argument('[cut-list]', 'cut list (JSON or CSV) of batch or sizes, or any CSV with the columns length and width in mm')
    .option('--sizes <list>', 'pieces typed here in place of a cut list: length x width : how many, as 168x20:8,176x20:10')
    .option('--date <date>', 'date to print, YYYY-MM-DD; never taken from the clock');
  addLayoutFlags(command);
  addOutputFlags(command);
  command.action(async (list: string | undefined, flags: SheetsFlags) => {
    const { sheets } = await import('./sheets.ts');
    await sheets(list, flags);
  });
}

/** The flags of `sheets` as commander gives them. */
export interface SheetsFlags extends LayoutFlags, OutputFlags {
  readonly sizes?: string;
  readonly date?: string;
}
