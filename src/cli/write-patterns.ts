import type { Pattern } from '../pattern/pattern.ts';
import { type Result, success, type Warning } from '../units/result.ts';
import { loadWriter } from '../writers/load-writer.ts';
import { checkWritable, type OutputFile, outputFileName, saveFiles } from '../writers/save-file.ts';
import type { WriterFormat } from '../writers/writer.ts';
import type { OutputPlan } from './output-flags.ts';

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

/** Whether the plan's files can be written; to be asked before anything is computed. */
export async function checkOutput(plan: OutputPlan, stems: readonly string[]): Promise<Result<unknown>> {
  if (plan.folder === null) return success(null);
  const names = stems.flatMap((stem) => plan.formats.map((format) => outputFileName(stem, format)));
  return checkWritable(plan.folder, names, { force: plan.force });
}

/** Writes every pattern in every format of the plan, all files together or none; an empty list when the plan writes nothing. */
export async function writePatterns(patterns: readonly NamedPattern[], plan: OutputPlan): Promise<Result<readonly WrittenFile[]>> {
  if (plan.folder === null) return success([]);
  const warnings: Warning[] = [];
  const outputs: (OutputFile & Omit<WrittenFile, 'path' | 'bytes'>)[] = [];
  for (const { stem, pattern } of patterns) {
    const { minX, minY, maxX, maxY } = pattern.extents;
    for (const format of plan.formats) {
      const writer = await loadWriter(format, plan.settings);
      const written = writer.write(pattern);
      if (!written.ok) return written;
      warnings.push(...written.warnings);
      const about = writer.describe?.(pattern);
      const name = outputFileName(stem, writer.extension);
      outputs.push({ name, content: written.value, format, width: maxX - minX, height: maxY - minY, ...(about ? { about } : {}) });
    }
  }
  const saved = await saveFiles(plan.folder, outputs, { force: plan.force });
  if (!saved.ok) return saved;
  const files = outputs.flatMap(({ name, format, width, height, about }) => {
    const file = saved.value.find((s) => s.name === name);
    return file ? [{ path: file.path, format, bytes: file.bytes, width, height, ...(about ? { about } : {}) }] : [];
  });
  return success(files, warnings);
}
