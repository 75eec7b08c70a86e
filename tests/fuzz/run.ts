import { parentPort, workerData } from 'node:worker_threads';
import * as fc from 'fast-check';
import type { Job, TargetRun } from './job.ts';
import { LONGEST_MS, processorMs } from './job.ts';
import { hold, unpolluted } from './must-hold.ts';
import { TARGETS } from './targets.ts';

/** Runs the targets of the job, one after the other, and posts what came of each. Runs in a thread, watched by `watch.ts`. */
const TRIES_AGAIN = 3;

const { names, cases, seed, begun } = workerData as Job;
for (const name of names) parentPort?.postMessage(await runTarget(name));
parentPort?.postMessage('done');

async function runTarget(name: string): Promise<TargetRun> {
  const target = TARGETS.find((known) => known.name === name);
  if (!target) throw new Error(`no target ${name}; the targets are ${TARGETS.map((known) => known.name).join(', ')}`);
  const start = performance.now();
  let slowestMs = 0;
  let repeated = 0;
  const fedBombs = new Set<string>();
  /** Processor time of one feeding, ms. */
  const feed = async (recipe: unknown) => {
    Atomics.add(begun, 1, 1);
    const before = processorMs();
    await target.feed(recipe);
    unpolluted();
    return processorMs() - before;
  };
  const property = fc.asyncProperty(target.recipes, async (recipe) => {
    Atomics.add(begun, 0, 1);
    const bomb = bombOf(recipe);
    if (bomb !== null && fedBombs.has(bomb)) {
      repeated++;
      return;
    }
    let took = await feed(recipe);
    // A busy machine only adds, above all to the collection of garbage: what is slow by itself is slow every time.
    for (let again = 0; took > LONGEST_MS && again < TRIES_AGAIN; again++) took = Math.min(took, await feed(recipe));
    slowestMs = Math.max(slowestMs, took);
    hold(took <= LONGEST_MS, () => `a case took ${took.toFixed(0)} ms`);
    if (bomb !== null) fedBombs.add(bomb);
  });
  const details = await fc.check(property, { numRuns: cases, seed });
  const fault = details.failed
    ? `${String(details.errorInstance)}\nrecipe ${JSON.stringify(details.counterexample)?.slice(0, 3000)}\npath ${details.counterexamplePath}`
    : null;
  return { target: name, cases: details.numRuns, repeated, seconds: (performance.now() - start) / 1000, slowestMs, fault };
}

/** The name of a bomb, where the recipe is nothing else: the same text each time, a thousand times as long as others, and so fed once. */
function bombOf(recipe: unknown): string | null {
  const [entry, ...others] = typeof recipe === 'object' && recipe !== null ? Object.entries(recipe) : [];
  return entry && others.length === 0 && /bomb$/i.test(entry[0]) ? `${entry[0]} ${String(entry[1])}` : null;
}
