import { readdirSync, readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { type Job, LONGEST_MS, processorMs, type TargetRun } from './job.ts';

/**
 * Has the targets run in a thread of its own, so that a hang is seen from outside and memory has a limit.
 * Usage: node watch.mjs CASES SEED TARGET... Prints one line of JSON a target, and at the end {megabytes}, the most the process held.
 */

/** Wall time after which a case that neither uses a processor nor is kept waiting for one by other programs is stuck. */
const STUCK_MS = 120_000;
/** The thread's heap; the rest of the 512 MB is for the program, buffers and both threads' own. */
const HEAP_MEGABYTES = 320;

const [cases = '200', seed = '1', ...names] = process.argv.slice(2);
const begun = new Int32Array(new SharedArrayBuffer(8));
const job: Job = { names, cases: Number(cases), seed: Number(seed), begun };
const say = (line: object) => process.stdout.write(`${JSON.stringify(line)}\n`);
let reported = 0;

const end = () => {
  say({ megabytes: process.resourceUsage().maxRSS / 1024 });
  process.exit();
};
const broken = (why: string) => {
  const fault: TargetRun = {
    target: names[reported] ?? '',
    cases: 0,
    repeated: 0,
    seconds: 0,
    slowestMs: 0,
    fault: `${why}; cases begun in all: ${begun[0]}`,
  };
  say(fault);
  end();
};
const worker = new Worker(new URL('./run.mjs', import.meta.url), {
  workerData: job,
  resourceLimits: { maxOldGenerationSizeMb: HEAP_MEGABYTES },
});
worker.on('message', (message: TargetRun | 'done') => {
  if (message === 'done') return end();
  say(message);
  reported++;
});
worker.on('error', (error) => broken(String(error)));
worker.on('exit', () => broken('the thread ended by itself'));

/** How long the threads of this process were ready and others had the processor, ms; 0 where the system does not say. */
function keptWaitingMs(): number {
  try {
    const waits = readdirSync('/proc/self/task').map((id) => Number(readFileSync(`/proc/self/task/${id}/schedstat`, 'utf8').split(' ')[1]));
    return waits.reduce((sum, wait) => sum + wait, 0) / 1e6;
  } catch {
    return 0;
  }
}

const now = () => ({ count: Atomics.load(begun, 1), processor: processorMs(), idle: performance.now() - keptWaitingMs() });
const parent = process.ppid;
let seen = now();
setInterval(() => {
  // Whoever began this was ended, and nobody reads on.
  if (process.ppid !== parent) process.exit(1);
  const latest = now();
  if (latest.count !== seen.count) seen = latest;
  // Before the first case the targets are made ready, which is not a case.
  else if (latest.count === 0) return;
  else if (latest.processor - seen.processor > 5 * LONGEST_MS || latest.idle - seen.idle > STUCK_MS) broken('a case hangs');
}, 200);
