import { randomBytes } from 'node:crypto';
import { type FileHandle, mkdir, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';

const BUFFER = 1 << 16;

/** A file that grows line by line under another name and gets its own name only when it is whole. */
export class StreamedFile {
  readonly path: string;
  private readonly temporary: string;
  private readonly handle: FileHandle;
  private waiting = '';

  private constructor(path: string, temporary: string, handle: FileHandle) {
    this.path = path;
    this.temporary = temporary;
    this.handle = handle;
  }

  static async create(folder: string, name: string): Promise<StreamedFile> {
    await mkdir(folder, { recursive: true });
    const temporary = join(folder, `.${name}.${randomBytes(6).toString('hex')}.tmp`);
    return new StreamedFile(join(folder, name), temporary, await open(temporary, 'wx'));
  }

  async write(text: string): Promise<void> {
    this.waiting += text;
    if (this.waiting.length >= BUFFER) await this.flush();
  }

  /** Puts the whole file in its place. */
  async finish(): Promise<void> {
    await this.flush();
    await this.handle.sync();
    await this.handle.close();
    await rename(this.temporary, this.path);
  }

  /** Leaves nothing behind. */
  async abandon(): Promise<void> {
    await this.handle.close().catch(() => {});
    await rm(this.temporary, { force: true });
  }

  private async flush(): Promise<void> {
    if (this.waiting !== '') await this.handle.appendFile(this.waiting);
    this.waiting = '';
  }
}
