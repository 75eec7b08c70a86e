import { basename, dirname } from 'node:path';
import { checkWritable, type SavedFile, type SaveOptions, saveFiles } from '../files/save-file.ts';
import { quote } from '../units/quote.ts';
import { failure, type Result, success } from '../units/result.ts';
import { flagProblem } from './flags/flag.ts';

/** Saves one file at the path that a person gave. */
export async function saveFileAs(path: string, content: string | Uint8Array, options: SaveOptions): Promise<Result<SavedFile>> {
  const saved = await saveFiles(dirname(path), [{ name: basename(path), content }], { ...options, ownNames: true });
  if (!saved.ok) return saved;
  const [file] = saved.value;
  if (!file) throw new Error('a file was saved without a name');
  return success(file);
}

/** Whether it can be saved there; to be asked before anything is computed. */
export function checkFileToSave(path: string, options: SaveOptions): Promise<Result<string>> {
  return checkWritable(dirname(path), [basename(path)], { ...options, ownNames: true });
}

/** The ending of the name that --out gives, in lower case, which says what is written. */
export function readEnding<Ending extends string>(out: string, endings: readonly Ending[], meaning: string): Result<Ending> {
  const ending = endings.find((known) => out.toLowerCase().endsWith(`.${known}`));
  return ending === undefined ? failure(flagProblem('--out', `${quote(out)} must end in ${meaning}`)) : success(ending);
}
