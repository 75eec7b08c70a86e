import { failure, type Result } from '../../units/result.ts';
import { BoundedReading, type Reading } from './bounded-reading.ts';
import type { ReadingJob, ReadingJobs } from './reading-jobs.ts';

/** What a job gives that is a result. */
type ValueOf<Job extends ReadingJob> = Awaited<ReturnType<ReadingJobs[Job]>> extends Result<infer Value> ? Value : never;

/** The result of reading each file, one after the other; `READING_LIMIT` for one whose reading was stopped. */
export async function resultsOf<Job extends ReadingJob>(job: Job, paths: readonly string[]): Promise<readonly Result<ValueOf<Job>>[]> {
  const reading = new BoundedReading();
  try {
    const results: Result<ValueOf<Job>>[] = [];
    for (const path of paths) {
      const read: Reading<ReadingJob> = await reading.read(job, ...([path] as unknown as Parameters<ReadingJobs[Job]>));
      results.push((read.stopped === null ? read.value : stopped(path, read.stopped)) as Result<ValueOf<Job>>);
    }
    return results;
  } finally {
    reading.close();
  }
}

/** The same for one file. */
export async function resultOf<Job extends ReadingJob>(job: Job, path: string): Promise<Result<ValueOf<Job>>> {
  const [only] = await resultsOf(job, [path]);
  return only as Result<ValueOf<Job>>;
}

function stopped(path: string, why: string): Result<never> {
  const message = `${path}: stopped reading: ${why}. Is it the right file?`;
  return failure({ code: 'READING_LIMIT', where: path, message, kind: 'input' });
}
