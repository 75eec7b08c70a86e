import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../', import.meta.url));
/** As it is shipped; build-once.ts built it before all tests. */
export const COMMAND = join(ROOT, 'dist', 'knucklewright.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command in a process of its own, in the project's root. */
export function run(...args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...args], { encoding: 'utf8', cwd: ROOT });
  return { code: status, out: stdout, err: stderr };
}
