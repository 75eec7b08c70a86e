import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** Which folders of src each folder may import from: the road the data takes, one way (DEVELOPERS.md). */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  units: [],
  geometry: ['units'],
  hand: ['units', 'geometry'],
  block: ['units', 'geometry', 'hand'],
  // Texts in each language, a folder a subject; what a text is about is given to it as data.
  words: ['units', 'hand', 'block'],
  // Folds a plate's drawing along its marks and lays it on a modelled hand; knows nothing of how the plate was laid out.
  judge: ['units', 'geometry', 'hand'],
  pattern: ['units', 'geometry', 'hand', 'block', 'words', 'judge'],
  record: ['units', 'geometry', 'hand', 'block', 'words', 'pattern'],
  // Pictures of hand, device and steps as vectors, for the page and for paper.
  picture: ['units', 'geometry', 'hand', 'judge', 'block', 'words', 'pattern'],
  sheet: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'picture'],
  // What leaves the printer besides patterns: making pages, patient's sheet, letter, report, lists.
  papers: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'record', 'picture', 'sheet'],
  // A printed file is the pattern with its papers.
  writers: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'picture', 'sheet', 'papers'],
  // Files as such: reading, writing whole, locks, the case store, the inputs that a drawing carries.
  files: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'record', 'sheet', 'writers'],
  // Reads files back without knowing how they were written.
  inspect: ['units', 'geometry'],
  cli: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'record', 'picture', 'sheet', 'papers', 'writers', 'files', 'inspect'],
  page: ['units', 'geometry', 'hand', 'block', 'words', 'pattern', 'record', 'picture', 'sheet', 'papers', 'writers'],
};

/** The rooms of `sheet`, and which of them each may import from. */
const ROOMS_OF_SHEET: Readonly<Record<string, readonly string[]>> = { paper: [], cutter: [], bars: [], plastic: ['bars'] };

const SOURCE = fileURLToPath(new URL('../src/', import.meta.url));
/** What follows `from`, a bare `import`, or `import(`. */
const SPECIFIER = /(?:\bfrom\s*|\bimport\s*\(?\s*)(['"])([^'"]+)\1/g;

/** One message for each import of `text`, the file at `path` (slashes, from src), that goes the wrong way or leaves src. */
function wrongImports(path: string, text: string): readonly string[] {
  const [folder = ''] = path.split('/');
  const allowed = MAY_IMPORT[folder];
  if (!allowed) return [`${path}: the folder ${folder} is not in the layout`];
  // A test may judge its module against anything outside src (fixtures, helpers of tests/).
  const mayLeave = path.endsWith('.test.ts');
  return [...text.matchAll(SPECIFIER)].flatMap(([, , specifier = '']) => {
    if (!specifier.startsWith('.')) return [];
    const target = new URL(specifier, `file:///src/${path}`).pathname;
    const [, root, to = ''] = target.split('/');
    if (root !== 'src')
      return mayLeave ||
        target.startsWith('/templates/') ||
        target === '/package.json' ||
        (folder === 'page' && target === '/fixtures/demo-hand.json')
        ? []
        : [`${path} imports ${specifier}, outside src`];
    if (folder === 'sheet' && to === 'sheet') {
      const [, room = ''] = path.split('/');
      const [, , , toRoom = ''] = target.split('/');
      return room === toRoom || ROOMS_OF_SHEET[room]?.includes(toRoom)
        ? []
        : [`${path} imports ${specifier}: ${room} may not import ${toRoom}`];
    }
    return to === folder || allowed.includes(to) ? [] : [`${path} imports ${specifier}: ${folder} may not import ${to}`];
  });
}

/** Groups of modules that import each other in a ring, even if only types (Tarjan's strongly connected components, SIAM J Comput 1972). */
function rings(imports: ReadonlyMap<string, readonly string[]>): readonly (readonly string[])[] {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const path: string[] = [];
  const found: string[][] = [];
  const visit = (file: string): void => {
    order.set(file, order.size);
    lowest.set(file, order.size - 1);
    path.push(file);
    for (const next of imports.get(file) ?? []) {
      if (!order.has(next)) visit(next);
      if (path.includes(next)) lowest.set(file, Math.min(lowest.get(file) ?? 0, lowest.get(next) ?? 0));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const ring = path.splice(path.indexOf(file));
    if (ring.length > 1) found.push(ring.toSorted());
  };
  for (const file of imports.keys()) if (!order.has(file)) visit(file);
  return found;
}

function importsOf(path: string, text: string): readonly string[] {
  return [...text.matchAll(SPECIFIER)].flatMap(([, , specifier = '']) => {
    if (!specifier.startsWith('.')) return [];
    const [, root, ...rest] = new URL(specifier, `file:///src/${path}`).pathname.split('/');
    return root === 'src' ? [rest.join('/')] : [];
  });
}

function sourceFiles(): readonly string[] {
  const found = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));
  return found.map((file) => relative(SOURCE, join(SOURCE, file)).split(sep).join('/'));
}

describe('imports in src', () => {
  it('run one way along the layout', () => {
    const files = sourceFiles();
    expect(files).toContain('units/number.ts');
    expect(files.flatMap((file) => wrongImports(file, readFileSync(join(SOURCE, file), 'utf8')))).toEqual([]);
  });

  it('run in no ring, not even of types', () => {
    const imports = new Map(sourceFiles().map((file) => [file, importsOf(file, readFileSync(join(SOURCE, file), 'utf8'))]));
    expect(imports.get('hand/read-hand.ts')).toContain('units/result.ts');
    expect(rings(imports)).toEqual([]);
  });

  it('that run in a ring are found', () => {
    const imports = { a: ['b'], b: ['c', 'd'], c: ['a'], d: ['e'], e: ['d'], f: ['a'] };
    expect(rings(new Map(Object.entries(imports)))).toEqual([
      ['d', 'e'],
      ['a', 'b', 'c'],
    ]);
  });

  it.each([
    ['geometry/ellipse.ts', "import type { Hand } from '../hand/hand.ts';", 1],
    ['writers/svg.ts', "const record = await import('../record/case.ts');", 1],
    ['page/main.ts', "import '../cli/draw.ts';", 1],
    ['hand/deep/section.ts', "export { root } from '../../pattern/pattern.ts';", 1],
    ['units/number.ts', "import x from '../../scripts/build.mjs';", 1],
    ['elsewhere/x.ts', '', 1],
    ['sheet/paper/page.ts', "import { layOut } from '../plastic/lay-out.ts';", 1],
    ['sheet/plastic/lay-out.ts', "import { cutBars } from '../bars/cut-bars.ts';", 0],
    ['writers/svg.ts', "import { a } from '../units/number.ts';\nimport { b } from './writer.ts';\nimport c from 'svgdom';", 0],
  ] as const)('are judged: %s, %s', (path, text, count) => {
    expect(wrongImports(path, text)).toHaveLength(count);
  });
});
