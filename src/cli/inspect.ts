import { open } from 'node:fs/promises';
import { LIMITS } from '../inspect/drawing.ts';
import { inspectFile } from '../inspect/inspect-file.ts';
import { failure, type Result, success } from '../units/result.ts';
import { describeInspection } from './describe-inspection.ts';
import { EXIT, fail } from './exit.ts';

/** Runs `inspect`: exit 0 when nothing is found wrong, 3 with findings, 1 when the file cannot be read at all. */
export async function inspect(path: string, flags: { readonly json?: boolean }): Promise<void> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return fail(bytes.problems);
  const found = inspectFile(bytes.value);
  process.stdout.write(flags.json === true ? `${JSON.stringify({ file: path, ...found }, null, 2)}\n` : describeInspection(found, path));
  if (found.findings.some((finding) => finding.code === 101 || finding.code === 102)) process.exitCode = EXIT.badInput;
  else if (found.findings.length > 0) process.exitCode = EXIT.refused;
}

async function readBytes(path: string): Promise<Result<Uint8Array>> {
  const problem = (what: string) =>
    failure<Uint8Array>({ code: 'FILE_NOT_READ', where: path, message: `${path} ${what}. Check the path.`, kind: 'input' as const });
  try {
    const handle = await open(path, 'r');
    try {
      const { size } = await handle.stat();
      // One byte more than allowed is enough to say so.
      if (size > LIMITS.bytes) return problem(`is ${size} bytes large; at most ${LIMITS.bytes} are read`);
      return success(await handle.readFile());
    } finally {
      await handle.close();
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return problem(code === 'ENOENT' ? 'does not exist' : code === 'EISDIR' ? 'is a folder' : `cannot be read (${code})`);
  }
}
