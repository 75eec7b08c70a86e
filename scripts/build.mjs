// Bundles the command into dist/: one small entry and the pieces that each command loads when it runs.
import { chmod, rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

await rm('dist', { recursive: true, force: true });
// Node's own build of pdfkit loads its fonts from disk and deflates otherwise; the one for pages gives the same bytes everywhere.
const pdfkitForPages = {
  name: 'pdfkit-for-pages',
  setup(builder) {
    builder.onResolve({ filter: /^pdfkit$/ }, () => ({
      path: fileURLToPath(new URL('../node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)),
    }));
  },
};

await build({
  entryPoints: { knucklewright: 'src/cli/knucklewright.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  minify: true,
  keepNames: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  banner: {
    js: '#!/usr/bin/env node\nimport { createRequire as kwRequire } from "node:module"; const require = kwRequire(import.meta.url);',
  },
  legalComments: 'none',
  logLevel: 'warning',
  plugins: [pdfkitForPages],
});
await chmod('dist/knucklewright.js', 0o755);
