import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, expect, it } from 'vitest';
import { BY_NIGHT, times } from '../by-night.ts';
import { mutateBytes, mutateJson } from './damage.ts';
import { NAMES } from './names.ts';
import { checkNode } from './shown.ts';
import { checkDxf, checkSvg } from './written.ts';

/** A target; by night 100,000 of them each besides, by scripts/fuzz-nightly.mjs alone. */
const CASES = times(25, 200);
/** One seed here, so that a change is judged by what it changes; `npm run nightly` draws another each time. */
const SEED = 20261125;
const SCRIPT = fileURLToPath(new URL('../../scripts/fuzz-nightly.mjs', import.meta.url));

// What stands in for a browser is for these tests alone.
afterAll(() => {
  for (const name of ['document', 'window', 'devicePixelRatio']) Reflect.deleteProperty(globalThis, name);
});

it(`every target holds against ${CASES} hostile inputs, whose seed is printed`, { timeout: 900_000 }, async () => {
  const args = [SCRIPT, '--cases', String(CASES), '--seed', String(SEED), ...(BY_NIGHT ? [] : ['--together'])];
  const run = promisify(execFile)(process.execPath, args, { encoding: 'utf8' });
  const { stdout } = await run.catch((error: { stdout?: string }) => ({ stdout: error.stdout ?? String(error) }));
  process.stdout.write(stdout);
  expect(stdout).toContain(`seed ${SEED}`);
  for (const name of NAMES) expect(stdout).toContain(`held   ${name.padEnd(12)} ${CASES} cases`);
  expect(stdout).toContain(`${NAMES.length} targets held, 0 broken`);
});

it('the checks of written files see markup, groups and numbers that do not belong there', () => {
  const svg = (inside: string) => `<?xml version="1.0" encoding="UTF-8"?>\n<svg width="1mm"><title>${inside}</title></svg>\n`;
  expect(() => checkSvg(svg('a &lt;b&gt;'))).not.toThrow();
  for (const inside of ['<script/>', '<g onclick="x"/>', '&xxe;', '</title><path d="M NaN 0"/><title>', '\u0001', '</title>']) {
    expect(() => checkSvg(svg(inside)), inside).toThrow();
  }
  const dxf = (pairs: string) => `999\ntitle\n0\nSECTION\n2\nENTITIES\n${pairs}0\nENDSEC\n0\nEOF\n`;
  expect(() => checkDxf(dxf('0\nLINE\n10\n1.5000\n'))).not.toThrow();
  for (const pairs of [
    '0\nTEXT\n',
    '0\nLINE\n10\nNaN\n',
    '0\nLINE\n10\n1e21\n',
    '0\nLINE\n10\n1,5\n',
    'x\ny\n',
    '0\n',
    '0\nEOF\n0\nLINE\né\n',
  ]) {
    expect(() => checkDxf(dxf(pairs)), pairs).toThrow();
  }
});

it('the check of the page sees elements, attributes, numbers and words that do not belong there', () => {
  const tree = (name: string, attributes: Readonly<Record<string, string>> = {}, words = '') => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    element.appendChild(document.createTextNode(words));
    return element;
  };
  expect(() => checkNode(tree('p', { class: 'hint', style: 'width: 12.5%' }, '<b>84.5 mm</b>'), '')).not.toThrow();
  expect(() => checkNode(tree('p', {}, 'NaN'), 'someone typed NaN')).not.toThrow();
  for (const [name, attributes, words] of [
    ['script', {}, ''],
    ['image', {}, ''],
    ['p', { onclick: 'x' }, ''],
    ['a', { href: 'javascript:x' }, ''],
    ['path', { d: 'M NaN 0' }, ''],
    ['path', { d: 'M1e21 0' }, ''],
    ['svg', { viewBox: '0 0 Infinity 1' }, ''],
    ['div', { style: 'background: url(x)' }, ''],
    ['p', {}, 'undefined mm'],
    ['p', { title: '[object Object]' }, ''],
    ['p', {}, 'turned \u202e round'],
  ] as const) {
    const outer = tree('div');
    outer.appendChild(tree(name, attributes, words));
    expect(() => checkNode(outer, ''), JSON.stringify([name, attributes, words])).toThrow();
  }
});

it('mutations leave the original alone and really change', () => {
  const original = { a: [1, { b: 2 }] };
  const mutated = mutateJson(original, [{ kind: 'add', where: 0, key: '__proto__', value: 7 }]);
  expect(Object.hasOwn(mutated as object, '__proto__')).toBe(true);
  expect(original).toEqual({ a: [1, { b: 2 }] });
  const same = {};
  const twice = [same, same].map((value, k) => ({ kind: 'add' as const, where: k === 0 ? 0 : 3, key: 'again', value }));
  expect(() => JSON.stringify(mutateJson(original, [...twice, ...twice]))).not.toThrow();
  expect(same).toEqual({});
  const bytes = Buffer.from('abcdef');
  expect(Buffer.from(mutateBytes(bytes, [{ kind: 'cut', at: 0.5, amount: 2, text: '' }])).toString()).toBe('abcf');
  expect(bytes.toString()).toBe('abcdef');
});
