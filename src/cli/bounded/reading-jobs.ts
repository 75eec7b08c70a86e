import type { Inspection, InspectSettings } from '../../inspect/inspection.ts';
import type { PatternRequest } from '../../pattern/make-pattern.ts';
import type { CutList } from '../../sheet/plastic/read-cut-list.ts';
import type { Result } from '../../units/result.ts';

/**
 * What is read of files that anybody may have made, each job given the file's path first. What a job gives back is data: it may come from another
 * process. Each loads what it needs when it is asked for.
 */
export const READING_JOBS = {
  inspect: async (path: string, settings: InspectSettings): Promise<Result<Inspection>> => {
    const { inspectNamedFile } = await import('../inspect-named-file.ts');
    return inspectNamedFile(path, settings);
  },
  ownDrawing: async (path: string): Promise<Result<{ readonly request: PatternRequest; readonly inputs: unknown }>> => {
    const { readOwnDrawing } = await import('../../files/file-inputs.ts');
    return readOwnDrawing(path);
  },
  drawingOrHand: async (path: string): Promise<Result<PatternRequest>> => {
    const { requestFromDrawingOrHand } = await import('../../files/file-inputs.ts');
    return requestFromDrawingOrHand(path);
  },
  cutList: async (path: string): Promise<Result<CutList>> => {
    const { readCutListFile } = await import('../read-cut-list-file.ts');
    return readCutListFile(path);
  },
} as const;

export type ReadingJobs = typeof READING_JOBS;
export type ReadingJob = keyof ReadingJobs;
