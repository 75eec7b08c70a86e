import type { Command } from 'commander';

/** `inspect`: reads a drawing file back, ours or anybody's. */
export function addInspectCommand(program: Command): void {
  program
    .command('inspect')
    .description(
      'read an SVG, DXF or PDF back: parts, sizes, layers, units, and what a cutter would trip over (exit 3 when there is something)',
    )
    .argument('<file>', 'the file; what it is, is told by its content')
    .option('--json', 'print it as JSON')
    .action(async (file: string, flags: { json?: boolean }) => {
      const { inspect } = await import('./inspect.ts');
      await inspect(file, flags);
    });
}
