import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

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

/** Builds `case-writer.ts` into one file that Node runs by itself. */
export async function buildCaseWriter(outfile: string): Promise<void> {
  const entry = join(ROOT, 'tests', 'case-writer.ts');
  await build({ entryPoints: [entry], outfile, bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'error' });
}
