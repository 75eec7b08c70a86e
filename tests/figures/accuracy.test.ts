import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { accuracyText } from './accuracy-text.ts';
import { archedPath, modelOmissions, OMISSION_BLOCKS } from './model-omissions.ts';
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
  // An arch may leave a path nearly as long as it was; what it does is told below.
  for (const { change, what } of all)
    if (what !== 'transverse arch') for (const mm of change) expect(Math.abs(mm), what).toBeGreaterThan(0.1);
  for (const [k, one] of all.entries()) {
    const next = all[k + 1];
    if (next?.what !== one.what) continue;
    for (const [b, mm] of one.change.entries()) expect(Math.abs(next.change[b] ?? 0)).toBeGreaterThan(Math.abs(mm));
  }
});

/** By how much a taut path grows for each mm of an arch: each straight piece by what its two ends are lifted along it (virtual work); no lengths are compared. */
function growth(id: (typeof OMISSION_BLOCKS)[number], sagitta: number): number {
  const { path, lift } = archedPath(id, sagitta);
  const lifted = (k: number) => {
    const piece = path.pieces.at(k % path.pieces.length);
    return piece?.element.kind === 'arc' ? lift(piece.element.contact.body.center.x) : Number.NaN;
  };
  return path.pieces.reduce((sum, { element }, k) => {
    if (element.kind === 'arc') return sum;
    const { from, to, length } = element;
    return sum + ((to.y - from.y) / length) * (lifted(k + 1) - lifted(k - 1));
  }, 0);
}

it.each(OMISSION_BLOCKS.map((id, b) => [id, b] as const))('%s: an arch changes the length by the work of its pull', (id, b) => {
  const arches = modelOmissions().filter(({ what }) => what === 'transverse arch');
  for (const [k, sagitta] of [3, 6].entries()) {
    // Simpson's rule over the growth of the arch from none.
    const steps = 12;
    const sum = Array.from(
      { length: steps + 1 },
      (_, i) => (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * growth(id, (sagitta * i) / steps),
    );
    const worked = (sum.reduce((all, one) => all + one, 0) * sagitta) / steps / 3;
    expect(Math.abs((arches[k]?.change[b] ?? Number.NaN) - worked)).toBeLessThan(0.01);
  }
});
