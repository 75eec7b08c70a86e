import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, expect } from 'vitest';
import { parseDxf } from './parse-dxf.ts';

/** A table of 60 invented hands, three of whose rows are wrong. */
export const DEMO = 'fixtures/demo-clinic.csv';

/** A folder for one file of tests, which calls this, and what reads and writes in it. */
export function batchScratch() {
  const scratch = mkdtempSync(join(tmpdir(), 'batch-'));
  afterAll(() => rmSync(scratch, { recursive: true }));
  const folder = (name: string) => join(scratch, name);
  const text = (...path: string[]) => readFileSync(join(scratch, ...path), 'utf8');
  const rows = (...path: string[]) => parse(text(...path), { columns: true }) as Record<string, string>[];
  /** A table with the demo's first hands, in another notation. */
  const table = (name: string, rewrite: (lines: string) => string, count = 6): string => {
    const lines = readFileSync(DEMO, 'utf8')
      .trimEnd()
      .split('\n')
      .slice(0, count + 1);
    const path = join(scratch, name);
    writeFileSync(path, rewrite(lines.join('\n')));
    return path;
  };
  return { scratch, folder, text, rows, table };
}

/** Rounded size of each closed outline on CUT, as a reader of DXF finds it. */
export function outlines(dxf: string): string[] {
  const found = parseDxf(dxf).entities.filter((e) => e.layer === 'CUT') as unknown as {
    shape?: boolean;
    vertices: { x: number; y: number }[];
  }[];
  expect(found.every((e) => e.shape === true)).toBe(true);
  return found.map(({ vertices }) => {
    const side = (values: number[]) => (Math.max(...values) - Math.min(...values)).toFixed(3);
    return `${side(vertices.map((v) => v.x))} x ${side(vertices.map((v) => v.y))}`;
  });
}
