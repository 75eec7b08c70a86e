import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SHEET_SETTINGS, SHEET_PARTS } from '../src/sheet/paper/sheet-settings.ts';
import { pdfWriter } from '../src/writers/pdf/pdf.ts';
import { BY_NIGHT } from './by-night.ts';
import { DEMO_HAND, stripOf } from './pdf-samples.ts';

const ENTRY = `
import { pdfWriter } from './src/writers/pdf/pdf.ts';
export function write(settings, pattern) { return pdfWriter(JSON.parse(settings)).write(JSON.parse(pattern)); }
`;

describe('the PDF writer in a page', () => {
  it('needs nothing of Node and gives the same bytes', async () => {
    const root = fileURLToPath(new URL('..', import.meta.url));
    const bundle = await build({
      stdin: { contents: ENTRY, resolveDir: root, loader: 'ts' },
      bundle: true,
      write: false,
      platform: 'browser',
      format: 'iife',
      globalName: 'page',
      // What a module script in a page opened by double click has.
      define: { 'import.meta.url': '"file:///page.html"' },
      logLevel: 'silent',
    });
    expect(bundle.warnings).toEqual([]);
    const code = bundle.outputFiles[0]?.text ?? '';
    // Only what every browser has: no require, no process, no Buffer. The encoder's arrays must be the page's own kind.
    const context = createContext({ TextEncoder, TextDecoder, URL, atob, Uint8Array, ArrayBuffer, console, setTimeout, queueMicrotask });
    // A name of the global scope is looked up anew each time in a context, which takes minutes over pictures: in a function it is found once.
    const names = 'Math, Number, Array, Object, Map, Float32Array, Float64Array, Int32Array, Uint8Array';
    runInContext(`globalThis.page = ((${names}) => { ${code}; return page; })(${names});`, context);
    // Its pictures, which take most of the time, a real browser writes in print.test.ts.
    const pattern = stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31');
    const settings = { ...DEFAULT_SHEET_SETTINGS, parts: BY_NIGHT ? SHEET_PARTS : (['pattern'] as const) };
    Object.assign(context, { settings: JSON.stringify(settings), pattern: JSON.stringify(pattern) });
    const inPage: unknown = runInContext('Array.from(page.write(settings, pattern).value)', context);
    const inNode = pdfWriter(settings).write(pattern);
    if (!inNode.ok) throw new Error(JSON.stringify(inNode.problems));
    expect(Buffer.from(inPage as number[]).equals(Buffer.from(inNode.value))).toBe(true);
  });
});
