import { readText } from '../files/read-file.ts';
import { type CutList, readCutList } from '../sheet/plastic/read-cut-list.ts';
import type { Result } from '../units/result.ts';

const LARGEST_LIST = 100_000_000;

/** The cut list in a named file. */
export async function readCutListFile(path: string): Promise<Result<CutList>> {
  const text = await readText(path, LARGEST_LIST);
  return text.ok ? readCutList(text.value, path) : text;
}
