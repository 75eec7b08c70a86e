import { Argument, type Command } from 'commander';

/** `blocks`, `plates` and `schema`: what the program knows and reads. */
export function addLibraryCommands(program: Command): void {
  program
    .command('blocks')
    .description('list the blocks: which digits a strip takes in, and which it raises or lowers')
    .option('--json', 'print them as JSON')
    .action(async (flags: { json?: boolean }) => {
      const { listBlocks } = await import('./list-blocks.ts');
      process.stdout.write(listBlocks(flags.json === true));
    });
  program
    .command('plates')
    .description('list the plates: which faces, digits and MP angles each holds')
    .option('--json', 'print them as JSON')
    .action(async (flags: { json?: boolean }) => {
      const { listPlates } = await import('./list-plates.ts');
      process.stdout.write(listPlates(flags.json === true));
    });
  program
    .command('schema')
    .description('print the JSON Schema of a file that knucklewright reads; for csv, the columns of a table of hands')
    .addArgument(
      new Argument('<kind>', 'which file').choices([
        'hand',
        'block',
        'options',
        'plate',
        'plate-options',
        'cutter',
        'case',
        'visit',
        'csv',
      ]),
    )
    .action(async (kind: string) => {
      if (kind === 'csv') {
        const { handColumnsText } = await import('../hand/hand-columns.ts');
        process.stdout.write(handColumnsText());
        return;
      }
      const { schemaOf } = await import('./schema.ts');
      process.stdout.write(`${JSON.stringify(schemaOf(kind), null, 2)}\n`);
    });
}
