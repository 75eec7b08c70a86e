import { readText } from '../../files/read-file.ts';
import { readShelf, type ShelfStrip } from '../../sheet/plastic/shelf.ts';
import { type Result, success } from '../../units/result.ts';
import { flag } from './flag.ts';

export const SHELF_AFTER = 'shelf-after.csv';

export const shelfFlag = flag(
  '--shelf <file>',
  `strips in stock (CSV: length,width,count): says which to take and what to cut off; with --out what is left, as ${SHELF_AFTER}`,
);

/** The strips in stock, or null without a shelf. The file is only read. */
export async function readShelfFlag(path: string | undefined): Promise<Result<readonly ShelfStrip[] | null>> {
  if (path === undefined) return success(null);
  const text = await readText(path);
  return text.ok ? readShelf(text.value, path) : text;
}
