import type { Command } from 'commander';
import { addOutputFlags, type OutputFlags } from './flags/output-flags.ts';
import { addSheetFlags } from './flags/sheet-flags.ts';

/** `redraw` and `print-check`: what is done with a file that was drawn before. */
export function addSheetCommands(program: Command): void {
  const redrawing = program
    .command('redraw')
    .description('draw a pattern again from the inputs that its own SVG, DXF or PDF carries')
    .argument('<file>', 'SVG, DXF or PDF that knucklewright wrote');
  addOutputFlags(redrawing);
  redrawing.action(async (file: string, flags: OutputFlags) => {
    const { redraw } = await import('./redraw.ts');
    await redraw(file, flags);
  });
  const check = program
    .command('print-check')
    .description(
      'judge what the 100 mm bars of a printed sheet measure, and write a PDF that corrects the printer (give --paper, --paper-margin, --pages and --area as for that sheet)',
    )
    .argument('[files...]', 'PDF, SVG or DXF that knucklewright wrote, or hand files: to be written corrected when the printer is off')
    .requiredOption('--across <length>', 'what the bar ACROSS measures on paper, mm')
    .requiredOption('--along <length>', 'what the bar ALONG measures on paper, mm')
    .option('--out <folder>', 'folder for the corrected PDF', '.')
    .option('--force', 'replace files that exist')
    .option('--json', 'print the verdict as JSON');
  addSheetFlags(check);
  check.action(async (files: string[], flags: import('./print-check.ts').PrintCheckFlags) => {
    const { printCheck } = await import('./print-check.ts');
    await printCheck(files, flags);
  });
}
