// Builds the page into one file: script and style inline, and a policy that allows these two by their hashes and nothing else.
import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { build } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { noticesText, thirdParties } from './third-parties/third-parties.mjs';

const packageJson = JSON.parse(await readFile(new URL('../package.json', import.meta.url), 'utf8'));
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
export const PAGE = join(root, 'dist', 'knucklewright.html');
const LARGEST_BYTES = 900_000;

/**
 * pdfkit brings a font engine, a line breaker and an image reader (0.55 MB) and ciphers. Our pages have the standard fonts, lines that are broken
 * before, no images and no password. Left out, they would say so if anything ever called them.
 */
const withoutFontsAndImages = {
  name: 'without-fonts-and-images',
  enforce: 'pre',
  resolveId(id) {
    return ['fontkit', 'linebreak', 'png-js', '@noble/ciphers/aes'].includes(id) ? `\0left-out:${id}` : undefined;
  },
  load(id) {
    if (!id.startsWith('\0left-out:')) return undefined;
    return `const leftOut = () => { throw new Error('${id.slice(1)}'); };
      export default class LeftOut { constructor() { leftOut(); } }
      export { leftOut as create, leftOut as cbc, leftOut as ecb };`;
  },
};

/** Only the command prints forms as JSON Schema: what makes them is left out, each of its functions saying so if it were ever called. */
const withoutJsonSchema = {
  name: 'without-json-schema',
  enforce: 'pre',
  async load(id) {
    if (!/zod\/v4\/core\/(json-schema-processors|to-json-schema)\.js$/.test(id)) return undefined;
    const names = [...(await readFile(id, 'utf8')).matchAll(/^export (?:const|function|class) (\w+)/gm)].map(([, name]) => name);
    return `const leftOut = () => { throw new Error('JSON Schema'); };
      ${names.map((name) => `export { leftOut as ${name} };`).join(' ')}`;
  },
};

/** The colour profile of archive files (PDF/A), which ours are not; used once it would be an empty one, which no reader takes. */
const withoutColourProfile = {
  name: 'without-colour-profile',
  enforce: 'pre',
  transform: (code, id) =>
    id.endsWith('/pdfkit.browser.mjs')
      ? code
          .replace(/var iccProfileBase64 = "[^"]*"/, 'var iccProfileBase64 = ""')
          .replace(/const ICC_PROFILE_PATH = new URL\([^)]*\)\.href/, 'const ICC_PROFILE_PATH = "left-out.icc"')
      : undefined,
};

/** Notes which modules really stand in what is built, before anything else takes the outputs apart. */
function noting(modules) {
  return {
    name: 'noting-modules',
    generateBundle(_, bundle) {
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        for (const [id, { renderedLength }] of Object.entries(chunk.modules)) if (renderedLength > 0) modules.add(id);
      }
    },
  };
}

/** What both builds have in common. */
function common(input) {
  return {
    configFile: false,
    root: join(root, 'src', 'page'),
    logLevel: 'warn',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    // On a slow machine it would tell how long its plugins took, which is no matter of whoever builds.
    build: { write: false, target: 'es2023', modulePreload: false, rollupOptions: { input, checks: { pluginTimings: false } } },
  };
}

/** The code that writes files, as one module, packed: it waits in the page as text until the first file is made. */
async function packedWriters(modules) {
  const { build: settings, ...others } = common(join(root, 'src', 'page', 'writers.ts'));
  const result = await build({
    ...others,
    plugins: [withoutFontsAndImages, withoutJsonSchema, withoutColourProfile, noting(modules)],
    build: {
      ...settings,
      rollupOptions: { ...settings.rollupOptions, preserveEntrySignatures: 'strict', output: { codeSplitting: false } },
    },
  });
  const chunks = [result].flat().flatMap((r) => r.output);
  const [chunk] = chunks;
  if (chunks.length !== 1 || chunk?.type !== 'chunk') throw new Error(`the writers must be one module, but are ${chunks.length}`);
  return deflateRawSync(chunk.code, { level: 9 });
}

/** Signs that stand as they are in a script, whatever quotes are put round them. */
const SIGNS = Array.from({ length: 94 }, (_, k) => String.fromCharCode(33 + k))
  .filter((sign) => !'"\'`\\<>&$'.includes(sign))
  .slice(0, 85)
  .join('');

/** Four bytes in five signs, where base 64 takes five and a third; the last group is filled up with zeros. */
function inSigns(bytes) {
  let text = '';
  for (let k = 0; k < bytes.length; k += 4) {
    let group = [0, 1, 2, 3].reduce((sum, j) => sum * 256 + (bytes[k + j] ?? 0), 0);
    let signs = '';
    for (let j = 0; j < 5; j++) {
      signs = SIGNS[group % 85] + signs;
      group = Math.floor(group / 85);
    }
    text += signs;
  }
  return text;
}

