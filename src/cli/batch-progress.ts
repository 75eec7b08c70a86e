import { createHash } from 'node:crypto';
import { appendFileSync, createReadStream } from 'node:fs';
import { type FileHandle, mkdir, open } from 'node:fs/promises';
import { join } from 'node:path';
import { undoWhenStopped } from '../files/stop-cleanly.ts';
import type { CutPiece } from '../sheet/plastic/cut-list.ts';

export const PROGRESS_NAME = 'batch-progress.jsonl';
const SCHEMA = 'knucklewright/batch-progress@1';

/** A short name for content: the same for the same content, on every machine. */
export function digestOf(content: unknown): string {
  return createHash('sha256').update(JSON.stringify(content)).digest('base64url').slice(0, 22);
}

interface Place {
  readonly offset: number;
  readonly length: number;
}

/**
 * What a batch has done, kept beside its files so that a rerun goes on: one line for each row that was made, found again by the digest of the row. In
 * memory are only the places of the lines. A line that was cut off in writing is passed over.
 */
export class BatchProgress {
  private readonly handle: FileHandle;
  private readonly places: ReadonlyMap<string, Place>;
  private waiting = '';
  private readonly release: () => void;

  private constructor(path: string, handle: FileHandle, places: ReadonlyMap<string, Place>) {
    this.handle = handle;
    this.places = places;
    // A batch that is stopped knows its last rows too when it is run again.
    this.release = undoWhenStopped(() => appendFileSync(path, this.waiting));
  }

  /** Whether the folder has a batch: `none`, one made with the `same` settings, or with `other` ones. */
  static async state(folder: string, settings: string): Promise<'none' | 'same' | 'other'> {
    const head = await firstLine(join(folder, PROGRESS_NAME));
    if (head === null) return 'none';
    return head === headLine(settings) ? 'same' : 'other';
  }

  /** Opens the progress of a folder to go on with it, or begins a new one. */
  static async open(folder: string, settings: string, resume: boolean): Promise<BatchProgress> {
    await mkdir(folder, { recursive: true });
    const path = join(folder, PROGRESS_NAME);
    const places = resume ? await placesIn(path) : new Map<string, Place>();
    const handle = await open(path, resume ? 'a+' : 'w+');
    try {
      // A cut-off line is closed, so that the next one stands alone.
      await handle.appendFile(resume ? '\n' : `${headLine(settings)}\n`);
    } catch (error) {
      await handle.close();
      throw error;
    }
    return new BatchProgress(path, handle, places);
  }

  async find(digest: string): Promise<CutPiece | null> {
    const place = this.places.get(digest);
    if (!place) return null;
    const { buffer } = await this.handle.read(Buffer.alloc(place.length), 0, place.length, place.offset);
    return (JSON.parse(buffer.toString('utf8')) as { piece: CutPiece }).piece;
  }

  async add(digest: string, piece: CutPiece): Promise<void> {
    this.waiting += `${JSON.stringify({ digest, piece })}\n`;
    if (this.waiting.length > 1 << 16) await this.flush();
  }

  async close(): Promise<void> {
    try {
      await this.flush();
    } finally {
      this.release();
      await this.handle.close();
    }
  }

  private async flush(): Promise<void> {
    const text = this.waiting;
    this.waiting = '';
    if (text !== '') await this.handle.appendFile(text);
  }
}

function headLine(settings: string): string {
  return JSON.stringify({ schema: SCHEMA, settings });
}

async function firstLine(path: string): Promise<string | null> {
  for await (const { text } of linesOf(path)) return text;
  return null;
}

async function placesIn(path: string): Promise<ReadonlyMap<string, Place>> {
  const places = new Map<string, Place>();
  for await (const { text, place } of linesOf(path)) {
    const digest = wholeLine(text);
    if (digest !== null) places.set(digest, place);
  }
  return places;
}

function wholeLine(text: string): string | null {
  try {
    const line = JSON.parse(text) as { digest?: unknown; piece?: unknown };
    return typeof line.digest === 'string' && typeof line.piece === 'object' ? line.digest : null;
  } catch {
    return null;
  }
}

/** Lines with their places in bytes; nothing for a file that is not there. */
async function* linesOf(path: string): AsyncGenerator<{ readonly text: string; readonly place: Place }> {
  let rest = Buffer.alloc(0);
  let offset = 0;
  try {
    for await (const chunk of createReadStream(path)) {
      rest = Buffer.concat([rest, chunk as Buffer]);
      let from = 0;
      for (let end = rest.indexOf(10, from); end >= 0; end = rest.indexOf(10, from)) {
        yield { text: rest.toString('utf8', from, end), place: { offset: offset + from, length: end - from } };
        from = end + 1;
      }
      offset += from;
      rest = rest.subarray(from);
    }
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error;
  }
}
