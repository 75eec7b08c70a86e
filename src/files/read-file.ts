import { open, stat } from 'node:fs/promises';
import { LARGEST_JSON_BYTES, parseJsonText } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';

/** The text of a file that a person named; one clear problem when it cannot be read or is larger than `limit` bytes. */
export async function readText(path: string, limit: number = LARGEST_JSON_BYTES): Promise<Result<string>> {
  const bytes = await readBytes(path, limit);
  return bytes.ok ? success(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes.value)) : bytes;
}

/** The bytes of a file that a person named, under the same conditions. */
export async function readBytes(path: string, limit: number): Promise<Result<Uint8Array>> {
  try {
    // Opening a pipe that nobody writes to waits for ever, and some devices never end.
    const found = await stat(path);
    if (!found.isFile()) return problem(path, found.isDirectory() ? 'is a folder' : 'is a pipe or a device; only files are read');
    const handle = await open(path, 'r');
    try {
      const { size } = await handle.stat();
      if (size > limit) return problem(path, `is ${size} bytes large; at most ${limit} are read`);
      return success(await handle.readFile());
    } finally {
      await handle.close();
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    const why: Record<string, string> = { ENOENT: 'does not exist', EACCES: 'may not be read' };
    return problem(path, why[code] ?? `cannot be read (${code})`);
  }
}

/** The first bytes of a file, at most `most`; null when it is no file or cannot be read. */
export async function readHead(path: string, most: number): Promise<Uint8Array | null> {
  try {
    if (!(await stat(path)).isFile()) return null;
    const handle = await open(path, 'r');
    try {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(most), 0, most, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await handle.close();
    }
  } catch {
    // What cannot be read is not judged.
    return null;
  }
}

/** The parsed JSON of a file; problems name file, line and column. */
export async function readJson(path: string): Promise<Result<unknown>> {
  const text = await readText(path);
  return text.ok ? parseJsonText(text.value, path) : text;
}

function problem(path: string, what: string): Result<never> {
  return failure({ code: 'FILE_NOT_READ', where: path, message: `${path} ${what}. Check the path.`, kind: 'input' });
}