/** Stands for src/page/load-writers.ts: unpacks the writers and runs them as a module of the page's own. */
function withPackedWriters(packed) {
  const code = `
    const packed = ${JSON.stringify(inSigns(packed))};
    const signs = ${JSON.stringify(SIGNS)};
    let loaded;
    export const loadWriters = () => (loaded ??= unpack());
    async function unpack() {
      const groups = new DataView(new ArrayBuffer((packed.length / 5) * 4));
      for (let k = 0; k < packed.length; k += 5)
        groups.setUint32((k / 5) * 4, [...packed.slice(k, k + 5)].reduce((sum, sign) => sum * 85 + signs.indexOf(sign), 0));
      const bytes = new Uint8Array(groups.buffer, 0, ${packed.length});
      const text = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))).text();
      const address = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
      try {
        return await import(/* @vite-ignore */ address);
      } finally {
        URL.revokeObjectURL(address);
      }
    }`;
  return {
    name: 'with-packed-writers',
    enforce: 'pre',
    resolveId: (id) => (id.endsWith('/load-writers.ts') ? '\0packed-writers' : undefined),
    load: (id) => (id === '\0packed-writers' ? code : undefined),
  };
}

/** Writes the page to `target`; its size in bytes and the modules in it. Throws when it would load anything or is too large. */
export async function buildPage(target = PAGE) {
  // The same page whoever builds it; within the tests vite would take their own mode.
  process.env.NODE_ENV = 'production';
  const modules = new Set();
  const packed = await packedWriters(modules);
  const result = await build({
    ...common(join(root, 'src', 'page', 'knucklewright.html')),
    plugins: [
      withoutFontsAndImages,
      withoutJsonSchema,
      withoutColourProfile,
      withPackedWriters(packed),
      noting(modules),
      viteSingleFile({ removeViteModuleLoader: true }),
    ],
  });
  const outputs = [result].flat().flatMap((r) => r.output);
  const files = outputs.map((o) => o.fileName);
  const [page] = outputs.filter((o) => o.fileName.endsWith('.html'));
  if (files.length !== 1 || !page) throw new Error(`the page must be one file, but it is ${files.join(', ')}`);
  const html = withPolicy(withNotices(withPackedScript(String(page.source)), [...modules]));
  const bytes = Buffer.byteLength(html);
  if (bytes > LARGEST_BYTES) throw new Error(`the page has ${bytes} bytes, more than ${LARGEST_BYTES}`);
  await mkdir(dirname(target), { recursive: true });
  await writeFile(`${target}.tmp`, html);
  await rename(`${target}.tmp`, target);
  return { bytes, modules: [...modules] };
}

/** The notices as text of the document. */
function withNotices(html, modules) {
  const place = '<template id="notices"></template>';
  if (!html.includes(place)) throw new Error('the page has no place for the notices');
  const text = noticesText(
    thirdParties(modules, { command: false }),
    `Knucklewright ${packageJson.version}, the page, is under the MIT licence.`,
  );
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  return html.replace(place, () => `<template id="notices">${escaped}</template>`);
}

/**
 * The page's own code packed as well, which makes the file a third smaller; it is unpacked before the first paint, in some hundredths of a second,
 * and run as a module from a blob of the page's own. The policy's hash is of all of it. What cannot start says so.
 */
function withPackedScript(html) {
  const [code, ...others] = inline(html, 'script');
  if (code === undefined || others.length > 0) throw new Error(`one script is expected, but there are ${others.length + 1}`);
  const start = `
    const packed = "${deflateRawSync(code, { level: 9 }).toString('base64')}";
    const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
    const failed = (error) => { document.getElementById('page').textContent = 'This browser cannot run the page; one of 2023 or later does. ' + error; };
    new Promise((done) => done(new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))).text()))
      .then((text) => {
        const address = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
        return import(address).finally(() => URL.revokeObjectURL(address));
      })
      .catch(failed);`;
  return html.replace(code, () => start);
}

function withPolicy(html) {
  const scripts = inline(html, 'script');
  const styles = inline(html, 'style');
  if (scripts.length !== 1 || styles.length !== 1)
    throw new Error(`${scripts.length} scripts and ${styles.length} styles; one of each is expected`);
  const policy = [
    "default-src 'none'",
    // Page and writers are unpacked into blobs of the page's own; nothing can be loaded from anywhere.
    `script-src ${scripts.map(hash).join(' ')} blob:`,
    `style-src ${styles.map(hash).join(' ')}`,
    'img-src data:',
    "connect-src 'none'",
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');
  return html.replace(
    '<meta charset="utf-8" />',
    (charset) => `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
  );
}

/** The contents of the inline elements of that name. */
function inline(html, name) {
  const elements = [...html.matchAll(new RegExp(`<${name}\\b([^>]*)>([\\s\\S]*?)</${name}>`, 'g'))];
  for (const [, attributes] of elements) if (/\bsrc=/.test(attributes)) throw new Error(`a ${name} is not inline:${attributes}`);
  return elements.map(([, , content]) => content);
}

function hash(text) {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { bytes } = await buildPage(process.argv[2]);
  console.log(
    `page: ${process.argv[2] ?? 'dist/knucklewright.html'} (${Math.round(bytes / 1000)} kB); open it in a browser, no network needed`,
  );
}
