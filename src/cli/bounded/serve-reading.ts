import { writeSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { readingSeconds } from '../../inspect/drawing.ts';
import type { Answer, Question } from './bounded-reading.ts';
import { MOST_MEGABYTES } from './limits.ts';

/** What can be asked for, each job given the file's path first. */
export type Jobs = Readonly<Record<string, (...given: never[]) => Promise<unknown>>>;

/**
 * Makes of this process the one that reads files which anybody may have made, begun by `BoundedReading`. Its main thread reads; a second one, which
 * runs the same file, watches it from beside, since a thread that is caught in a file looks at no clock.
 * @param file the file that calls this, which is run by both threads
 */
export function serveReading(jobs: Jobs, file: URL, secondsFor: (bytes: number) => number = readingSeconds): void {
  if (isMainThread) serve(jobs, file, secondsFor);
  else watch(workerData as Watched);
}

interface Watched {
  readonly deadline: Deadline;
  /** Id of the process that began this one. */
  readonly parent: number;
}

const WATCHED_EVERY_MS = 50;
/** Where the watch says why it kills; a pipe of the process that began this one. */
const REASONS = 4;

/** [0]: when the file must be read, in milliseconds of this process's processor time; 0 while none is. [1]: tenths of seconds it may take. */
type Deadline = Int32Array;

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function serve(jobs: Jobs, file: URL, secondsFor: (bytes: number) => number): void {
  const deadline: Deadline = new Int32Array(new SharedArrayBuffer(8));
  const watching = new Worker(file, { workerData: { deadline, parent: process.ppid }, execArgv: [] });
  watching.unref();
  const answer = (message: Answer) => process.send?.(message);
  process.on('disconnect', () => process.exit());
  process.on('message', async ({ job, given }: Question) => {
    try {
      const size = await stat(String(given[0])).then(
        (found) => found.size,
        () => 0,
      );
      const seconds = secondsFor(size);
      Atomics.store(deadline, 1, 10 * seconds);
      Atomics.store(deadline, 0, processorMs() + 1000 * seconds);
      const value = await jobs[job]?.(...(given as never[]));
      Atomics.store(deadline, 0, 0);
      answer({ value });
    } catch (error) {
      answer({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    }
  });
}

function watch({ deadline, parent }: Watched): void {
  const stop = (why: string) => {
    writeSync(REASONS, why);
    process.kill(process.pid, 'SIGKILL');
  };
  setInterval(() => {
    const end = Atomics.load(deadline, 0);
    if (end > 0 && processorMs() > end)
      stop(`reading took more than ${(Atomics.load(deadline, 1) / 10).toFixed(1)} seconds of the processor`);
    if (process.memoryUsage.rss() > 1e6 * MOST_MEGABYTES) stop(`it took more than ${MOST_MEGABYTES} MB of memory`);
    // A thread caught in a file does not hear that nobody waits for it any more.
    if (process.ppid !== parent) process.kill(process.pid, 'SIGKILL');
  }, WATCHED_EVERY_MS);
}
