import type { Hand } from '../hand/hand.ts';
import { parseHandText } from '../hand/read-hand.ts';
import type { Result } from '../units/result.ts';
import { readText } from './read-file.ts';

/** The hand of a file that a person named; every problem names the file. */
export async function readHandFile(path: string): Promise<Result<Hand>> {
  const text = await readText(path);
  return text.ok ? parseHandText(text.value, path) : text;
}
