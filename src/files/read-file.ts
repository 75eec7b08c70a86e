import { type FileHandle, open, stat } from 'node:fs/promises';
import { decodeText } from '../units/file-format.ts';
import { LARGEST_JSON_BYTES, parseJsonText } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';

/** The text of a file that a person named, in UTF-8 or UTF-16; one clear problem when it cannot be read or is larger than `limit` bytes. */
export async function readText(path: string, limit: number = LARGEST_JSON_BYTES): Promise<Result<string>> {
  const bytes = await readBytes(path, limit);
  return bytes.ok ? success(decodeText(bytes.value, { keepMark: true })) : bytes;
}

/** The bytes of a file that a person named, under the same conditions. */
export async function readBytes(path: string, limit: number): Promise<Result<Uint8Array>> {
  return opened(path, async (handle) => {
    const { size } = await handle.stat();
    if (size > limit) return problem(path, `is ${size} bytes large; at most ${limit} are read. Is it the right file?`);
    return success(await handle.readFile());
  });
}

/** The first bytes of a file, at most `most`, under the same conditions. */
export async function readHead(path: string, most: number): Promise<Result<Uint8Array>> {
  return opened(path, async (handle) => {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(most), 0, most, 0);
    return success(buffer.subarray(0, bytesRead));
  });
}

/** The parsed JSON of a file; problems name file, line and column. */
export async function readJson(path: string): Promise<Result<unknown>> {
  const text = await readText(path);
  return text.ok ? parseJsonText(text.value, path) : text;
}

/** The only way to a file's content. Opening a pipe that nobody writes to waits for ever, and some devices never end: only files are opened. */
async function opened<T>(path: string, read: (handle: FileHandle) => Promise<Result<T>>): Promise<Result<T>> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) return problem(path, 'is a folder. Check the path.');
    if (!found.isFile())
      return problem(
        path,
        'is a pipe or a device; only files are read. Give it as standard input and write - in place of its name, or save what it gives in a file.',
      );
    const handle = await open(path, 'r');
    try {
      return await read(handle);
    } finally {
      await handle.close();
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    const why: Record<string, string> = {
      ENOENT: 'does not exist',
      ENAMETOOLONG: 'is longer than a file name may be',
      EACCES: 'may not be read',
      EPERM: 'may not be read',
    };
    return problem(path, `${why[code] ?? `cannot be read (${code})`}. Check the path.`);
  }
}

/** Longest file name that a message tells whole; of a longer one, its beginning and its end. */
const LONGEST_NAME = 200;

function shortened(path: string): string {
  return path.length <= LONGEST_NAME ? path : `${path.slice(0, 80)}…${path.slice(-40)}`;
}

function problem(path: string, what: string): Result<never> {
  const name = shortened(path);
  return failure({ code: 'FILE_NOT_READ', where: name, message: `${name} ${what}`, kind: 'input' });
}
