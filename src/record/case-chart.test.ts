import { describe, expect, it } from 'vitest';
import { plate, type SampleVisit, sampleCase, strip } from '../../tests/sample-case.ts';
import { boxOf } from '../geometry/path.ts';
import { strokeText, textWidth } from '../geometry/stroke-letters.ts';
import type { Drawing, DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { caseChart } from './case-chart.ts';
import { MM_PER_DEGREE } from './chart-frame.ts';

const VISITS: readonly SampleVisit[] = [
  { pip: [40, 80], passive: [30, 90], rest: strip(20) },
  { pip: [36, 92], passive: [28, 95] },
  { pip: [26, 92], rest: { ...plate(50), wear: 6 } },
];

function chart(visits: readonly SampleVisit[] = VISITS, rest = {}): Drawing {
  const drawn = caseChart(sampleCase(visits, rest));
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.problems));
  return drawn.value;
}

const shapes = (drawing: Drawing, role: string) =>
  drawing.items.filter((item): item is DrawnShape => item.kind === 'shape' && item.role === role);
const texts = (drawing: Drawing, role?: string) =>
  drawing.items
    .filter((item): item is DrawnText => item.kind === 'text' && (role === undefined || item.role === role))
    .map(({ text }) => text);
const centres = (drawing: Drawing, role: string) => shapes(drawing, role).flatMap(({ circles }) => circles.map(({ center }) => center));

