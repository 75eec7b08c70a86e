import { type Command, Option } from 'commander';
import type { DrawFlags } from './draw-command.ts';
import { addLayoutFlags, type LayoutFlags } from './flags/layout-flags.ts';
import { addOutputFlags } from './flags/output-flags.ts';
import { addHandTableFlags } from './flags/strip-flags.ts';

export const BATCH_FILES = ['each', 'sheets', 'none'] as const;

/** `batch`: from a table of hands to a cut list and the patterns. */
export function addBatchCommand(program: Command): void {
  const command = program
    .command('batch')
    .description('make a cut list and the patterns for a table of hands; a rerun goes on where the last one stopped')
    .argument('<hands>', 'table of hands (CSV), see: knucklewright schema csv');
  addHandTableFlags(command, 'auto');
  command
    .option(
      '--plate <plate>',
      'with --block auto: plate for hands that lack both motions, by id (knucklewright plates), dorsal, palmar, or a plate file',
    )
    .addOption(
      new Option('--files <which>', 'patterns to write beside the cut list: one for each hand, all on sheets of plastic, or none')
        .choices([...BATCH_FILES])
        .default('each'),
    )
    .option('--strict', 'write nothing when any row is wrong')
    .option('--date <date>', 'date to print, YYYY-MM-DD; never taken from the clock');
  addLayoutFlags(command);
  addOutputFlags(command);
  command.action(async (table: string, flags: BatchFlags) => {
    const { batch } = await import('./batch.ts');
    await batch(table, flags);
  });
}

/** The flags of `batch` as commander gives them. */
export type BatchFlags = DrawFlags &
  LayoutFlags & {
    readonly units: 'mm' | 'cm' | 'in';
    readonly files: (typeof BATCH_FILES)[number];
    readonly strict?: boolean;
  };
