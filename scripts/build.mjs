// Bundles the command into dist/: one small entry and the pieces that each command loads when it runs. Then the page beside it.
import { chmod, copyFile, readFile, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { buildPage } from './build-page.mjs';
import { bomOf, modulesOf, noticesText, thirdParties } from './third-parties/third-parties.mjs';

/**
 * svgdom loads a font engine and an image reader (0.75 MB) for laying out text and pictures. Our drawings have neither: labels are strokes.
 * Left out of the bundle, they cost no start-up time; if anything ever called them, it would say so.
 */
const withoutFontsAndImages = {
  name: 'without-fonts-and-images',
  resolveId(id) {
    return /^(fontkit|image-size)$/.test(id) ? `\0left-out:${id}` : undefined;
  },
  load(id) {
    if (!id.startsWith('\0left-out:')) return undefined;
    return `const leftOut = () => { throw new Error('${id.slice(1)} is left out of the bundle: drawings have no laid-out text and no images'); };
      export const openSync = leftOut; export const create = leftOut; export default leftOut; export { leftOut as imageSize, leftOut as sizeOf };`;
  },
};

// Commander would begin a program of its own for a command that names one; none here does, and Node loads child processes in a millisecond or more.
const PROGRAMS = "require('node:child_process')";
const withoutPrograms = {
  name: 'without-programs',
  transform(code, id) {
    if (!id.replaceAll('\\', '/').endsWith('/commander/lib/command.js')) return undefined;
    if (!code.includes(PROGRAMS)) throw new Error(`commander no longer says ${PROGRAMS}: look how it begins programs now`);
    return code.replace(PROGRAMS, '{}');
  },
};

// Node's own build of pdfkit loads its fonts from disk and deflates otherwise; the one for pages gives the same bytes everywhere.
const pdfkitForPages = {
  name: 'pdfkit-for-pages',
  resolveId(id) {
    return id === 'pdfkit' ? fileURLToPath(new URL('../node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)) : undefined;
  },
};

const bundle = await rolldown({
  // The reader is begun by the command as a process of its own, the worker as a thread.
  input: { knucklewright: 'src/cli/knucklewright.ts', reader: 'src/cli/reader.ts', 'row-worker': 'src/cli/row-worker.ts' },
  platform: 'node',
  transform: { target: 'node20.19' },
  logLevel: 'warn',
  // svgdom evaluates the arithmetic of :nth-child, which nobody here asks for.
  checks: { eval: false },
  plugins: [withoutFontsAndImages, withoutPrograms, pdfkitForPages],
});

/**
 * What the entry loads at once, what `draw` loads besides, and of that what `inspect` and the reader's process load too, are three files: left to itself
 * the bundler parts them into some seventy small ones, which take a quarter of the time of a short command to find and open.
 */
async function groups() {
  const { output } = await bundle.generate({ format: 'esm' });
  const chunks = new Map(output.map((chunk) => [chunk.fileName, chunk]));
  const loadedBy = (chunk, seen = new Set()) => {
    seen.add(chunk);
    for (const name of chunk.imports) if (chunks.has(name) && !seen.has(chunks.get(name))) loadedBy(chunks.get(name), seen);
    return seen;
  };
  const modulesOfEntry = (end) => {
    const first = output.find(({ facadeModuleId }) => facadeModuleId?.replaceAll('\\', '/').endsWith(end));
    return [...loadedBy(first)].flatMap(({ moduleIds }) => moduleIds).filter((id) => id !== first.facadeModuleId);
  };
  const begin = new Set(modulesOfEntry('/src/cli/knucklewright.ts'));
  const inspecting = new Set(['/src/cli/commands/inspect.ts', '/src/cli/inspect-named-file.ts'].flatMap(modulesOfEntry));
  const drawing = new Set(modulesOfEntry('/src/cli/commands/draw.ts'));
  return [
    { name: 'begin', test: (id) => begin.has(id), priority: 3 },
    { name: 'base', test: (id) => drawing.has(id) && inspecting.has(id), priority: 2 },
    { name: 'core', test: (id) => drawing.has(id), priority: 1 },
  ];
}

await rm('dist', { recursive: true, force: true });
const { output } = await bundle.write({
  dir: 'dist',
  format: 'esm',
  // Functions keep their names, so that a fault that is reported can be read.
  minify: { compress: true, mangle: { toplevel: false, keepNames: true }, codegen: { removeWhitespace: true } },
  banner: '#!/usr/bin/env node\nimport { createRequire as kwRequire } from "node:module"; const require = kwRequire(import.meta.url);',
  codeSplitting: { groups: await groups() },
});
await bundle.close();
// The solver behind --prove looks for its compiled part beside the bundle.
await copyFile('node_modules/highs/build/highs.wasm', 'dist/highs.wasm');
await chmod('dist/knucklewright.js', 0o755);
const { bytes, modules } = await buildPage();
const { version } = JSON.parse(await readFile('package.json', 'utf8'));
const parties = thirdParties([...modulesOf(output), ...modules]);
await writeFile(
  'dist/THIRD-PARTY-NOTICES.txt',
  noticesText(parties, `Knucklewright ${version}, command and page, is under the MIT licence.`),
);
await writeFile('dist/sbom.json', `${JSON.stringify(bomOf(parties, version), null, 2)}\n`);
console.log(
  `page: dist/knucklewright.html (${Math.round(bytes / 1000)} kB); open it in a browser, no network needed. Notices of ${parties.length} others: dist/THIRD-PARTY-NOTICES.txt`,
);
