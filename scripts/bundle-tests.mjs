// Bundles a module of the tests with the source, for scripts that Node runs without a TypeScript loader.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Packages are loaded from where they are, but pdfkit is the build that scripts/build.mjs takes. */
const packagesOutside = {
  name: 'packages-outside',
  setup(bundle) {
    bundle.onResolve({ filter: /^pdfkit$/ }, () => ({ path: join(root, 'node_modules/pdfkit/js/pdfkit.browser.mjs') }));
    bundle.onResolve({ filter: /^[^./]/ }, ({ path, kind, importer }) =>
      kind === 'entry-point' || path.startsWith('pdfkit') || importer.includes('node_modules') ? undefined : { path, external: true },
    );
  },
};

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
    plugins: [packagesOutside],
    banner: { js: 'import { createRequire as ownRequire } from "node:module"; const require = ownRequire(import.meta.url);' },
    logLevel: 'warning',
  });
  return folder;
}

/** A bundled module, loaded. */
export function load(folder, name) {
  return import(pathToFileURL(join(folder, `${name}.mjs`)).href);
}
