import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { accuracyText } from './accuracy-text.ts';
import { modelOmissions } from './model-omissions.ts';
import { outsideChecks } from './outside-checks.ts';

it('docs/accuracy.md holds what a run gives today; write it anew with node scripts/accuracy.mjs', () => {
  const committed = readFileSync(new URL('../../docs/accuracy.md', import.meta.url), 'utf8');
  expect(committed).toContain(accuracyText());
});

it('docs/accuracy.md has every reader for strip and plate, each as near as it can tell', () => {
  const committed = readFileSync(new URL('../../docs/accuracy.md', import.meta.url), 'utf8');
  const readers = committed.slice(committed.indexOf('## What real readers measure'));
  const rows = [...readers.matchAll(/^\| ((?:DXF|SVG|our PDF).*) \|$/gm)].map(([, row = '']) => row.split(' | '));
  expect(rows.length).toBeGreaterThanOrEqual(2 * 13);
  for (const [format = '', reader = '', , , measured = '', apart = '', fineness = ''] of rows) {
    expect(measured, `${format}, ${reader}`).toMatch(/^\d+\.\d{4} x \d+\.\d{4}$/);
    expect(Number(apart), `${format}, ${reader}`).toBeLessThanOrEqual(Number.parseFloat(fineness));
  }
  for (const name of ['ezdxf', 'LibreCAD', 'resvg', 'librsvg', 'Inkscape', 'poppler', 'mutool']) {
    expect(rows.filter(([, reader = '']) => reader.includes(name)).length, name).toBeGreaterThanOrEqual(2);
  }
});

it.each(outsideChecks().map((check) => [check.what, check] as const))(
  '%s: agrees with its source as far as the source goes',
  (_, check) => {
    // One of the last digit that the source prints, since some cut it off (the ellipse 1.2 x 1 is 6.9257911958), and the worked examples' own 0.01.
    const bound = check.source.startsWith('worked hand') ? 0.01 : 10 ** -check.decimals;
    expect(Math.abs(check.ours - check.outside)).toBeLessThanOrEqual(bound);
  },
);

it('what is left out changes the length by something, and the larger size by more', () => {
  const all = modelOmissions();
  for (const { change, what } of all) for (const mm of change) expect(Math.abs(mm), what).toBeGreaterThan(0.01);
  for (const [k, one] of all.entries()) {
    const next = all[k + 1];
    if (next?.what !== one.what) continue;
    for (const [b, mm] of one.change.entries()) expect(Math.abs(next.change[b] ?? 0)).toBeGreaterThan(Math.abs(mm));
  }
});
