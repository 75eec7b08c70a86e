import type { Command } from 'commander';
import { WRITER_FORMATS } from '../../writers/writer.ts';
import { addCutterFlags, type CutterFlags } from './cutter-flags.ts';
import { addSheetFlags, type SheetFlags } from './sheet-flags.ts';

/** The flags that every command that writes patterns has, as commander gives them. */
export interface OutputFlags extends SheetFlags, CutterFlags {
  readonly out?: string;
  readonly formats: string;
  readonly force?: boolean;
  readonly json?: boolean;
  readonly reports?: boolean;
}

export function addOutputFlags(command: Command): void {
  command
    .option('--out <folder>', 'folder for the files; made if missing (default: this folder; with --json nothing is written without it)')
    .option('--formats <list>', `formats to write, with commas between: ${WRITER_FORMATS.join(', ')}`, 'svg,dxf')
    .option('--force', 'replace files that exist')
    .option('--reports', 'read the written files back and put what was found beside them, as NAME_mm.report.txt')
    .option('--json', 'print the report as JSON');
  addSheetFlags(command);
  addCutterFlags(command);
}
