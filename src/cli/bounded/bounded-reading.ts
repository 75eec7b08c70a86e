import type { ChildProcess } from 'node:child_process';
import { MOST_HEAP_MEGABYTES, MOST_MEGABYTES } from './limits.ts';
import { READING_JOBS, type ReadingJob, type ReadingJobs } from './reading-jobs.ts';

/** What came of reading: what the job gives, or why it was stopped, as the end of a sentence. */
export type Reading<Job extends ReadingJob> =
  | { readonly stopped: null; readonly value: Awaited<ReturnType<ReadingJobs[Job]>> }
  | { readonly stopped: string };

/** What the reading process is asked, and what it answers. */
export interface Question {
  readonly job: ReadingJob;
  readonly given: readonly unknown[];
}
export type Answer = { readonly value: unknown } | { readonly fault: string };

let program: URL | null = null;

/** From now on files are read in a process of their own, which runs this file. Without it or with null, as in tests, they are read in this one. */
export function readInProcess(file: URL | null): void {
  program = file;
}

/**
 * Reads files within a budget that no file can get around: a process of its own with little memory, which is killed when it takes more of that
 * or of the processor than the file's size allows. The same process reads file after file; after a kill a new one is begun.
 * To be closed when all is read.
 */
export class BoundedReading {
  #child: ChildProcess | null = null;

  async read<Job extends ReadingJob>(job: Job, ...given: Parameters<ReadingJobs[Job]>): Promise<Reading<Job>> {
    if (program === null) {
      const run = READING_JOBS[job] as (...args: readonly unknown[]) => ReturnType<ReadingJobs[Job]>;
      return { stopped: null, value: await run(...given) };
    }
    const { fork } = await import('node:child_process');
    this.#child ??= begun(program, fork);
    const answer = await this.#ask(this.#child, { job, given });
    if ('stopped' in answer) return answer;
    if ('fault' in answer) throw Object.assign(new Error('reading a file'), { stack: answer.fault });
    return { stopped: null, value: answer.value as Awaited<ReturnType<ReadingJobs[Job]>> };
  }

  #ask(child: ChildProcess, question: Question): Promise<Answer | { readonly stopped: string }> {
    return new Promise((done) => {
      let said = '';
      const reasons = child.stdio[4];
      const hear = (text: Buffer) => {
        said += text.toString();
      };
      const answered = (answer: unknown) => {
        reasons?.off('data', hear);
        child.off('close', ended).off('error', failed).off('message', answered);
        done(answer as Answer);
      };
      const ended = (_: number | null, signal: string | null) => {
        this.#child = null;
        done({ stopped: said === '' ? whyEnded(signal) : said });
      };
      const failed = (error: Error) => {
        this.#child = null;
        done({ stopped: `the process that reads files cannot be begun (${error.message})` });
      };
      reasons?.on('data', hear);
      child.on('message', answered).on('close', ended).on('error', failed);
      child.send(question, (error) => {
        // A process that has ended meanwhile says so itself.
        if (error && child.exitCode === null && child.signalCode === null && child.connected) failed(error);
      });
    });
  }

  close(): void {
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }
}

function begun(file: URL, fork: typeof import('node:child_process').fork): ChildProcess {
  // Options for Node are meant for the program that was called, not for its reader.
  const { NODE_OPTIONS: _, ...env } = process.env;
  return fork(file, {
    execArgv: [`--max-old-space-size=${MOST_HEAP_MEGABYTES}`],
    serialization: 'advanced',
    env,
    // The last is where the watch says why it kills.
    stdio: ['ignore', 'ignore', 'ignore', 'ipc', 'pipe'],
  });
}

/** V8 aborts when its heap is full; a system short of memory kills. */
function whyEnded(signal: string | null): string {
  if (signal === null || signal === 'SIGABRT' || signal === 'SIGKILL' || signal === 'SIGTRAP')
    return `it took more memory than there is for it (${MOST_MEGABYTES} MB)`;
  return `the process that read it ended by ${signal}`;
}
