import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { HostileFile } from './hostile-files.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** What the command and its reading process used on a file. */
export interface Measured {
  readonly exit: number;
  readonly seconds: number;
  readonly megabytes: number;
  readonly out: string;
  readonly err: string;
}

/** Has the built command read a hostile file, in a folder for what it may write. */
export function measured({ command, ending, content }: HostileFile, folder: string, root = ROOT): Measured & { readonly bytes: number } {
  const bytes = Buffer.from(content() as Uint8Array);
  const path = join(folder, `hostile.${ending}`);
  writeFileSync(path, bytes);
  const out = ['--out', join(folder, 'out'), '--force'];
  const more = { inspect: [], redraw: out, 'print-check': ['--across', '97', '--along', '97', ...out], sheets: out }[command];
  const words = [process.execPath, join(root, 'dist', 'knucklewright.js'), command, path, ...more];
  const { stdout, stderr } = spawnSync('/usr/bin/python3', [join(root, 'tests', 'readers', 'measure.py'), ...words], {
    encoding: 'utf8',
    maxBuffer: 64e6,
  });
  if (stdout === '') throw new Error(stderr);
  return { ...(JSON.parse(stdout) as Measured), bytes: bytes.length };
}
