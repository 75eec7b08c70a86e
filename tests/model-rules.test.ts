import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { blockById } from '../src/block/library.ts';
import { edgeToCrease, freeFlexion } from '../src/pattern/strip/palmar-limits.ts';
import { stripFigures } from '../src/pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../src/pattern/strip/strip-options.ts';
import type { StripFigures } from '../src/pattern/strip/strip-report.ts';
import { handOf, WORKED } from './hands.ts';

const text = readFileSync('docs/model.md', 'utf8');

/** Tables of a rule, each as rows of cells, without the two lines of its head. */
function tablesOf(rule: number): string[][][] {
  const [, body = ''] = new RegExp(`## Rule ${rule}\\.[^\\n]*\\n([\\s\\S]*?)(?=\\n## |$)`).exec(text) ?? [];
  const blocks = body.split('\n\n').filter((b) => b.startsWith('|'));
  if (blocks.length === 0) throw new Error(`rule ${rule} has no table`);
  return blocks.map((b) =>
    b
      .trim()
      .split('\n')
      .slice(2)
      .map((row) =>
        row
          .split('|')
          .slice(1, -1)
          .map((cell) => cell.trim()),
      ),
  );
}

function figures(id: string, changes: Partial<StripOptions> = {}): StripFigures {
  const block = blockById(id);
  const found = block ? stripFigures(handOf(WORKED), block, { ...DEFAULT_STRIP_OPTIONS, ...changes }) : null;
  if (!found?.ok) throw new Error(id);
  return found.value;
}

const near = (ours: number, theirs: string | undefined, within: number, what = '') =>
  expect(Math.abs(ours - Number(theirs)), what).toBeLessThan(within);

describe('worked figures of docs/model.md', () => {
  it('rule 2: depths', () => {
    const [[, ...depths] = []] = tablesOf(2)[0] ?? [];
    const { sections } = figures('long-and-ring-raised-in-four').path.hand;
    for (const [k, s] of sections.entries()) near(2 * s.halfDepth, depths[k], 0.001);
  });

  it('rules 6 and 9: paths', () => {
    for (const [id = '', closure, length] of tablesOf(6)[0] ?? [])
      near(figures(id, { closure: closure as StripOptions['closure'] }).path.pathLength, length, 0.01, id);
    for (const [id = '', ...lengths] of tablesOf(9)[0] ?? [])
      for (const [k, differential] of [1, 5, 10, 30].entries()) near(figures(id, { differential }).path.pathLength, lengths[k], 0.01, id);
  });

  it('rule 11: edges', () => {
    const { edges } = figures('ring-lowered-in-three');
    for (const [u, where = '', proximal, distal] of tablesOf(11)[0] ?? []) {
      const [name, layer] = where.split(', ');
      const edge = edges.find((e) => e.layer === layer && (e.kind === 'web' ? e.between.join('-') : e.digit) === name);
      if (!edge) throw new Error(where);
      near(edge.u, u, 0.011, where);
      near(edge.proximal, proximal, 0.011, where);
      near(edge.distal, distal, 0.011, where);
    }
  });

  it('rule 12: free flexion', () => {
    const [free, needed] = tablesOf(12);
    for (const [h, e, ...angles] of free ?? [])
      for (const [k, angle] of angles.entries())
        near(freeFlexion({ halfDepth: Number(h), layers: k + 1, standOff: 0 }, Number(e), 2.4), angle, 0.011);
    for (const [h, ...edges] of needed ?? [])
      for (const [k, e] of edges.entries()) near(edgeToCrease({ halfDepth: Number(h), layers: k + 1, standOff: 0 }, 100, 2.4), e, 0.011);
  });

  it('rule 15: the paper trial', () => {
    for (const [reading, clearance, length] of tablesOf(15)[0] ?? []) {
      const { options, path } = figures('ring-lowered-in-three', { paperReading: Number(reading) });
      near(options.skinClearance, clearance, 0.001);
      near(path.pathLength, length, 0.01);
    }
  });

  it('every rule that a source file cites stands there', () => {
    const rules = new Set([...text.matchAll(/^## Rule (\d+)\./gm)].map(([, n]) => n));
    const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((f) => /\.tsx?$/.test(f));
    const cited = files.flatMap((f) =>
      [...readFileSync(join('src', f), 'utf8').matchAll(/(?:\(|\bdocs\/|; )model(?:\.md)? rules? ([\d, and to]+)/g)].flatMap(
        ([, list = '']) => [...list.matchAll(/\d+/g)].map(([n]) => ({ f, n })),
      ),
    );
    expect(cited.length).toBeGreaterThan(10);
    expect(cited.filter(({ n }) => !rules.has(n))).toEqual([]);
    const documents = files.filter((f) => /strip[- ]model(?:-2)?\.md|\bstrip model\b/i.test(readFileSync(join('src', f), 'utf8')));
    expect(documents).toEqual([]);
  });
});
