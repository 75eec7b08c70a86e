// Bundles a module of the tests with the source, for scripts that Node runs without a TypeScript loader.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Bundles the entries (paths from the root) into a folder that is gone when the process ends; returns the folder. */
export async function bundleTests(...entries) {
  // Inside the project, so that the bundle finds the project's packages.
  const folder = mkdtempSync(join(root, 'node_modules', '.bundle-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  await build({
    entryPoints: entries.map((entry) => join(root, entry)),
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'warning',
  });
  return folder;
}

/** A bundled module, loaded. */
export function load(folder, name) {
  return import(pathToFileURL(join(folder, `${name}.mjs`)).href);
}
