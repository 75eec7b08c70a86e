import { basename, dirname } from 'node:path';
import { loadCase } from '../files/case-store.ts';
import { checkWritable, saveFiles } from '../files/save-file.ts';
import { caseReport } from '../record/case-report.ts';
import { DEFAULT_MARGIN, readMargin, readPaper } from '../sheet/paper/paper.ts';
import { layOutReport } from '../sheet/paper/report-pages.ts';
import { DEFAULT_SHEET_SETTINGS } from '../sheet/paper/sheet-settings.ts';
import { failure, success } from '../units/result.ts';
import { writeSheet } from '../writers/pdf/pdf.ts';
import { helveticaWidth } from '../writers/pdf/pdf-document.ts';
import { caseChartFile } from './case-chart.ts';
import { fail, warn } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';

/** The flags of `case report` as commander gives them. */
export interface CaseReportFlags {
  readonly out: string;
  readonly paper?: string;
  readonly paperMargin?: string;
  readonly force?: boolean;
}

/** Runs `case report`: the whole case as PDF; for a name in .svg its chart alone, as `case chart` does. */
export async function caseReportFile(path: string, flags: CaseReportFlags): Promise<void> {
  const { out, force = false } = flags;
  const settings = readSettings(flags);
  const ending = /\.(pdf|svg)$/i.exec(out)?.[1]?.toLowerCase();
  const named = ending ? success(null) : failure(flagProblem('--out', `"${out}" must end in .pdf, or in .svg for the chart alone`));
  if (!settings.ok || !named.ok) return fail([settings, named].flatMap((r) => (r.ok ? [] : r.problems)));
  if (ending === 'svg') return caseChartFile(path, { out, force });
  const place = await checkWritable(dirname(out), [basename(out)], { force });
  if (!place.ok) return fail(place.problems);
  const record = await loadCase(path);
  if (!record.ok) return fail(record.problems);
  const report = caseReport(record.value);
  if (!report.ok) return fail(report.problems);
  const sheet = layOutReport(report.value, settings.value, helveticaWidth);
  if (!sheet.ok) return fail(sheet.problems);
  // The day of the last visit: the clock is never read, so that the same case gives the same bytes.
  const date = new Date(`${record.value.visits.at(-1)?.date}T00:00:00Z`);
  const bytes = writeSheet(sheet.value, date, null);
  if (!bytes.ok) return fail(bytes.problems);
  const saved = await saveFiles(dirname(out), [{ name: basename(out), content: bytes.value }], { force });
  if (!saved.ok) return fail(saved.problems);
  warn(record.warnings);
  const count = sheet.value.pages.length;
  process.stdout.write(`${saved.value[0]?.path}   ${count} page${count === 1 ? '' : 's'}, ${settings.value.paper.name}\n`);
}

function readSettings(flags: CaseReportFlags) {
  const margin = flags.paperMargin === undefined ? success(DEFAULT_MARGIN) : readMargin(flags.paperMargin);
  const paper = readPaper(flags.paper ?? 'a4', margin.ok ? margin.value : DEFAULT_MARGIN);
  if (!margin.ok || !paper.ok) return failure<never>(...[margin, paper].flatMap((r) => (r.ok ? [] : r.problems)));
  return success({ paper: paper.value, margin: margin.value, area: DEFAULT_SHEET_SETTINGS.area });
}
