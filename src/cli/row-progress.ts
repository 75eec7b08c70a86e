import { spokenPath } from './standard-input.ts';

const SHOWN_EVERY_MS = 200;

/** How far a table of hands is read, told on one line of a terminal; nothing where stderr is none. */
export class RowProgress {
  readonly #path: string;
  readonly #terminal: NodeJS.WriteStream | null;
  /** By a clock that nobody sets. */
  #shownAt = Number.NEGATIVE_INFINITY;

  constructor(path: string, terminal: NodeJS.WriteStream = process.stderr) {
    this.#path = spokenPath(path);
    this.#terminal = terminal.isTTY ? terminal : null;
  }

  row(line: number, done: number, wrong: number): void {
    if (this.#terminal === null || performance.now() - this.#shownAt <= SHOWN_EVERY_MS) return;
    this.#shownAt = performance.now();
    this.#terminal.write(`\r${this.#path}: line ${line}, ${done} hands done, ${wrong} rows wrong`);
  }

  end(): void {
    this.#terminal?.write('\n');
  }
}
