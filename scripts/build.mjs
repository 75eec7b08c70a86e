// Bundles the command into dist/: one small entry and the pieces that each command loads when it runs.
import { chmod, copyFile, rm } from 'node:fs/promises';
import { build } from 'esbuild';

await rm('dist', { recursive: true, force: true });
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
});
// The solver behind --prove looks for its compiled part beside the bundle.
await copyFile('node_modules/highs/build/highs.wasm', 'dist/highs.wasm');
await chmod('dist/knucklewright.js', 0o755);
