import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { VERSION } from './version.ts';

/** What `--version --json` prints. */
export interface Installed {
  readonly schema: 'knucklewright/version@1';
  readonly version: string;
  /** SHA-256 over names and contents of the installed files; a release states its own beside its sums. */
  readonly digest: string;
  readonly files: number;
  /** Whether these are the files that the release was made of, as the release's own note says. */
  readonly released: boolean;
  /** Date of the release; null where it is none. */
  readonly date: string | null;
}

const NOTE = 'release.json';

/** Hashes the program's files as they lie on the disk now. Throws what reading them throws. */
export async function installed(folder: URL): Promise<Installed> {
  const names = (await readdir(folder)).filter((name) => name !== NOTE).sort();
  const sum = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');
  const lines: string[] = [];
  for (const name of names) lines.push(`${sum(await readFile(new URL(encodeURIComponent(name), folder)))}  ${name}\n`);
  const digest = sum(lines.join(''));
  const text = await readFile(new URL(NOTE, folder), 'utf8').catch(() => '');
  // A note that is damaged vouches for nothing.
  const read = parseJsonText(text);
  const note = read.ok ? read.value : null;
  const released = getOwn(note, 'digest') === digest;
  const date = released ? String(getOwn(note, 'date')) : null;
  return { schema: 'knucklewright/version@1', version: VERSION, digest, files: names.length, released, date };
}
