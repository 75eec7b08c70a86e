import { readBytes } from '../files/read-file.ts';
import { LIMITS } from '../inspect/drawing.ts';
import { inspectFile } from '../inspect/inspect-file.ts';
import { describeInspection } from './describe-inspection.ts';
import { EXIT, fail } from './exit.ts';

/** Runs `inspect`: exit 0 when nothing is found wrong, 3 with findings, 1 when the file cannot be read at all. */
export async function inspect(path: string, flags: { readonly json?: boolean }): Promise<void> {
  const bytes = await readBytes(path, LIMITS.bytes);
  if (!bytes.ok) return fail(bytes.problems);
  const found = inspectFile(bytes.value);
  process.stdout.write(flags.json === true ? `${JSON.stringify({ file: path, ...found }, null, 2)}\n` : describeInspection(found, path));
  if (found.findings.some((finding) => finding.code === 101 || finding.code === 102)) process.exitCode = EXIT.badInput;
  else if (found.findings.length > 0) process.exitCode = EXIT.refused;
}
