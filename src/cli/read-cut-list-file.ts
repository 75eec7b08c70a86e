import { readText } from '../files/read-file.ts';
import { type CutList, LARGEST_LIST_BYTES, readCutList } from '../sheet/plastic/read-cut-list.ts';
import type { Result } from '../units/result.ts';

/** The cut list in a named file. */
export async function readCutListFile(path: string): Promise<Result<CutList>> {
  const text = await readText(path, LARGEST_LIST_BYTES);
  return text.ok ? readCutList(text.value, path) : text;
}
