import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';
import type { RowJob } from './hand-pieces.ts';
import type { MadeRow, RowSetup } from './make-row.ts';

/** Work, in rows of a cut list, after which a table counts as long: a thread costs as much as some thousand rows until it is as fast as the first one. */
const PAYS_AFTER = 4000;
/** Drawing a hand's files is as much work as so many rows of a cut list. */
const ROWS_A_DRAWING = 80;
/** Threads at most, the program's own among them: beyond it the rows are read no faster than they are made. */
const MOST_THREADS = 8;
/** Rows that wait for each thread, so that none stands still. */
const ROWS_AHEAD = 8;

/** What a thread is asked, and what it answers. */
export interface RowQuestion {
  readonly id: number;
  readonly job: RowJob | CutPiece;
}
export interface RowAnswer {
  readonly id: number;
  readonly made: MadeRow;
}

interface Waiting {
  readonly done: (made: MadeRow) => void;
  readonly failed: (error: Error) => void;
}

/** What makes rows in threads: the file that one runs, and after how much work; null: all rows are made in the program's own thread. */
let program: { readonly file: URL; readonly paysAfter: number } | null = null;

/** From now on long tables are made by several threads, which run this file; with null, as in tests, by one. */
export function makeRowsInThreads(file: URL | null, paysAfter = PAYS_AFTER): void {
  program = file && { file, paysAfter };
}

/**
 * Makes the rows of a table: in this thread, and where the table has turned out long and the machine has several processors, in others beside it. A thread that
 * ends by a fault ends the run. To be closed when all is made.
 */
export class RowCrew {
  readonly #setup: RowSetup;
  readonly #threads: { readonly worker: Worker; readonly waiting: Map<number, Waiting> }[] = [];
  #begun = 0;
  #fault: Error | null = null;

  constructor(setup: RowSetup) {
    this.#setup = setup;
  }

  /** Rows that may be begun before the first of them is made. */
  get room(): number {
    return this.#threads.length === 0 ? 1 : (this.#threads.length + 1) * ROWS_AHEAD;
  }

  /** Lets what other threads have made come in; to be asked after each row, since a row that this thread makes keeps it busy. */
  async hear(): Promise<void> {
    if (this.#threads.length > 0) await setImmediate();
  }

  async make(job: RowJob | CutPiece): Promise<MadeRow> {
    if (this.#fault) throw this.#fault;
    const id = this.#begun++;
    const work = id * (this.#setup.drawing ? ROWS_A_DRAWING : 1);
    if (program && this.#threads.length === 0 && work >= program.paysAfter && availableParallelism() > 1) this.#begin(program.file);
    const idle = this.#threads.find(({ waiting }) => waiting.size < ROWS_AHEAD);
    if (!idle) {
      const { makeRow } = await import('./make-row.ts');
      return makeRow(job, this.#setup);
    }
    return new Promise((done, failed) => {
      idle.waiting.set(id, { done, failed });
      const question: RowQuestion = { id, job };
      idle.worker.postMessage(question);
    });
  }

  async close(): Promise<void> {
    await Promise.all(this.#threads.splice(0).map(({ worker }) => worker.terminate()));
  }

  #begin(file: URL): void {
    for (let k = 1; k < Math.min(MOST_THREADS, availableParallelism()); k++) {
      // Options for Node are meant for the program that was called, not for its threads.
      const worker = new Worker(file, { workerData: this.#setup, execArgv: [] });
      const waiting = new Map<number, Waiting>();
      const fail = (error: Error) => {
        this.#fault ??= error;
        for (const { failed } of waiting.values()) failed(error);
        waiting.clear();
      };
      worker.on('message', ({ id, made }: RowAnswer) => {
        waiting.get(id)?.done(made);
        waiting.delete(id);
      });
      worker.on('error', fail).on('messageerror', fail);
      worker.on('exit', (code) => fail(new Error(`a thread that makes rows ended with ${code}`)));
      this.#threads.push({ worker, waiting });
    }
  }
}
