import { Worker } from 'node:worker_threads';
import { type Job, LONGEST_MS, processorMs, type TargetRun } from './job.ts';

/**
 * Has the targets run in a thread of its own, so that a hang is seen from outside and memory has a limit.
 * Usage: node watch.mjs CASES SEED TARGET... Prints one line of JSON a target, and at the end {megabytes}, the most the process held.
 */

/** Wall time after which a case that uses no processor is stuck. */
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

const now = () => ({ count: Atomics.load(begun, 1), processor: processorMs(), wall: performance.now() });
let seen = now();
setInterval(() => {
  const latest = now();
  if (latest.count !== seen.count) seen = latest;
  // Before the first case the targets are made ready, which is not a case.
  else if (latest.count === 0) return;
  else if (latest.processor - seen.processor > 5 * LONGEST_MS || latest.wall - seen.wall > STUCK_MS) broken('a case hangs');
}, 200);
