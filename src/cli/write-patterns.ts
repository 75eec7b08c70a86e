import { checkWritable, type OutputFile, outputFileName, saveFiles } from '../files/save-file.ts';
import type { PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { plain } from '../units/number.ts';
import { type Result, success, type Warning } from '../units/result.ts';
import { loadWriter } from '../writers/load-writer.ts';
import type { WriterFormat } from '../writers/writer.ts';
import { readyForCutter } from './cutter-plan.ts';
import type { OutputPlan } from './flags/output-flags.ts';

/** Ending of the report that stands beside the files of one drawing (output rule 14). */
const REPORT_ENDING = 'report.txt';

/** A file that was written, with the true size of its drawing in mm. */
export interface WrittenFile {
  readonly path: string;
  readonly format: WriterFormat;
  readonly bytes: number;
  readonly width: number;
  readonly height: number;
  /** Pages and paper of a PDF. */
  readonly about?: string;
}

/** A pattern with the beginning of its files' names. */
export interface NamedPattern {
  readonly stem: string;
  readonly pattern: Pattern;
}

const PDF_WITHOUT_KERF: Warning = {
  code: 'PDF_WITHOUT_KERF',
  where: '--kerf',
  message: 'the PDF shows the true edges, to be drawn round on paper; the kerf is in the SVG and DXF only',
  next: 'give the machine the SVG or DXF',
};

function kerfInside(kerf: number): Warning {
  return {
    code: 'KERF_IN_OUTLINES',
    where: '--kerf',
    message: `the outlines in the SVG and DXF are ${plain(kerf / 2, 3)} mm larger all round, holes as much smaller, for a kerf of ${plain(kerf, 3)} mm`,
    value: kerf,
    next: 'set no kerf at the machine, or it is taken off twice',
  };
}

/** The beginning of the names of a request's files: the case code and what is made. */
export function stemOf(request: PatternRequest): string {
  return `${request.hand.code}-${request.kind === 'strip' ? request.block.id : request.plate.id}`;
}

/** Whether the plan's files can be written; to be asked before anything is computed. */
export async function checkOutput(plan: OutputPlan, stems: readonly string[]): Promise<Result<unknown>> {
  if (plan.folder === null) return success(null);
  const endings = [...plan.formats, ...(plan.reports ? [REPORT_ENDING] : [])];
  const names = stems.flatMap((stem) => endings.map((ending) => outputFileName(stem, ending)));
  return checkWritable(plan.folder, names, { force: plan.force });
}

/**
 * Makes every pattern ready for the plan's machine and writes it in every format of the plan, all files together or none; an empty list when
 * the plan writes nothing.
 */
export async function writePatterns(patterns: readonly NamedPattern[], plan: OutputPlan): Promise<Result<readonly WrittenFile[]>> {
  if (plan.folder === null) return success([]);
  const outputs: (OutputFile & Omit<WrittenFile, 'path' | 'bytes'>)[] = [];
  const reports: OutputFile[] = [];
  const warnings: Warning[] = [];
  const kerf = plan.cutter?.profile.kerf ?? 0;
  const cuts = patterns.some(({ pattern }) => pattern.parts.length > 0);
  if (kerf > 0 && cuts && plan.formats.some((format) => format !== 'pdf')) warnings.push(kerfInside(kerf));
  for (const { stem, pattern: drawn } of patterns) {
    const ready = readyForCutter(drawn, plan);
    if (!ready.ok) return ready;
    warnings.push(...ready.warnings);
    const pattern = ready.value;
    if (plan.formats.includes('pdf') && kerf > 0 && drawn.parts.length > 0) warnings.push(PDF_WITHOUT_KERF);
    const own: OutputFile[] = [];
    const { minX, minY, maxX, maxY } = pattern.extents;
    for (const format of plan.formats) {
      const writer = await loadWriter(format, plan.settings);
      // Paper is drawn round by hand, so it always shows the true edges.
      const shown = format === 'pdf' ? drawn : pattern;
      const written = writer.write(shown);
      if (!written.ok) return written;
      warnings.push(...written.warnings);
      const about = writer.describe?.(shown);
      const name = outputFileName(stem, writer.extension);
      outputs.push({ name, content: written.value, format, width: maxX - minX, height: maxY - minY, ...(about ? { about } : {}) });
      own.push({ name, content: written.value });
    }
    if (plan.reports) reports.push({ name: outputFileName(stem, REPORT_ENDING), content: await readBack(own) });
  }
  const saved = await saveFiles(plan.folder, [...outputs, ...reports], { force: plan.force });
  if (!saved.ok) return saved;
  const files = outputs.flatMap(({ name, format, width, height, about }) => {
    const file = saved.value.find((s) => s.name === name);
    return file ? [{ path: file.path, format, bytes: file.bytes, width, height, ...(about ? { about } : {}) }] : [];
  });
  return success(files, warnings);
}

/** What the reader finds in the files as they will be saved, one after the other. */
async function readBack(files: readonly OutputFile[]): Promise<string> {
  const { inspectFile } = await import('../inspect/inspect-file.ts');
  const { describeInspection } = await import('./describe-inspection.ts');
  const bytes = (content: string | Uint8Array) => (typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
  return files.map(({ name, content }) => describeInspection(inspectFile(bytes(content)), name)).join('\n');
}
