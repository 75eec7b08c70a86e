import { readdir, rmdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { fateOf, TAG_PATTERN } from './process-tag.ts';

const LEFTOVER = new RegExp(String.raw`^\..+\.(${TAG_PATTERN})\.(draft|earlier|trial)$`, 's');

/**
 * Removes what programs that were killed left in a folder: hidden files whose names say which process made them, when it lives no more. What
 * lives, or may, is left alone, and so is everything with another name. Never fails: a leftover harms nobody.
 */
export async function clearLeftovers(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const [, tag, kind] = LEFTOVER.exec(name) ?? [];
    if (tag === undefined || fateOf(tag) !== 'dead') continue;
    await (kind === 'trial' ? rmdir : unlink)(join(folder, name)).catch(() => {});
  }
}
