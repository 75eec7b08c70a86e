import { filesOfAnotherSet } from '../files/drawing-set.ts';
import { readBytes } from '../files/read-file.ts';
import { LIMITS } from '../inspect/drawing.ts';
import { inspectFile, withMixedSet } from '../inspect/inspect-file.ts';
import type { Inspection, InspectSettings } from '../inspect/inspection.ts';
import { type Result, success } from '../units/result.ts';

/** Reads a named file back; with finding 505 when files beside it that have its name are of another pattern. */
export async function inspectNamedFile(path: string, settings: InspectSettings): Promise<Result<Inspection>> {
  const bytes = await readBytes(path, LIMITS.bytes);
  if (!bytes.ok) return bytes;
  return success(withMixedSet(inspectFile(bytes.value, settings), await filesOfAnotherSet(path, bytes.value)));
}
