import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { handOf, WORKED } from '../../../tests/hands.ts';
import { blockById } from '../../block/library.ts';
import { stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS } from './strip-options.ts';

interface Row {
  readonly u: number;
  readonly kind: string;
  readonly where: string;
  readonly layer: string;
  readonly aspect: string;
  readonly proximal: number;
  readonly distal: number;
}

const rows = readFileSync('fixtures/strip-edges.csv', 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => line.split(','))
  .map(([block = '', u, kind = '', where = '', layer = '', aspect = '', proximal, distal]) => ({
    block,
    row: { u: Number(u), kind, where, layer, aspect, proximal: Number(proximal), distal: Number(distal) } satisfies Row,
  }));
const byBlock = [...new Set(rows.map(({ block }) => block))].map(
  (id) => [id, rows.filter(({ block }) => block === id).map(({ row }) => row)] as const,
);

describe('edges of the worked hand (by an independent program)', () => {
  it.each(byBlock)('%s', (id, expected) => {
    const block = blockById(id);
    if (!block) throw new Error(id);
    const found = stripFigures(handOf(WORKED), block, DEFAULT_STRIP_OPTIONS);
    if (!found.ok) throw new Error(found.problems[0]?.message);
    const { edges } = found.value;
    expect(edges).toHaveLength(expected.length);
    for (const [k, row] of expected.entries()) {
      const edge = edges[k];
      if (!edge) throw new Error('too few');
      const where = edge.kind === 'web' ? edge.between.join('-') : edge.digit;
      expect([edge.kind, where, edge.layer, edge.kind === 'web' ? '' : edge.aspect]).toEqual([row.kind, row.where, row.layer, row.aspect]);
      expect(Math.abs(edge.u - row.u)).toBeLessThan(0.011);
      expect(Math.abs(edge.proximal - row.proximal)).toBeLessThan(0.011);
      if (row.kind === 'midline') expect(Math.abs(edge.distal - row.distal), `${where} ${row.u}`).toBeLessThan(0.011);
      // Beside a relief the distal level at a web is an upper bound.
      else expect(edge.distal).toBeLessThan(row.distal + 0.011);
    }
  });
});
