// Bundles the command into dist/: one small entry and the pieces that each command loads when it runs. Then the page beside it.
import { chmod, copyFile, readFile, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { buildPage } from './build-page.mjs';
import { bomOf, modulesOf, noticesText, thirdParties } from './third-parties/third-parties.mjs';

/**
 * svgdom loads a font engine and an image reader (0.75 MB) for laying out text and pictures. Our drawings have neither: labels are strokes.
 * Left out of the bundle, they cost no start-up time; if anything ever called them, it would say so.
 */
const withoutFontsAndImages = {
  name: 'without-fonts-and-images',
  setup(bundle) {
    bundle.onResolve({ filter: /^(fontkit|image-size)$/ }, ({ path }) => ({ path, namespace: 'left-out' }));
    bundle.onLoad({ filter: /.*/, namespace: 'left-out' }, ({ path }) => ({
      contents: `const leftOut = () => { throw new Error('${path} is left out of the bundle: drawings have no laid-out text and no images'); };
        export const openSync = leftOut; export const create = leftOut; export default leftOut; export { leftOut as imageSize, leftOut as sizeOf };`,
    }));
  },
};

// Node's own build of pdfkit loads its fonts from disk and deflates otherwise; the one for pages gives the same bytes everywhere.
const pdfkitForPages = {
  name: 'pdfkit-for-pages',
  setup(builder) {
    builder.onResolve({ filter: /^pdfkit$/ }, () => ({
      path: fileURLToPath(new URL('../node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)),
    }));
  },
};

await rm('dist', { recursive: true, force: true });
const { metafile } = await build({
  metafile: true,
  // The reader is begun by the command as a process of its own, the worker as a thread.
  entryPoints: { knucklewright: 'src/cli/knucklewright.ts', reader: 'src/cli/reader.ts', 'row-worker': 'src/cli/row-worker.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  // Names stay as they are written: kept beside shortened ones they would be set again each time a function is made, a fifth of a batch's time.
  minifySyntax: true,
  minifyWhitespace: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  banner: {
    js: '#!/usr/bin/env node\nimport { createRequire as kwRequire } from "node:module"; const require = kwRequire(import.meta.url);',
  },
  legalComments: 'none',
  logLevel: 'warning',
  plugins: [withoutFontsAndImages, pdfkitForPages],
});
// The solver behind --prove looks for its compiled part beside the bundle.
await copyFile('node_modules/highs/build/highs.wasm', 'dist/highs.wasm');
await chmod('dist/knucklewright.js', 0o755);
const { bytes, modules } = await buildPage();
const { version } = JSON.parse(await readFile('package.json', 'utf8'));
const parties = thirdParties([...modulesOf(metafile), ...modules]);
await writeFile(
  'dist/THIRD-PARTY-NOTICES.txt',
  noticesText(parties, `Knucklewright ${version}, command and page, is under the MIT licence.`),
);
await writeFile('dist/sbom.json', `${JSON.stringify(bomOf(parties, version), null, 2)}\n`);
console.log(
  `page: dist/knucklewright.html (${Math.round(bytes / 1000)} kB); open it in a browser, no network needed. Notices of ${parties.length} others: dist/THIRD-PARTY-NOTICES.txt`,
);
