import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { clearLeftovers, Draft } from './draft.ts';

const BUFFER = 1 << 16;

/** A file that grows line by line under another name and gets its own name only when it is whole. */
export class StreamedFile {
  private readonly draft: Draft;
  private waiting = '';

  private constructor(draft: Draft) {
    this.draft = draft;
  }

  static async create(folder: string, name: string): Promise<StreamedFile> {
    await mkdir(folder, { recursive: true });
    await clearLeftovers(folder);
    return new StreamedFile(await Draft.open(join(folder, name)));
  }

  async write(text: string): Promise<void> {
    this.waiting += text;
    if (this.waiting.length >= BUFFER) await this.flush();
  }

  /** Puts the whole file in its place. */
  async finish(): Promise<void> {
    await this.flush();
    await this.draft.finish();
    await this.draft.replace();
  }

  /** Leaves nothing behind. */
  async abandon(): Promise<void> {
    await this.draft.discard();
  }

  private async flush(): Promise<void> {
    if (this.waiting !== '') await this.draft.write(this.waiting);
    this.waiting = '';
  }
}