describe('caseChart(record)', () => {
  const drawing = chart();
  /** y of straight: every angle is measured from it. */
  const straight = shapes(drawing, 'straight')[0]?.paths[0]?.vertices[0]?.y ?? Number.NaN;
  const degreesAt = (y: number) => (y - straight) / MM_PER_DEGREE;

  it('puts every active and passive value at its angle', () => {
    expect(centres(drawing, 'active-value').map(({ y }) => Math.round(degreesAt(y) * 1e6) / 1e6)).toEqual([80, 92, 92, 40, 36, 26]);
    expect(centres(drawing, 'passive-value').map(({ y }) => Math.round(degreesAt(y) * 1e6) / 1e6)).toEqual([90, 95, 30, 28]);
  });

  // 1.96 x sqrt 2 x 3.5 (4.5 with two raters) is 9.7 (12.5): sigma between Engstrand et al. 2012 and Reissner et al. 2019, common practice.
  it('draws a band of 10 degrees either side of each active value, from its visit to the next', () => {
    const bands = shapes(drawing, 'error-band').map(({ paths }) => boxOf(paths));
    const values = centres(drawing, 'active-value');
    expect(bands).toHaveLength(6);
    for (const [k, band] of bands.entries()) {
      const value = values[k];
      expect(band.minX).toBeCloseTo(value?.x ?? Number.NaN, 9);
      expect(degreesAt(band.maxY) - degreesAt(value?.y ?? Number.NaN)).toBeCloseTo(10, 9);
      expect(degreesAt(value?.y ?? Number.NaN) - degreesAt(band.minY)).toBeCloseTo(10, 9);
      if (k % 3 < 2) expect(band.maxX).toBeCloseTo(values[k + 1]?.x ?? Number.NaN, 9);
    }
  });

  it('so that the next value lies inside exactly when the table says no change', () => {
    for (const moved of [-11, -10, -9.9, 0, 9.9, 10, 11]) {
      const one = chart([{ pip: [40, 80] }, { pip: [40, 80 + moved] }]);
      const [band] = shapes(one, 'error-band').map(({ paths }) => boxOf(paths));
      const next = centres(one, 'active-value')[1];
      if (!band || !next) throw new Error('not drawn');
      const inside = next.y > band.minY + 1e-9 && next.y < band.maxY - 1e-9;
      expect(texts(one, 'cell').filter((text) => text === 'no change')).toHaveLength(inside ? 2 : 1);
    }
  });

  it('draws it wider between two raters, and says so in the table', () => {
    const [one, other] = [{ rater: 'A' }, { rater: 'B' }];
    const mixed = chart([
      { pip: [40, 80], rest: one },
      { pip: [40, 92], rest: other },
      { pip: [40, 80], rest: other },
    ]);
    const [first, second] = shapes(mixed, 'error-band').map(({ paths }) => boxOf(paths));
    expect(((first?.maxY ?? 0) - (first?.minY ?? 0)) / MM_PER_DEGREE).toBeCloseTo(26, 9);
    expect(((second?.maxY ?? 0) - (second?.minY ?? 0)) / MM_PER_DEGREE).toBeCloseTo(20, 9);
    expect(texts(mixed, 'cell')).toContain('12 lost');
    expect(texts(mixed, 'cell')).not.toContain('12 gained');
  });

  it('marks what was made at its visit, by letter and in words', () => {
    expect(texts(drawing, 'made-letter')).toEqual(['A', 'B']);
    const [a, b] = centres(drawing, 'made');
    const [first, , third] = centres(drawing, 'active-value');
    expect([a?.x, b?.x]).toEqual([first?.x, third?.x]);
    expect(texts(drawing, 'made-list')).toEqual([
      'A',
      '2026-01-05   strip: ring lower than long and little, differential 20 degrees, 160 mm long',
      'B',
      '2026-01-19   dorsal plate, MP at 50 degrees',
    ]);
  });

  it('tells active from passive by line, dot and word, not by tone alone', () => {
    const [active] = shapes(drawing, 'active-flexion');
    const [passive] = shapes(drawing, 'passive-flexion');
    expect(active?.paths).toHaveLength(1);
    expect(passive?.paths.length).toBeGreaterThan(5);
    expect(active?.pen).not.toBe(passive?.pen);
    expect([shapes(drawing, 'active-value')[0]?.fill, shapes(drawing, 'passive-value')[0]?.fill]).toEqual(['ink', 'paper']);
    expect(texts(drawing, 'line-end')).toEqual(['active extension deficit 26', 'active flexion 92']);
    expect(texts(drawing, 'key-word')).toEqual(expect.arrayContaining(['passive', 'inside: not read as a change']));
  });

  it('says the figures under the plot and in its description', () => {
    expect(texts(drawing, 'cell')).toEqual(
      expect.arrayContaining(['5 Jan', '2026', '80', '12 gained', 'no change', '10 gained', 'A', 'B', '6']),
    );
    expect(drawing.description).toContain('2026-01-12: active 0-36-92, passive 0-28-95');
    expect(drawing.description).toContain('B, 2026-01-19: dorsal plate');
    expect(texts(drawing, 'note').join(' ')).toContain('Engstrand');
  });

  it('marks an invented case, and no other', () => {
    expect(texts(drawing, 'invented')).toEqual(['INVENTED: nobody was measured']);
    const real = caseChart({ ...sampleCase(VISITS), invented: false });
    expect(real.ok && texts(real.value, 'invented')).toEqual([]);
  });

  it('says hyperextension in words and keeps its band on the chart', () => {
    const lax = chart([{ pip: [-20, 80] }, { pip: [-30, 80] }]);
    expect(texts(lax)).toEqual(expect.arrayContaining(['hyper 20', 'active hyperextension 30']));
  });

  it.each([
    ['one visit', [{ pip: [40, 80] }]],
    [
      'a stiff joint',
      [
        { pip: [30, 30], passive: [30, 30] },
        { pip: [30, 30], passive: [30, 30] },
      ],
    ],
    ['many visits', Array.from({ length: 60 }, (_, k) => ({ pip: [60 - k, 60 + k], passive: [60 - k, 60 + k], rest: strip(20) }))],
    ['extremes', [{ pip: [-45, 130], passive: [-45, 130] }, { pip: [120, 120] }]],
  ] as [string, SampleVisit[]][])('keeps everything inside the picture: %s', (_, visits) => {
    const { items, extents } = chart(visits, { code: 'ABCDEFGHIJKLMNOPQRSTUVW1', digit: 'little' });
    for (const item of items) {
      const paths = item.kind === 'shape' ? item.paths : strokeText(item.text, item).paths;
      const circles = item.kind === 'shape' ? item.circles : [];
      const boxes = [
        ...(paths.length > 0 ? [boxOf(paths)] : []),
        ...circles.map(({ center: { x, y }, radius }) => ({ minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius })),
      ];
      for (const { minX, minY, maxX, maxY } of boxes) {
        expect(
          [minX, minY].every((v) => v > 4),
          `${item.role} at ${minX}, ${minY}`,
        ).toBe(true);
        expect(maxX < extents.maxX - 4 && maxY < extents.maxY - 4, `${item.role} to ${maxX}, ${maxY}`).toBe(true);
      }
    }
  });

  it('leaves room between the figures of neighbouring visits, however many there are', () => {
    const lost = chart(Array.from({ length: 40 }, (_, k) => ({ pip: k % 2 === 0 ? [-45, 130] : [60, 60] })));
    const cells = lost.items.filter((item): item is DrawnText => item.kind === 'text' && item.role === 'cell');
    for (const height of new Set(cells.map(({ at }) => at.y))) {
      const row = cells.filter(({ at }) => at.y === height);
      for (const [k, cell] of row.slice(1).entries()) {
        const before = row[k];
        if (before === undefined) throw new Error('no cell before');
        const room = cell.at.x - before.at.x - (textWidth(cell.text, cell.height) + textWidth(before.text, before.height)) / 2;
        expect(room, `${before.text} | ${cell.text}`).toBeGreaterThan(1);
      }
    }
  });

  it('is the same drawing each time', () => {
    expect(chart()).toEqual(drawing);
  });

  it('refuses a case without visits', () => {
    expect(caseChart(sampleCase([]))).toMatchObject({ ok: false, problems: [{ code: 'NO_VISITS', kind: 'refused' }] });
  });
});
