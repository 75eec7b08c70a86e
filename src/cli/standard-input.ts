import { once } from 'node:events';
import { createWriteStream, rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { undoWhenStopped } from '../files/stop-cleanly.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';

/** As a person types it for standard input, and for standard output after --out. */
export const DASH = '-';

const PREFIX = 'knucklewright-';
const INPUT = 'standard-input';

/** Whether a file stands for standard input. */
export function isStandardInput(path: string): boolean {
  return basename(path) === INPUT && dirname(path).startsWith(join(tmpdir(), PREFIX));
}

/** A file as the person called it. */
export function spokenPath(path: string): string {
  return isStandardInput(path) ? DASH : path;
}

/** The largest cut list that is read; nothing else may be larger. */
const MOST_BYTES = 100_000_000;

/** Files that stand for the two standard streams while a command runs; both are removed by `close`. */
export class StandardStreams {
  readonly folder: string;
  private readonly release: () => void;

  private constructor(folder: string) {
    this.folder = folder;
    this.release = undoWhenStopped(() => rmSync(folder, { recursive: true, force: true }));
  }

  static async open(): Promise<StandardStreams> {
    return new StandardStreams(await mkdtemp(join(tmpdir(), PREFIX)));
  }

  /** All of standard input as a file. Fails with `STDIN` at a terminal, where nobody pipes anything in, and when there is too much. */
  async input(stream: NodeJS.ReadableStream & { readonly isTTY?: boolean } = process.stdin): Promise<Result<string>> {
    if (stream.isTTY) return failure(problem('nothing is piped in; use it as: some-program | knucklewright ... -, or name a file'));
    const path = join(this.folder, INPUT);
    const file = createWriteStream(path);
    let bytes = 0;
    for await (const chunk of stream) {
      bytes += chunk.length;
      if (bytes > MOST_BYTES) {
        file.destroy();
        return failure(problem(`gives more than ${MOST_BYTES} bytes. Is it the right file?`));
      }
      if (!file.write(chunk)) await once(file, 'drain');
    }
    file.end();
    await once(file, 'finish');
    return success(path);
  }

  /** A text in which the files are called as the person called them. */
  spoken(text: string): string {
    return text.replaceAll(join(this.folder, INPUT), DASH).replaceAll(this.folder, DASH);
  }

  close(): void {
    rmSync(this.folder, { recursive: true, force: true });
    this.release();
  }
}

function problem(why: string): Problem {
  return { code: 'STDIN', where: DASH, message: `standard input (-): ${why}.`, kind: 'input' };
}
