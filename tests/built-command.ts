import { spawnSync } from 'node:child_process';
import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = fileURLToPath(new URL('../', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** The command line bundled from its present sources into a folder below the project, so that a test needs no build before it. */
export async function builtCommand(name: string): Promise<{ run: (...args: readonly string[]) => Ran; remove: () => void }> {
  const folder = join(ROOT, 'out', `test-${name}-${process.pid}`);
  await build({
    entryPoints: { knucklewright: join(ROOT, 'src/cli/knucklewright.ts'), reader: join(ROOT, 'src/cli/reader.ts') },
    outdir: folder,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    banner: { js: 'import { createRequire as kwRequire } from "node:module"; const require = kwRequire(import.meta.url);' },
    logLevel: 'error',
  });
  copyFileSync(join(ROOT, 'node_modules/highs/build/highs.wasm'), join(folder, 'highs.wasm'));
  return {
    run: (...args) => {
      const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, 'knucklewright.js'), ...args], {
        encoding: 'utf8',
        cwd: ROOT,
      });
      return { code: status, out: stdout, err: stderr };
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
