import { quote } from '../units/quote.ts';
import { failure, type Result, success } from '../units/result.ts';
import { WRITER_FORMATS, type WriterFormat } from '../writers/writer.ts';
import { type CutterPlan, readCutterPlan } from './cutter-plan.ts';
import { flagProblem } from './flags/flag-problem.ts';
import type { OutputFlags } from './flags/output-flags.ts';
import { readSheetSettings } from './flags/sheet-flags.ts';

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
export function readOutputPlan(flags: OutputFlags): Result<OutputPlan> {
  const formats = readFormats(flags.formats);
  const pdf = readSheetSettings(flags);
  const cutting = readCutterPlan(flags);
  if (!formats.ok || !pdf.ok || !cutting.ok) return failure(...[formats, pdf, cutting].flatMap((r) => (r.ok ? [] : r.problems)));
  const folder = flags.out ?? (flags.json ? null : '.');
  const settings = { ...cutting.value.settings, pdf: pdf.value };
  const plan = { folder, formats: formats.value, force: flags.force === true, reports: flags.reports === true, ...cutting.value, settings };
  return success(plan, cutting.warnings);
}

function readFormats(list: string): Result<readonly WriterFormat[]> {
  const asked = [...new Set(list.split(',').map((word) => word.trim().toLowerCase()))].filter((word) => word !== '');
  const unknown = asked.filter((word) => !WRITER_FORMATS.some((f) => f === word));
  if (unknown.length > 0 || asked.length === 0) {
    const what = unknown.length > 0 ? `unknown formats (${unknown.slice(0, 5).map(quote).join(', ')})` : 'no format';
    return failure(flagProblem('--formats', `${quote(list)} names ${what}; the formats are ${WRITER_FORMATS.join(', ')}`));
  }
  return success(WRITER_FORMATS.filter((format) => asked.includes(format)));
}
