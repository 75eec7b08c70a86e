import { parentPort, workerData } from 'node:worker_threads';
import { makeRow, type RowSetup } from './make-row.ts';
import type { RowAnswer, RowQuestion } from './row-crew.ts';

/** A thread of `RowCrew`: makes the rows that it is given, one after the other. */
parentPort?.on('message', async ({ id, job }: RowQuestion) => {
  const answer: RowAnswer = { id, made: await makeRow(job, workerData as RowSetup) };
  parentPort?.postMessage(answer);
});
