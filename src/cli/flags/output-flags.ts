import { collect, failure, type Result, success } from '../../units/result.ts';
import { WRITER_FORMATS, type WriterFormat } from '../../writers/writer.ts';
import { type CutterPlan, type KeptMachine, readCutterPlan } from '../cutter-plan.ts';
import type { WithClinic } from './clinic-flag.ts';
import { cutterFlags } from './cutter-flags.ts';
import { type FlagsOf, flag, flagProblem, flagSet, readWords } from './flag.ts';
import { readSheetSettings, sheetFlags } from './sheet-flags.ts';

export const forceFlag = flag('--force', 'replace files that exist');
export const jsonFlag = flag('--json', 'print the report as JSON');

/** The flags of every command that writes patterns. */
export const outputFlags = flagSet(
  flag('--out <folder>', 'folder for the files; made if missing (default: this folder; with --json nothing is written without it)'),
  flag('--formats <list>', `formats to write, with commas between: ${WRITER_FORMATS.join(', ')}`).default('svg,dxf'),
  forceFlag,
  flag('--reports', 'read the written files back and put what was found beside them, as NAME_mm.report.txt'),
  jsonFlag,
  sheetFlags,
  cutterFlags,
);
export type OutputFlags = FlagsOf<[typeof outputFlags]>;

/** Where and how a command writes its files. */
export interface OutputPlan extends CutterPlan {
  /** Null: nothing is written, only the report is printed. */
  readonly folder: string | null;
  readonly formats: readonly WriterFormat[];
  readonly force: boolean;
  /** Beside each drawing's files, a report from reading them back. */
  readonly reports: boolean;
}

/** The plan that the flags ask for, with all their problems at once. */
export async function readOutputPlan(
  flags: Partial<OutputFlags> & Pick<OutputFlags, 'formats'> & WithClinic,
  kept: KeptMachine | null = null,
): Promise<Result<OutputPlan>> {
  const read = collect({
    formats: readWords('--formats', flags.formats, WRITER_FORMATS, 'format', 'formats'),
    pdf: readSheetSettings(flags),
    cutting: await readCutterPlan(flags, kept),
  });
  if (!read.ok) return read;
  const { formats, pdf, cutting } = read.value;
  if (flags.content !== undefined && formats.every((format) => format === 'pdf'))
    return failure(flagProblem('--content', 'is about SVG and DXF; a PDF alone has pages: --pages says which'));
  const folder = flags.out ?? (flags.json ? null : '.');
  const settings = { ...cutting.settings, pdf };
  return success({ folder, formats, force: flags.force === true, reports: flags.reports === true, ...cutting, settings }, read.warnings);
}
